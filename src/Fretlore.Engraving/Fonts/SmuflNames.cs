using System.Collections.Frozen;
using System.Reflection;

namespace Fretlore.Engraving.Fonts;

/// <summary>The standard's names of the glyphs in <see cref="Smufl"/>, such as <c>noteheadBlack</c>.</summary>
internal static class SmuflNames
{
    /// <summary>Code points by name, read off the table of constants so that there is no second table to keep.</summary>
    public static FrozenDictionary<string, int> CodePoints() =>
        typeof(Smufl).GetFields(BindingFlags.Public | BindingFlags.Static)
            .Where(field => field.IsLiteral)
            .ToFrozenDictionary(NameOf, field => (int)field.GetRawConstantValue()!);

    private static string NameOf(FieldInfo constant) =>
        constant.GetCustomAttribute<GlyphNameAttribute>()?.Name ?? char.ToLowerInvariant(constant.Name[0]) + constant.Name[1..];
}
