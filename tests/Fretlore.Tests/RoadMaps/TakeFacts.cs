using Fretlore.RoadMaps.Checking;
using Fretlore.RoadMaps.Takes;
using Fretlore.Syntax;
using Fretlore.Workspace;
using Fretlore.Workspace.RoadMaps;

namespace Fretlore.Tests.RoadMaps;

/// <summary>Solos made from road maps. FRETLORE_SOAK says how many are made from each of the twenty maps.</summary>
public sealed class TakeFacts(ITestOutputHelper output)
{
    private const int Seed = 7;

    public static TheoryData<int> Maps => [.. Enumerable.Range(0, VariedMaps.All.Length)];

    [Theory]
    [MemberData(nameof(Maps))]
    public void EveryTake_KeepsEveryRule_CanBePlayed_AndIsLikeNoOther(int map)
    {
        var stretch = VariedMaps.All[map].Stretch();
        var takes = Takes(map, Soak.Takes(8));
        foreach (var take in takes)
        {
            Assert.True(RoadMapChecker.Check(stretch, take.Bars).KeepsAll, $"{VariedMaps.All[map].Name}, take {take.Number}");
            Assert.Empty(TakeLook.Breaks(stretch, take));
            Assert.True(take.Hands.Difficulty > Fretlore.Hands.Plans.Difficulty.None);
        }
        // What is fixed is the same in all: takes can differ where they are free.
        var heights = takes.Select(t => TakeLook.FreeHeightsOf(stretch, t)).ToList();
        var nearest = heights.Select((one, i) => heights.Where((_, j) => j != i).Min(other => TakeLook.Difference(one, other))).ToList();
        var different = (double)nearest.Count(d => d >= 1 / 3.0) / takes.Count;
        output.WriteLine(FormattableString.Invariant($"{VariedMaps.All[map].Name}: {takes.Count} takes, {takes.Sum(t => t.Discarded)} thrown away, {different:P1} differ from their nearest in a third of their free notes, the nearest two in {nearest.Min():P0}"));
        Assert.All(nearest, d => Assert.True(d > 0));
        // Of all takes of all maps it is more than nine in ten; a slow map with few notes, and a few takes of it, may have somewhat fewer.
        Assert.True(different >= 0.8);
    }

    [Fact]
    public void TheSameSeed_GivesTheSameTakes_AndAnotherSeedOthers()
    {
        var stretch = VariedMaps.All[0].Stretch();
        var (one, same, other) = (new TakeMaker(stretch).Make(3, 1, 0.5)!, new TakeMaker(stretch).Make(3, 1, 0.5)!, new TakeMaker(stretch).Make(4, 1, 0.5)!);
        Assert.Equal(TakeLook.NotesOf(one), TakeLook.NotesOf(same));
        Assert.NotEqual(TakeLook.NotesOf(one), TakeLook.NotesOf(other));
    }

    [Fact]
    public void AnEasyTake_HasFewerNotes_AndLessForTheHand_ThanAFullOne()
    {
        foreach (var map in (int[])[0, 2, 6, 15])
        {
            var stretch = VariedMaps.All[map].Stretch();
            var maker = new TakeMaker(stretch);
            var easy = Enumerable.Range(1, 6).Select(n => maker.Make(Seed, n, 0)!).ToList();
            var full = Enumerable.Range(1, 6).Select(n => maker.Make(Seed, n, 1)!).ToList();
            output.WriteLine(FormattableString.Invariant($"{VariedMaps.All[map].Name}: {easy.Average(t => TakeLook.NotesOf(t).Count()):0.0} and {full.Average(t => TakeLook.NotesOf(t).Count()):0.0} notes, {easy.Average(t => t.Hands.Cost):0.0} and {full.Average(t => t.Hands.Cost):0.0} points for the hand"));
            Assert.True(full.Average(t => TakeLook.NotesOf(t).Count()) > 1.1 * easy.Average(t => TakeLook.NotesOf(t).Count()), VariedMaps.All[map].Name);
            Assert.True(full.Average(t => t.Hands.Cost) > easy.Average(t => t.Hands.Cost), VariedMaps.All[map].Name);
        }
    }

    [Theory]
    [MemberData(nameof(Maps))]
    public void ATakesSheet_IsTheSheetWithTheSoloWrittenOut_AndPassesTheCheck(int map)
    {
        var sheet = VariedMaps.All[map].Sheet;
        var answer = new TakesQuestion("way", 2, Seed).Ask(SongWorkspace.Open(new SourceText(sheet, "map.lore"))).Value;
        Assert.Equal(2, answer.Takes.Length);
        foreach (var written in answer.Takes)
        {
            var workspace = SongWorkspace.Open(new SourceText(written.Sheet, "take.lore"));
            Assert.Empty(workspace.Check().Where(f => f.Severity != Severity.Hint).Select(f => f.Message));
            Assert.Empty(workspace.Song!.RoadMaps);
            var use = answer.Stretch.Use;
            Assert.True(RoadMapChecker.Check(answer.Stretch, [.. workspace.Song!.Parts[use.Part].Bars.Items.Slice(use.FirstBar, use.BarCount)]).KeepsAll);
            // All but the road map's block is as it was typed.
            Assert.StartsWith(sheet[..sheet.IndexOf("roadmap way\n", StringComparison.Ordinal)], written.Sheet, StringComparison.Ordinal);
        }
    }

    private static List<SoloTake> Takes(int map, int count)
    {
        var maker = new TakeMaker(VariedMaps.All[map].Stretch());
        return [.. Enumerable.Range(1, count).Select(n => maker.Make(Seed, n, count == 1 ? 0.5 : (n - 1.0) / (count - 1)) ?? throw new InvalidOperationException($"No take {n} of {VariedMaps.All[map].Name}."))];
    }
}
