using Fretlore.Music;
using Fretlore.Reading.Chords;

namespace Fretlore.Tests.Reading;

/// <summary>Names for stackings come last: only where no root explains the notes.</summary>
public class StackedChordFacts(ITestOutputHelper output)
{
    [Theory]
    [InlineData("C3 C#4 D4", "C(cluster)")]
    [InlineData("C3 E3 G3 C#4 F4 G#4", "C#|C")]
    [InlineData("C3 C#3 D3 D#3 E3", "C(cluster)")]
    public void NotesThatNoRootExplains_AreNamedByTheirStacking(string notes, string expected)
    {
        var best = Name(notes);
        Assert.Equal(expected, best.Symbol);
        Assert.StartsWith("No one root explains these notes", best.Reason, StringComparison.Ordinal);
        Assert.Contains(best.Parts, p => p.Why == CostReason.StackedVoicing);
    }

    [Theory]
    [InlineData("C3 D3 E3 G3", "Cadd9")]
    [InlineData("D3 F#3 A3 C4 E4 G4", "D11")]
    public void NotesThatARootExplains_KeepTheirChordName(string notes, string expected) => Assert.Equal(expected, Name(notes).Symbol);

    [Fact]
    public void EverySetOfNotes_OverEachOfItsBasses_HasAName()
    {
        int stacked = 0, all = 0;
        for (var bits = 1; bits < 4096; bits += 2)
        {
            var set = new PitchClassSet(bits);
            foreach (var bass in set)
            {
                var candidates = ChordNamer.Name(set, bass, false).Candidates;
                Assert.NotEmpty(candidates);
                Assert.All(candidates, c => Assert.NotEmpty(c.Reason));
                Assert.Equal(set.Count == 1 ? 1 : set.Count, candidates[0].Notes.Select(n => n.PitchClass).Distinct().Count());
                all++;
                stacked += candidates[0].Parts.Any(p => p.Why == CostReason.StackedVoicing) ? 1 : 0;
            }
        }
        output.WriteLine($"{stacked} of {all} sets over a bass are named by their stacking");
    }

    private static Fretlore.Reading.ChordReading Name(string notes) => ChordNamer.Name(
        [.. notes.Split(' ').Select(n => Pitch.TryParse(n, out var pitch) ? pitch.Height : throw new ArgumentException(n))]).Candidates[0];
}
