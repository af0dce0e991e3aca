namespace Fretlore.Engraving.Fonts;

/// <summary>The standard's own name of a glyph, where a C# name cannot be the same.</summary>
[AttributeUsage(AttributeTargets.Field)]
internal sealed class GlyphNameAttribute(string name) : Attribute
{
    public string Name { get; } = name;
}
