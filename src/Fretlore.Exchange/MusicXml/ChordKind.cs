using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Reading;

namespace Fretlore.Exchange.MusicXml;

/// <summary>A chord as MusicXML tells it: one of its kinds and the degrees in which the chord differs.</summary>
/// <param name="Value">The kind's word in the standard.</param>
/// <param name="Degrees">Degree number, alteration and <c>add</c>, <c>alter</c> or <c>subtract</c>.</param>
internal sealed record ChordKind(string Value, ImmutableArray<(int Degree, int Alteration, string Type)> Degrees)
{
    // Each kind's degrees above the root as number and alteration from major or perfect, as the standard defines the kinds.
    private static readonly (string Value, (int Degree, int Alteration)[] Degrees)[] Kinds =
    [
        ("major", [(3, 0), (5, 0)]),
        ("minor", [(3, -1), (5, 0)]),
        ("augmented", [(3, 0), (5, 1)]),
        ("diminished", [(3, -1), (5, -1)]),
        ("power", [(5, 0)]),
        ("suspended-fourth", [(4, 0), (5, 0)]),
        ("suspended-second", [(2, 0), (5, 0)]),
        ("dominant", [(3, 0), (5, 0), (7, -1)]),
        ("major-seventh", [(3, 0), (5, 0), (7, 0)]),
        ("minor-seventh", [(3, -1), (5, 0), (7, -1)]),
        ("half-diminished", [(3, -1), (5, -1), (7, -1)]),
        ("diminished-seventh", [(3, -1), (5, -1), (7, -2)]),
        ("augmented-seventh", [(3, 0), (5, 1), (7, -1)]),
        ("major-minor", [(3, -1), (5, 0), (7, 0)]),
        ("major-sixth", [(3, 0), (5, 0), (6, 0)]),
        ("minor-sixth", [(3, -1), (5, 0), (6, 0)]),
        ("dominant-ninth", [(3, 0), (5, 0), (7, -1), (2, 0)]),
        ("major-ninth", [(3, 0), (5, 0), (7, 0), (2, 0)]),
        ("minor-ninth", [(3, -1), (5, 0), (7, -1), (2, 0)]),
        ("dominant-11th", [(3, 0), (5, 0), (7, -1), (2, 0), (4, 0)]),
        ("minor-11th", [(3, -1), (5, 0), (7, -1), (2, 0), (4, 0)]),
        ("dominant-13th", [(3, 0), (5, 0), (7, -1), (2, 0), (6, 0)]),
    ];

    public static ChordKind Of(ChordReading chord)
    {
        var notes = chord.Notes
            .Select(name => Interval.Between(chord.Root, name))
            .Where(i => i.Steps > 0)
            .Select(i => (Degree: i.Steps + 1, i.Alteration))
            .Distinct().ToList();
        if (notes.Count == 0) return new ChordKind("other", []);
        var (value, degrees) = Kinds.MinBy(kind => Distance(kind.Degrees, notes));
        var hasSeventh = degrees.Any(d => d.Degree == 7);
        var differences = ImmutableArray.CreateBuilder<(int, int, string)>();
        foreach (var missing in degrees.Where(d => !notes.Contains(d)))
        {
            // A sounding degree of the same number is the same degree altered; otherwise it is left out.
            var other = notes.FirstOrDefault(n => n.Degree == missing.Degree && !degrees.Contains(n));
            if (other != default) differences.Add((Number(missing.Degree), other.Alteration - missing.Alteration, "alter"));
            else differences.Add((Number(missing.Degree), 0, "subtract"));
        }
        foreach (var added in notes.Where(n => !degrees.Contains(n) && !(degrees.Any(d => d.Degree == n.Degree) && !notes.Contains(degrees.First(d => d.Degree == n.Degree)))))
        {
            // An added degree is told from a dominant chord, whose seventh is minor.
            differences.Add((Number(added.Degree), added.Degree == 7 ? added.Alteration + 1 : added.Alteration, "add"));
        }
        return new ChordKind(value, differences.ToImmutable());

        int Number(int degree) => degree is 2 or 4 || (degree == 6 && hasSeventh) ? SpelledAsExtension(degree, degrees) : degree;
    }

    private static int SpelledAsExtension(int degree, (int Degree, int Alteration)[] kind) =>
        kind.Length == 2 && kind.Any(d => d.Degree == degree) ? degree : degree + 7;

    private static int Distance((int Degree, int Alteration)[] kind, List<(int Degree, int Alteration)> notes) =>
        10 * (3 * kind.Count(d => !notes.Contains(d)) + 2 * notes.Count(n => !kind.Contains(n))) + kind.Length;
}
