using System.Text;
using Fretlore.Music;

namespace Fretlore.Engraving.Output;

/// <summary>Characters of a document that neither our fonts nor this machine's have; each is drawn as a box.</summary>
/// <param name="Runes">In code point order; empty when all is well.</param>
public sealed record MissingCharacters(ValueList<Rune> Runes)
{
    public bool Any => Runes.Count > 0;

    /// <summary>Such as <c>漢 (U+6F22), 字 (U+5B57)</c>.</summary>
    public override string ToString() => string.Join(", ", Runes.Items.Select(rune => $"{rune} (U+{rune.Value:X4})"));
}
