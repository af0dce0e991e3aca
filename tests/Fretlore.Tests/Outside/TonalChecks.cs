using System.Globalization;
using Fretlore.Music;
using Fretlore.Music.Chords;
using Fretlore.Music.Scales;
using Fretlore.Reading.Chords;

namespace Fretlore.Tests.Outside;

/// <summary>Chord types and scales against npm tonal 6.4.2 (MIT).</summary>
public class TonalChecks
{
    /// <summary>Chord types that are, over the same bass, the notes of a commoner chord: by tonal's symbol, our name on C and why.</summary>
    internal static IReadOnlyDictionary<string, (string Ours, string Why)> CommonerNames { get; } = new Dictionary<string, (string, string)>
    {
        ["M7#5sus4"] = ("Fdim/C", "F Ab B is a whole diminished triad; only the C is left over, below it."),
        ["7#5sus4"] = ("Fmadd11/C", "F minor with its fifth in the bass and an eleventh."),
        ["M9#5sus4"] = ("Ddim7/C", "Four of the five notes are a diminished seventh chord."),
        ["M9sus4"] = ("G7/C", "A whole dominant seventh over the tonic."),
        ["m#5"] = ("Ab/C", "A major triad in first inversion."),
        ["mb6M7"] = ("G#m/C", "A minor triad over a note below it."),
        ["m7#5"] = ("Abadd9/C", "Ab with a ninth, third in the bass."),
        ["+add#9"] = ("Emaj7#5/B#", "E's augmented major seventh, fifth in the bass."),
        ["m11A"] = ("Fm13/C", "F minor's thirteenth chord over its fifth has no altered note."),
        ["mb6b9"] = ("Abadd11/C", "Ab with its third in the bass and an eleventh."),
    };

    [Fact]
    public void EveryChordType_InRootPositionOnAllRoots_HasItsRootFirst_UnlessACommonerChordIsTheSameNotes()
    {
        var differing = new SortedSet<string>(StringComparer.Ordinal);
        var count = 0;
        foreach (var (_, symbol, semitones) in Rows("chord"))
        {
            if (semitones.Length < 3) continue;
            count++;
            for (var root = 0; root < 12; root++)
            {
                var best = ChordNamer.Name([.. semitones.Select(s => new Height(48 + root + s))]).Candidates[0];
                // Not the root only: the symbol, read again, has just these tones.
                Assert.True(ChordSymbol.TryParse(best.Symbol, out var name, out _), best.Symbol);
                var bass = NoteName.Wrap(root - best.Root.PitchClass, 12);
                Assert.Equal(PitchClassSet.Of([.. semitones.Select(s => NoteName.Wrap(s + bass, 12))]), Sounding(name, semitones.Select(s => NoteName.Wrap(s + bass, 12))).With(bass));
                if (best.Root.PitchClass != root) differing.Add(symbol);
                if (best.Root.PitchClass != root && root == 0) Assert.Equal(CommonerNames[symbol].Ours, best.Symbol);
            }
        }
        Assert.Equal(105, count);
        Assert.Equal(CommonerNames.Keys.Order(StringComparer.Ordinal), differing);
    }

    /// <summary>The twin that needs no package.</summary>
    [Theory]
    [InlineData("0 4 7 11 14 18", "Cmaj9#11")]
    [InlineData("0 4 7 10 13 21", "C13b9")]
    [InlineData("0 4 8 10 15", "C7#5#9")]
    [InlineData("0 3 7 9 14", "Cm6/9")]
    [InlineData("0 5 7 10 14 21", "C13sus4")]
    [InlineData("0 3 6 11", "Cdim(maj7)")]
    public void AFewChordTypes_HaveTheirUsualSymbol(string semitones, string symbol) => Assert.Equal(
        symbol, ChordNamer.Name([.. Numbers(semitones).Select(s => new Height(48 + s))]).Candidates[0].Symbol);

    [Fact]
    public void EveryScaleOfOurs_ButOne_StandsInTonalWithTheSameNotes()
    {
        var known = Rows("scale").Select(r => PitchClassSet.Of(r.Semitones)).ToHashSet();
        Assert.Equal(["Spanish eight-tone"], ScaleTable.All.Where(s => !known.Contains(s.Tones)).Select(s => s.Name));
    }

    // A fifth, or a ninth below an 11 or 13, may be left out.
    private static PitchClassSet Sounding(ChordSymbol name, IEnumerable<int> semitones) => name.Needed | (name.Tones & PitchClassSet.Of([.. semitones]));

    private static IEnumerable<(string What, string Name, int[] Semitones)> Rows(string what)
    {
        foreach (var line in OutsideProgram.Node("tonal-chords.mjs").Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            var fields = line.Split('|');
            if (fields[0] == what) yield return (fields[0], fields[1], Numbers(fields[2]));
        }
    }

    private static int[] Numbers(string text) => [.. text.Split(' ').Select(n => int.Parse(n, CultureInfo.InvariantCulture))];
}
