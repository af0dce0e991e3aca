using Fretlore.Music;
using Fretlore.Music.Scales;

namespace Fretlore.Tests.Outside;

/// <summary>Our table of scales against the published list with Forte numbers (scales.csv; numbers from music21's table).</summary>
public class ScaleListChecks
{
    [Fact]
    public void EveryScaleOfTheList_IsInOurTable_WithItsFormulaAndNotes()
    {
        var path = Repository.Check("scales.csv");
        Assert.SkipWhen(path is null, "scales.csv of the check values is not there.");
        var rows = File.ReadAllLines(path).Skip(1).Where(l => l.Length > 0).ToArray();
        Assert.Equal(54, rows.Length);
        foreach (var row in rows)
        {
            var quoted = row.Split('"');
            Assert.True(ScaleTable.TryFind(quoted[1], out var scale), quoted[1]);
            Assert.Equal(quoted[3], scale.Formula);
            Assert.Equal(quoted[5], string.Join(' ', Members(scale.Tones)));
        }
    }

    /// <summary>The twin: interval vectors of a few sets as Forte lists them, computed from our table.</summary>
    [Theory]
    [InlineData("Dorian", "254361")] // 7-35
    [InlineData("Harmonic minor", "335442")] // 7-32
    [InlineData("Melodic minor", "254442")] // 7-34
    [InlineData("Minor pentatonic", "032140")] // 5-35
    [InlineData("Diminished half-whole", "448444")] // 8-28
    [InlineData("Whole tone", "060603")] // 6-35
    [InlineData("Hirajoshi (Sachs)", "211231")] // 5-20
    public void IntervalVector_OfAScale_IsFortes(string name, string vector)
    {
        Assert.True(ScaleTable.TryFind(name, out var scale));
        var counts = new int[6];
        var members = Members(scale.Tones);
        for (var i = 0; i < members.Count; i++)
        {
            for (var j = i + 1; j < members.Count; j++)
            {
                var distance = members[j] - members[i];
                counts[Math.Min(distance, 12 - distance) - 1]++;
            }
        }
        Assert.Equal(vector, string.Concat(counts));
    }

    private static List<int> Members(PitchClassSet set)
    {
        var members = new List<int>();
        foreach (var member in set) members.Add(member);
        return members;
    }
}
