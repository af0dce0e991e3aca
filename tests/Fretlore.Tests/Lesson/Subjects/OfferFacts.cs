using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.Lesson.Subjects;
using Fretlore.Performance;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Lesson.Subjects;

public class OfferFacts
{
    [Fact]
    public void BarsThatComeAgainWithoutAName_AreOfferedOnce()
    {
        var song = Sheets.Line("@6 E 0 0 3 0 5 0 3 0 | Q 0 3 5 7 | @2 Q 1 3 5 6 | @6 E 0 0 3 0 5 0 3 0 | Q 0 3 5 7 | W 0 |");
        var repeat = Assert.Single(Offers(song), o => o.Kind == OfferKind.Repeat);
        Assert.Equal("All bars 1-2", repeat.Subject.What.ToString());
        Assert.Contains("The same two bars come twice in the part.", repeat.Because);
    }

    [Fact]
    public void RiffsOfTheSheet_AreNotOfferedAsRepeats()
    {
        var song = Sheets.Song(Sheets.Top + "riff main\n  @6 E 0 0 3 0 5 0 3 0 |\nsection All\n  guitar  main times 4\n");
        var offer = Assert.Single(Offers(song));
        Assert.Equal((OfferKind.Riff, "main"), (offer.Kind, offer.Subject.What.ToString()));
    }

    [Fact]
    public void BarThatIsNearlyARiff_SaysWhichBarDiffers()
    {
        const string Three = "@6 E 0 0 3 0 5 0 3 0 | Q 0 3 5 7 | ";
        var song = Sheets.Song(Sheets.Top + $"riff main\n  {Three} H 0 5 |\nsection A\n  guitar  main\nsection B\n  guitar  {Three} Q 0 1 2 3 |\nsection C\n  guitar  {Three} Q 0 1 2 3 |\n");
        var repeat = Assert.Single(Offers(song), o => o.Kind == OfferKind.Repeat);
        Assert.Equal("B bars 1-3", repeat.Subject.What.ToString());
        Assert.Contains("It is nearly the main riff: bar three differs.", repeat.Because);
    }

    [Fact]
    public void OneBarThatGoesHighAndBends_StandsOut()
    {
        var quiet = string.Concat(Enumerable.Range(0, 6).Select(i => $"@5 Q {i} {i + 1} {i + 2} {i + 3} | "));
        var song = Sheets.Line(quiet + "@1 S 12 14 15 17 19+ = 17 15 12 14 15 17 19 17 15 12 | @5 Q 0 2 3 5 | Q 2 3 5 7 |");
        var peak = Assert.Single(Offers(song), o => o.Kind is OfferKind.Peak or OfferKind.Hard);
        Assert.Equal("All bar 7", peak.Subject.What.ToString());
    }

    [Theory]
    [MemberData(nameof(DemoSongs.Names), MemberType = typeof(DemoSongs))]
    public void WhatIsOffered_CanBeWrittenInTheSheet(string name)
    {
        var song = DemoSongs.Load(name);
        var offers = Offers(song with { Lesson = null });
        Assert.NotEmpty(offers);
        var sheet = Fretlore.Exchange.Sheets.SheetWriter.Write(song with
        {
            Lesson = new LessonPlan(null, offers.Select(o => new LessonStep("Step", [o.Subject.What], [], null)).ToArray() is var steps ? [.. steps] : []),
        }, new Fretlore.Exchange.Sheets.SheetStyle(FindsRiffs: false));
        Assert.Equal(offers.Select(o => o.Subject.What), Sheets.Song(sheet.Text).Lesson!.Steps.SelectMany(s => s.Teaches));
    }

    private static ValueList<Offer> Offers(Song song)
    {
        var (played, hands) = (Performer.Play(song), HandPlanner.Plan(song));
        return new OfferFinder(played, SongReader.Read(song), hands, new SubjectReader(played, hands)).Find();
    }
}
