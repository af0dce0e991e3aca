using Fretlore.Lesson.Excerpts;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Lesson.Excerpts;

public class ExcerptFacts
{
    private const string Sheet = """
        title  Long Song
        tuning E2 A2 D3 G3 B3 E4
        tempo  Q = 120
        key    D minor

        part one "One"
        part two "Two"

        shape hidden [3 3 3 3 3 3]
        shape shown  [0 2 2 0 0 0]

        riff opening
          @6 Q 0 3 5 7 | (Q = 90) @6 W 7 |

        riff secret
          @5 Q 1 3 5 1 | W #hidden |

        section Intro
          one  opening
          two  @1 W 12 | = |
        section Verse
          feel swing
          one  @6-1 W #shown | @5 H 5 7 | W = | secret
          two  @1 H = 10 | ;12 8 | W 7 | rest 2
        section Outro
          one  opening
          two  rest 2

        lesson
          excerpt 
        """;

    [Fact]
    public void Excerpt_HoldsTheChosenBars_AndSaysSoInItsTitle()
    {
        var excerpt = Of("bars 3-5");
        Assert.Equal("Long Song (free excerpt: bars 3 to 5 of 9)", excerpt.Info.Title);
        Assert.Equal([3, 4, 5], excerpt.Bars.Select(b => b.Number));
        Assert.All(excerpt.Parts, part => Assert.Equal(3, part.Bars.Count));
        Assert.Equal([new Section("Verse", 0, 3)], excerpt.Sections);
    }

    [Fact]
    public void Excerpt_KnowsNothingOfOtherRiffsShapesOrSections()
    {
        var excerpt = Of("Verse bars 1-2");
        Assert.Empty(excerpt.Riffs);
        Assert.Empty(excerpt.RiffUses);
        Assert.Null(excerpt.Lesson);
        Assert.Equal("shown", Assert.Single(excerpt.Shapes).Name);
        Assert.Equal("Verse", Assert.Single(excerpt.Sections).Name);
    }

    [Fact]
    public void TempoFeelAndKey_AreThoseInForceAtItsStart()
    {
        var first = Of("bars 4-5").Bars[0];
        Assert.Equal(90m, first.Tempos[0].Tempo.PerMinute);
        Assert.Equal(ValueBase.Eighth, first.FeelChange!.Value.Swung);
        Assert.Equal("D minor", first.Key.ToString());
    }

    [Fact]
    public void NoteHeldFromBefore_IsPicked_AndOneHeldOnEndsWithTheExcerpt()
    {
        var two = Of("bar 3").Parts[1].Bars[0].Strands[0].Events;
        Assert.Equal((Attack.Picked, 12), (two[0].Notes[0].Attack, two[0].Notes[0].Fret.Number));
        var one = Of("bar 4").Parts[0].Bars[0].Strands[0].Events;
        Assert.False(one[^1].Notes[0].IsHeldOn);
        var glide = Of("bar 4").Parts[1].Bars[0].Strands[0].Events[0].Notes[0];
        Assert.Equal(Attack.Picked, glide.Attack);
    }

    [Fact]
    public void OnePart_CanBeGivenAwayAlone() => Assert.Equal("two", Assert.Single(Of("Verse of two").Parts).Name);

    [Fact]
    public void SheetWithoutAnExcerpt_GivesNothingAway() => Assert.Null(Excerpt.Of(DemoSongs.Load("lanterns-on-the-weir.lore"), SongReader.Read(DemoSongs.Load("lanterns-on-the-weir.lore"))));

    private static Song Of(string excerpt)
    {
        var song = Sheets.Song(Sheet.TrimEnd() + " " + excerpt + "\n");
        return Excerpt.Of(song, SongReader.Read(song))!;
    }
}
