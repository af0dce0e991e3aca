using System.Collections.Immutable;
using Fretlore.Reading;
using Fretlore.RoadMaps.Stretches;
using Fretlore.RoadMaps.Takes;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.RoadMaps;

/// <summary>Takes are like the phrases that people wrote: their intervals, rhythms and repetitions lie where those of the demos' written phrases do.</summary>
public sealed class SpreadFacts(ITestOutputHelper output)
{
    // A phrase of fewer notes has no figures to speak of.
    private const int LeastNotes = 6;

    private static readonly (string Name, Func<ImmutableArray<LineMoment>, double> Of)[] Figures =
    [
        ("mean interval in semitones", line => Intervals(line).Average()),
        ("share of notes that come twice in a row", line => Share(Intervals(line), i => i == 0)),
        ("share of intervals up to a third", line => Share(Intervals(line), i => i is > 0 and <= 4)),
        ("share of leaps over a fifth", line => Share(Intervals(line), i => i > 7)),
        ("notes a quarter", line => line.Length / line.Sum(m => m.Length.ToDouble())),
        ("share of lengths that come twice in a row", line => Share(line.Zip(line.Skip(1), (a, b) => a.Length == b.Length ? 0 : 1), same => same == 0)),
        ("kinds of lengths a phrase", line => line.Select(m => m.Length).Distinct().Count()),
    ];

    [Fact]
    public void TheFiguresOfTakes_LieWithinTheSpreadOfTheDemosWrittenPhrases()
    {
        var written = DemoSongs.Names.Select(n => DemoSongs.Load(n.Data)).SelectMany(PhrasesOf).ToList();
        Assert.True(written.Count >= 8);
        var stretch = Kestrel();
        var maker = new TakeMaker(stretch);
        var takes = Enumerable.Range(1, 40).Select(n => maker.Make(5, n, (n - 1) / 39.0)!).ToList();
        var played = takes.Select(t => SoloLine.Of(t.Bars, [.. stretch.Bars.Select(b => b.Length)])).Select(l => l.Where(m => stretch.Bars[m.Bar - 1].IsFree).ToImmutableArray()).ToList();
        foreach (var (name, of) in Figures)
        {
            var spread = written.Select(of).Order().ToList();
            var ours = played.Select(of).Order().ToList();
            var inside = ours.Count(o => o >= spread[0] && o <= spread[^1]);
            output.WriteLine(FormattableString.Invariant($"{name}: written {spread[0]:0.00} to {spread[^1]:0.00}, takes {ours[0]:0.00} to {ours[^1]:0.00}, mean {ours.Average():0.00}; {inside} of {ours.Count} within"));
            Assert.InRange(ours.Average(), spread[0], spread[^1]);
            Assert.True(inside >= 0.9 * ours.Count, name);
        }
    }

    private static IEnumerable<int> Intervals(ImmutableArray<LineMoment> line) =>
        line.Zip(line.Skip(1)).Where(p => !p.Second.FollowsRest).Select(p => Math.Abs(p.Second.Arrival - p.First.Final)).DefaultIfEmpty(0);

    private static double Share(IEnumerable<int> values, Func<int, bool> which) => values.Average(v => which(v) ? 1.0 : 0);

    // One line at a time: no chords, no second strand.
    private static IEnumerable<ImmutableArray<LineMoment>> PhrasesOf(Song song) => song.Riffs
        .Where(r => r.Content.All(b => b.Strands.Count == 1 && b.Strands[0].Events.All(e => e.Notes.Count <= 1)))
        .Select(r => SoloLine.Of(r.Content, [.. r.Bars.Select(b => b.Length)])).Where(l => l.Length >= LeastNotes);

    private static SoloStretch Kestrel()
    {
        var song = DemoSongs.Load("kestrel-over-slate.lore");
        return SoloStretch.Of(song, SongReader.Read(song), song.RoadMaps[0], song.RoadMapUses[0]);
    }
}
