using CsCheck;
using Fretlore.Hands.Picking;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Hands.Picking;

/// <summary>Strokes of a pick and fingers without one.</summary>
public sealed class PickingFacts
{
    [Theory]
    [InlineData("S @1 5 7 8 7 5 7 8 7 5 7 8 7 5 7 8 7 |", "dudududududududu")]
    [InlineData("ESS @6 0 0 0 0 0 0 0 0 0 0 0 0 |", "ddudduddu" + "ddu")]
    [InlineData("E @1 5 7 8 7 5 7 8 7 |", "dudududu")]
    [InlineData("Q @6-4 [0 2 2] [0 2 2] [0 2 2] [0 2 2] |", "dddd")]
    [InlineData("E R @1 5 R 7 R 5 R 7 |", "uuuu")]
    public void APick_GoesDownOnTheBeat_AndUpAfterIt(string line, string strokes) // common practice
    {
        var song = Sheets.Line(line);
        Assert.Equal(strokes, string.Concat(Events(song).Where(e => !e.IsRest).Select(e => PickingPlanner.Plan(song).Of(e.Notes[0].Id).Stroke == Stroke.Down ? 'd' : 'u')));
    }

    [Fact]
    public void AFastArpeggio_IsSweptThrough()
    {
        var song = Sheets.Line("Y @6 5 @5 7 @4 7 @3 5 Q. @1 5 H R |");
        Assert.Equal([Stroke.Down, Stroke.Down, Stroke.Down], Events(song).Take(3).Select(e => PickingPlanner.Plan(song).Of(e.Notes[0].Id).Stroke));
    }

    [Fact]
    public void WhatIsHammeredOrPulled_IsNotPicked()
    {
        var song = Sheets.Line("E @1 5,7,5 7 5,7,5 7 |");
        Assert.Equal([true, false, false, true, true, false, false, true], Events(song).Select(e => PickingPlanner.Plan(song).Of(e.Notes[0].Id).Stroke != Stroke.None));
    }

    [Fact]
    public void TheSheetsOwnStrokes_AreKept() => Gen.Char["du"].Array[8].Sample(letters =>
    {
        var song = Sheets.Line($"E @1 {string.Join(' ', letters.Select((l, i) => $"{l}{5 + i % 3}"))} |");
        var plan = PickingPlanner.Plan(song);
        Assert.Equal(letters, Events(song).Select(e => plan.Of(e.Notes[0].Id).Stroke == Stroke.Down ? 'd' : 'u'));
    }, iter: 100);

    [Fact]
    public void ArpeggiosOverABass_AreForThumbIndexMiddleAndRing() // p to the basses, i m a to the third, second and first string: common practice since F. Carulli
    {
        var song = Sheets.Line("E by p{ 0@5 } 2@3 1@2 0@1 by p{ 0@5 } 2@3 1@2 0@1 |");
        Assert.Equal("pimapima", string.Concat(Events(song).Select(e => PickingPlanner.Plan(song).Of(e.Notes[0].Id).Finger)));
    }

    [Fact]
    public void NoOtherStrokes_CostLess() => Gen.Int[0, 10_000_000].Sample(seed =>
    {
        var moments = Moments(new Random(seed));
        var found = PickSearch.Find(moments);
        double Cost(Func<int, Stroke> way) => (way(0) == Stroke.Up ? PickingCosts.BeginsUpwards : 0)
            + Enumerable.Range(0, moments.Count).Sum(i => PickSearch.Alone(moments[i], way(i)) + (i == 0 ? 0 : PickSearch.Change(moments[i - 1], way(i - 1), moments[i], way(i))));
        var best = Enumerable.Range(0, 1 << moments.Count).Min(bits => Cost(i => (bits >> i & 1) == 0 ? Stroke.Down : Stroke.Up));
        Assert.Equal(best, Cost(i => found[i]), 1e-9);
    }, iter: 300);

    [Fact]
    public void NoOtherFingers_CostLess() => Gen.Int[0, 10_000_000].Sample(seed =>
    {
        var moments = Moments(new Random(seed)).Take(4).ToList();
        var ways = moments.Select(m => FingerSearch.WaysOf(m).ToList()).ToList();
        var found = FingerSearch.Find(moments);
        double Cost(IReadOnlyList<string> way) => Enumerable.Range(0, moments.Count)
            .Sum(i => FingerSearch.Alone(moments[i], way[i]) + (i == 0 ? 0 : FingerSearch.Change(moments[i - 1], way[i - 1], moments[i], way[i])));
        IEnumerable<List<string>> all = [[]];
        foreach (var layer in ways) all = all.SelectMany(before => layer.Select(way => before.Append(way).ToList())).ToList();
        Assert.Equal(all.Min(Cost), Cost(found.Select(f => f!).ToList()), 1e-9);
        Assert.All(found, way => Assert.Equal(way!.Length, way.Distinct().Count()));
    }, iter: 200);

    [Fact]
    public void ASongWithItsStrokesWrittenIn_IsPlannedTheSame()
    {
        foreach (var (_, song) in Demos())
        {
            var plan = PickingPlanner.Plan(song);
            var written = plan.WrittenInto(song);
            Assert.Equal(plan.WithFingers, PickingPlanner.Plan(written).WithFingers);
            Assert.All(written.Parts.SelectMany(p => p.Bars).SelectMany(b => b.Strands).SelectMany(s => s.Events).Where(e => e.Notes.Items.Any(n => n.Attack == Attack.Picked)),
                e => Assert.True(e.Stroke != Stroke.None || e.PickingFinger is not null || e.Notes.Count > 1));
        }
    }

    private static IEnumerable<Event> Events(Song song) => song.Parts[0].Bars.SelectMany(b => b.Strands).SelectMany(s => s.Events);

    private static List<PluckedMoment> Moments(Random random) => [.. Enumerable.Range(0, random.Next(1, 9)).Select(_ =>
    {
        var strings = Enumerable.Range(1, 6).OrderBy(_ => random.Next()).Take(random.Next(3) == 0 ? random.Next(1, 5) : 1).OrderDescending();
        return new PluckedMoment(
            [.. strings.Select(s => new Plucked(new Note { String = new(s), Fret = new(random.Next(5)), Sounding = new(50) }, random.Next(4) == 0, null))],
            random.Next(6) == 0 ? Stroke.Up : Stroke.None, random.Next(2) == 0, random.Next(2) == 0, random.Next(1, 20) * 0.05);
    })];

    private static IEnumerable<(string Name, Song Song)> Demos() => DemoSongs.Names.Select(row => (row.Data, DemoSongs.Load(row.Data)));
}
