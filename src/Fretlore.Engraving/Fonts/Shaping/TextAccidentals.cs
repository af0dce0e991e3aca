namespace Fretlore.Engraving.Fonts.Shaping;

/// <summary>The accidentals of Unicode text, drawn with the music font's accidentals for chord symbols, which stand on the baseline.</summary>
internal static class TextAccidentals
{
    /// <summary>The music glyph of a text character such as ♭; null for any other character.</summary>
    public static int? GlyphFor(int character) => character switch
    {
        0x266D => Smufl.CsymAccidentalFlat,
        0x266E => Smufl.CsymAccidentalNatural,
        0x266F => Smufl.CsymAccidentalSharp,
        0x1D12A => Smufl.CsymAccidentalDoubleSharp,
        0x1D12B => Smufl.CsymAccidentalDoubleFlat,
        _ => null,
    };

    /// <summary>Every character that has such a glyph.</summary>
    public static IEnumerable<int> Characters => [0x266D, 0x266E, 0x266F, 0x1D12A, 0x1D12B];
}
