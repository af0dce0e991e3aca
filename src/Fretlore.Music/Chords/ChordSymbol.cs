namespace Fretlore.Music.Chords;

/// <summary>A chord symbol as written on a lead sheet, and which of its tones must sound for it to be that chord.</summary>
/// <param name="Name">Root, kind and bass.</param>
/// <param name="Needed">Tones without which the symbol would mislead, in semitones above the root; the root is among them.</param>
/// <remarks>A perfect fifth, and the ninth below a written 11 or 13, belong to the chord but may be left out (common practice).</remarks>
public readonly record struct ChordSymbol(ChordName Name, PitchClassSet Needed)
{
    /// <summary>Every tone of the chord, in semitones above the root; a foreign bass is not among them.</summary>
    public PitchClassSet Tones => Name.Kind.Family.Tones.Except(Name.Kind.Omitted) | Name.Kind.Tensions;

    /// <summary>Reads <c>F#m11</c>, <c>Bbmaj7#11</c>, <c>C7(b9,b13)</c>, <c>G6/9</c>, <c>Am(maj7)</c>, <c>D/F#</c>, <c>E5</c>, <c>C+</c>, <c>Bø7</c>.</summary>
    /// <param name="text">The symbol.</param>
    /// <param name="symbol">What was read.</param>
    /// <param name="unread">Where in the text reading stopped when it failed, from 0.</param>
    public static bool TryParse(string text, out ChordSymbol symbol, out int unread)
    {
        symbol = default;
        unread = 0;
        var rootEnd = RootLength(text);
        if (rootEnd == 0 || !NoteName.TryParse(text.AsSpan(0, rootEnd), out var root)) return false;
        var end = text.Length;
        var bass = root;
        var slash = text.LastIndexOf('/');
        if (slash > 0 && slash + 1 < text.Length && !char.IsAsciiDigit(text[slash + 1]))
        {
            unread = slash + 1;
            if (!char.IsAsciiLetterUpper(text[slash + 1]) || !NoteName.TryParse(text.AsSpan(slash + 1), out bass)) return false;
            end = slash;
        }
        var reader = new ChordKindReader(text, rootEnd, end);
        if (!reader.Read(out var kind, out var needed))
        {
            unread = reader.At;
            return false;
        }
        symbol = new ChordSymbol(new ChordName(root, kind, bass), needed);
        return true;
    }

    // A letter and its signs; "b" after the letter is a flat, and the flats of "b5" belong to the kind.
    private static int RootLength(string text)
    {
        if (text.Length == 0 || text[0] is < 'A' or > 'G') return 0;
        var length = 1;
        while (length < text.Length && length < 3 && text[length] is '#' or 'b' or '♯' or '♭' && (length == 1 || text[length] == text[1])) length++;
        // C#5 and Cb5 are read as a root with its sign, as on every lead sheet; C##9 keeps only what a digit does not claim.
        if (length == 3 && text.Length > 3 && char.IsAsciiDigit(text[3])) length = 2;
        return length;
    }
}
