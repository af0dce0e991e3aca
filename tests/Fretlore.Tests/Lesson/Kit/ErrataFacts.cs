using Fretlore.Hands.Plans;
using Fretlore.Lesson.Kit;
using Fretlore.Reading;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Lesson.Kit;

public class ErrataFacts
{
    private const string Sheet = Sheets.Top + "section Verse\n  guitar  @6 Q 0 3 5 7 | Q 5 3 0 3 | Q 7 8 7 5 |\nsection Chorus\n  guitar  @5 W 3 | W 5 |\n";

    [Fact]
    public void SameKits_HaveNoDifferences() => Assert.Empty(Errata.Between(List(Sheet), List(Sheet)));

    [Fact]
    public void ChangedBar_IsNamedWithItsPartAndSection()
    {
        var lines = Errata.Between(List(Sheet), List(Sheet.Replace("Q 5 3 0 3", "Q 5 3 0 2", StringComparison.Ordinal)));
        Assert.Equal("Guitar: bar 2 (Verse) has changed.", lines[0]);
        Assert.Contains(lines, line => line.StartsWith("Changed: pages/full.pdf (", StringComparison.Ordinal));
    }

    [Fact]
    public void BarPutIn_IsNew_AndThoseAfterItAreNot()
    {
        var lines = Errata.Between(List(Sheet), List(Sheet.Replace("| Q 7 8 7 5 |", "| @1 W 12 | @6 Q 7 8 7 5 |", StringComparison.Ordinal)));
        Assert.Equal("Guitar: bar 3 (Verse) is new.", lines[0]);
        Assert.DoesNotContain(lines, line => line.Contains("bar 4", StringComparison.Ordinal));
    }

    [Fact]
    public void BarTakenOut_IsGone()
    {
        var lines = Errata.Between(List(Sheet), List(Sheet.Replace(" W 5 |", "", StringComparison.Ordinal)));
        Assert.Equal("Guitar: bar 5 of the old kit is gone.", lines[0]);
    }

    [Fact]
    public void RightsAndPermission_ThatChange_AreSaid()
    {
        var lines = Errata.Between(List(Sheet), List("rights © Nobody\npermission By letter of May\n" + Sheet));
        Assert.Contains("The rights are now said: © Nobody.", lines);
        Assert.Contains("The permission is now said: By letter of May.", lines);
    }

    private static KitList List(string sheet)
    {
        var song = Sheets.Song(sheet);
        var made = Assert.IsType<KitResult.Made>(KitBuilder.Build(new KitSource(song, () => SongReader.Read(song), () => HandPlanner.Plan(song), new KitOptions())));
        return KitList.Read(made.Kit.Files[^1].Bytes.AsSpan())!;
    }
}
