using System.Globalization;
using Fretlore.Syntax;

namespace Fretlore.Binding.Words;

/// <summary>Whole numbers as they stand in a sheet.</summary>
internal static class Numerals
{
    /// <summary>The number of a token; a number too large to count with becomes <see cref="int.MaxValue"/>; null when it is none.</summary>
    public static int? Of(SyntaxToken? token) => token is null || token.IsMissing ? null : Of(token.Text);

    public static int? Of(string text)
    {
        if (text.Length == 0 || text.AsSpan().ContainsAnyExceptInRange('0', '9')) return null;
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : int.MaxValue;
    }
}
