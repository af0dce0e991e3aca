using Fretlore.Hands.Plans;
using Fretlore.Lesson.Subjects;
using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Lesson.Subjects;

public class SubjectFacts
{
    private const string Sheet = """
        title  Test Piece
        tuning E2 A2 D3 G3 B3 E4
        tempo  Q = 120

        part one "One"
        part two "Two"

        riff main
          @6 E 0 0 3 0 5 0 3 0 | @6 Q 0 3 H 5 |

        riff main.turn = main with bar 2: W 7 |

        riff spare
          @5 W 0 |

        section Intro
          one  main times 2
        section Verse 1
          one  main, main.turn
          two  @2 Q 5 7 8 10 | @2 Q 15+ = 13 12 | W 5 | = |
        section Break
          two  rest 2 | @1 E 0 3 5 7 8 7 5 3 | W 0 |

        """;

    private static readonly Song Song = Sheets.Song(Sheet);

    [Fact]
    public void Riff_CountsEveryTimeItIsHeard_AndItsShareOfTheSong()
    {
        var main = Of(new Taught("main"));
        // Two bars of two seconds, three times, in a song of twelve bars.
        Assert.Equal((12, 0.5), (main.SecondsHeard, main.Share));
        Assert.Equal("It comes three times, in the intro and verse one. That is half of the song. The song opens with it.", main.Why.ToString());
    }

    [Fact]
    public void Variation_NeedsTheRiffItVaries() => Assert.Equal(["main"], Of(new Taught("main.turn")).Needs);

    [Fact]
    public void Section_NeedsItsRiffs_AndHasWhatLiesBetweenThemAsPassages()
    {
        var verse = Of(new Taught("Verse 1"));
        Assert.Equal(["main", "main.turn"], verse.Needs);
        Assert.Equal(["main", "main.turn", "Verse 1 bars 1-4 of two"], verse.Lines.Select(l => l.Riff.Name));
        Assert.Equal([new Place(0, 2, 4), new Place(1, 2, 4)], verse.Places.Select(p => p with { FirstBar = p.FirstBar - verse.Places[0].FirstBar + 2 }));
    }

    [Fact]
    public void BarsOfARiff_AreARiffOfTheirOwn()
    {
        var end = Of(new Taught("main", new BarRange(2, 2)));
        var bar = Assert.Single(Assert.Single(end.Lines).Riff.Content);
        Assert.Equal([0, 3, 5], bar.Notes.Select(n => n.Fret.Number));
        Assert.Equal(SubjectKind.Passage, end.Kind);
    }

    [Fact]
    public void BarsOfOnePart_LeaveTheOthersOut()
    {
        var lead = Of(new Taught("Verse 1", new BarRange(2, 2), "two"));
        Assert.Equal([15, 13, 12], Assert.Single(lead.Lines).Riff.Content[0].Notes.Where(n => n.Attack != Attack.Held).Select(n => n.Fret.Number));
        Assert.Contains("It is the only place with bends.", lead.Why.Breaths);
    }

    [Fact]
    public void RiffThatTheSongDoesNotPlay_SaysSo() => Assert.StartsWith("The song as it stands does not play it", Of(new Taught("spare")).Why.ToString());

    [Theory]
    [InlineData("Verse 1", "verse one")]
    [InlineData("Part A", "part A")]
    [InlineData("Intro", "the intro")]
    [InlineData("Theme again", "the theme again")]
    [InlineData("Half-time bridge", "the half time bridge")]
    [InlineData("The air", "the air")]
    [InlineData("All", "the all section")]
    [InlineData("Slate", "the slate section")]
    public void Sections_AreCalledAsOneWouldSayThem(string name, string said) => Assert.Equal(said, SectionWords.Of(name));

    [Fact]
    public void SongOfOneSection_DoesNotSayWhereARiffComes()
    {
        var song = Sheets.Song(Sheets.Top + "riff main\n  @6 E 0 0 3 0 5 0 3 0 |\nsection All\n  guitar  main, @5 W 3 |\n");
        Assert.StartsWith("It comes once. ", new SubjectReader(Performer.Play(song), HandPlanner.Plan(song)).Of(new Taught("main")).Why.ToString(), StringComparison.Ordinal);
    }

    private static Subject Of(Taught what) => new SubjectReader(Performer.Play(Song), HandPlanner.Plan(Song)).Of(what);
}
