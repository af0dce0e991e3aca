using Fretlore.Music.Chords;

namespace Fretlore.Music.Scales;

/// <summary>A scale by its name and its degrees, without a root: one row of <see cref="ScaleTable"/>.</summary>
public sealed class Scale
{
    internal Scale(string name, string formula, double rarity, params string[] otherNames)
    {
        Name = name;
        Formula = formula;
        Rarity = rarity;
        OtherNames = otherNames.ToValueList();
        Degrees = formula.Split(' ').Select(Degree.Parse).ToValueList();
        Tones = PitchClassSet.Of([.. Degrees.Items.Select(d => d.Semitones)]);
    }

    /// <summary>The name shown, such as <c>Dorian</c>; no two scales share one.</summary>
    public string Name { get; }

    /// <summary>Other names that are read, each meaning one scale only.</summary>
    public ValueList<string> OtherNames { get; }

    /// <summary>Degrees of the major scale, such as <c>1 2 b3 4 5 6 b7</c>.</summary>
    public string Formula { get; }

    /// <summary>Spelled degrees from the root up, within the octave.</summary>
    public ValueList<Interval> Degrees { get; }

    /// <summary>Semitones above the root.</summary>
    public PitchClassSet Tones { get; }

    /// <summary>How far from everyday use: 0 for the minor pentatonic, 1 and more for what few players practise.</summary>
    public double Rarity { get; }

    /// <summary>This scale with tones of another added, named so: <c>Minor pentatonic with the sixth of Dorian</c>.</summary>
    /// <param name="other">The scale that has the tones.</param>
    /// <param name="added">Semitones above the root; each a tone of <paramref name="other"/>.</param>
    public Scale With(Scale other, PitchClassSet added)
    {
        var degrees = other.Degrees.Items.Where(d => added.Contains(d.Semitones)).ToArray();
        var words = string.Join(" and ", degrees.Select(Degree.Words));
        var formula = Degrees.Items.Concat(degrees).OrderBy(d => d.Semitones).Select(d => d.ToDegree());
        return new Scale($"{Name} with the {words} of {other.Name}", string.Join(' ', formula), Rarity);
    }

    /// <summary>The notes from a root up, spelled.</summary>
    public ValueList<NoteName> NotesFrom(NoteName root) => Degrees.Items.Select(d => root.Transpose(d)).ToValueList();

    public override string ToString() => Name;
}
