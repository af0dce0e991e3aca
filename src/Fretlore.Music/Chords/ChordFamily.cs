namespace Fretlore.Music.Chords;

/// <summary>The frame of a chord without tensions, such as minor seventh: one row of <see cref="ChordFamilies"/>.</summary>
public sealed class ChordFamily
{
    internal ChordFamily(string letters, string signs, string formula, string core, double rarity)
    {
        Letters = letters;
        Signs = signs;
        Rarity = rarity;
        Degrees = formula.Split(' ').Select(Degree.Parse).ToValueList();
        Tones = Set(Degrees);
        Core = Set(core.Split(' ').Select(Degree.Parse));
        var third = Tones.Contains(4) ? 4 : Tones.Contains(3) ? 3 : -1;
        Third = third;
        Seventh = Degrees.Items.Where(d => d.Steps == 6).Select(d => d.Semitones).DefaultIfEmpty(-1).First();
        Fifth = Degrees.Items.Where(d => d.Steps == 4).Select(d => d.Semitones).DefaultIfEmpty(-1).First();
        HasSixth = Degrees.Items.Any(d => d.Steps == 5);
    }

    /// <summary>The symbol in letters; <c>7</c> in braces is where a 9, 11 or 13 takes the seventh's place: <c>m{7}b5</c>.</summary>
    public string Letters { get; }

    /// <summary>The symbol in signs, with the same braces.</summary>
    public string Signs { get; }

    /// <summary>Degrees from the root up, spelled.</summary>
    public ValueList<Interval> Degrees { get; }

    /// <summary>Semitones above the root.</summary>
    public PitchClassSet Tones { get; }

    /// <summary>The tones without which the name would mislead; the others may be left out.</summary>
    public PitchClassSet Core { get; }

    /// <summary>How far from everyday use: 0 for a major or minor triad, about 1 for a sixth, 2 and more for what few players write.</summary>
    public double Rarity { get; }

    /// <summary>Semitones of the third above the root, or -1 when the family has none.</summary>
    public int Third { get; }

    /// <summary>Semitones of the fifth above the root, or -1.</summary>
    public int Fifth { get; }

    /// <summary>Semitones of the seventh above the root, or -1.</summary>
    public int Seventh { get; }

    public bool HasSixth { get; }

    /// <summary>True when a ninth, eleventh or thirteenth takes the seventh's place in the symbol.</summary>
    public bool Stacks => Letters.Contains('{', StringComparison.Ordinal);

    public override string ToString() => Letters.Length == 0 ? "major" : Letters;

    private static PitchClassSet Set(IEnumerable<Interval> degrees) =>
        PitchClassSet.Of([.. degrees.Select(d => d.Semitones)]);
}
