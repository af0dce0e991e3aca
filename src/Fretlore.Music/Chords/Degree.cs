using System.Globalization;

namespace Fretlore.Music.Chords;

/// <summary>Degrees of the major scale as text and in words, such as <c>b3</c> and "minor third".</summary>
public static class Degree
{
    /// <summary>Reads <c>1</c>, <c>b3</c>, <c>#11</c>, <c>bb7</c>.</summary>
    /// <exception cref="FormatException">The text is no degree.</exception>
    public static Interval Parse(string text) =>
        TryParse(text, out var degree) ? degree : throw new FormatException($"{text} is no degree.");

    public static bool TryParse(ReadOnlySpan<char> text, out Interval degree)
    {
        degree = default;
        var alteration = 0;
        var at = 0;
        for (; at < text.Length && text[at] is 'b' or '#'; at++) alteration += text[at] == '#' ? 1 : -1;
        if (!int.TryParse(text[at..], NumberStyles.None, CultureInfo.InvariantCulture, out var number)) return false;
        if (number is < 1 or > 15) return false;
        var natural = NoteName.Semitones((Step)((number - 1) % 7)) + (number > 7 ? 12 * ((number - 1) / 7) : 0);
        degree = new Interval(number - 1, natural + alteration);
        return true;
    }

    /// <summary>As said aloud, without article: <c>minor third</c>, <c>flat seventh</c>, <c>sharp eleventh</c>, <c>root</c>.</summary>
    public static string Words(Interval degree)
    {
        var alteration = degree.Alteration;
        return (degree.Steps, alteration) switch
        {
            (0, 0) => "root",
            (2, 0) => "major third",
            (2, -1) => "minor third",
            (4, 0) => "fifth",
            (6, 0) => "major seventh",
            (6, -2) => "diminished seventh",
            (_, 0) => Ordinal(degree.Steps),
            (_, -1) => "flat " + Ordinal(degree.Steps),
            (_, 1) => "sharp " + Ordinal(degree.Steps),
            (_, < 0) => "double flat " + Ordinal(degree.Steps),
            _ => "double sharp " + Ordinal(degree.Steps),
        };
    }

    private static string Ordinal(int steps) => steps switch
    {
        0 => "unison",
        1 => "second",
        2 => "third",
        3 => "fourth",
        4 => "fifth",
        5 => "sixth",
        6 => "seventh",
        7 => "octave",
        8 => "ninth",
        9 => "tenth",
        10 => "eleventh",
        11 => "twelfth",
        12 => "thirteenth",
        13 => "fourteenth",
        _ => "fifteenth",
    };
}
