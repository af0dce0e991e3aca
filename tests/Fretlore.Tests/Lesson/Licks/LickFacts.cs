using System.Text.RegularExpressions;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.Licks;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Lesson.Licks;

public class LickFacts
{
    private static readonly Song Song = Sheets.Song(Sheets.Top + """
        riff blues
          @3 S 5,7,5 7 @2 E 5 8+v @2 Q 5 @3 E 7 9 |

        riff open
          @6 E 0 3 5 0 3 6 5 0 |

        riff bell
          @6 H 12* 7* |

        section All
          guitar  blues, open, bell

        """);

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(-1)]
    public void LickOnOtherStrings_SoundsTheSame(int strings)
    {
        var lick = Riff("blues");
        var moved = LickMove.Across(lick, strings)!;
        Assert.Equal(Heights(lick), Heights(moved));
        Assert.All(Notes(lick).Zip(Notes(moved)), pair => Assert.Equal(pair.First.String.Value + strings, pair.Second.String.Value));
        // By the neck itself, not by what was carried over.
        Assert.All(Notes(moved), note => Assert.Equal(note.Sounding, moved.Neck.Sounding(note.String, note.Fret)));
    }

    [Theory]
    [InlineData(2)]
    [InlineData(-3)]
    [InlineData(7)]
    public void LickAlongTheNeck_SoundsSoManySemitonesAway_WithAllThatIsDoneToIt(int frets)
    {
        var lick = Riff("blues");
        var moved = LickMove.Along(lick, frets)!;
        Assert.Equal(Heights(lick).Select(h => h + frets), Heights(moved));
        Assert.All(Notes(moved), note => Assert.Equal(note.Sounding, moved.Neck.Sounding(note.String, note.Fret)));
        Assert.Equal(Notes(lick).Select(n => (n.Attack, n.Bend, n.Vibrato)), Notes(moved).Select(n => (n.Attack, n.Bend, n.Vibrato)));
    }

    [Fact]
    public void LickThatWouldLeaveTheNeck_OrIsTouchedOverAFret_StaysWhereItIs()
    {
        Assert.Null(LickMove.Along(Riff("open"), -1));
        Assert.Null(LickMove.Across(Riff("open"), 1));
        Assert.Null(LickMove.Along(Riff("blues"), 20));
        Assert.Null(LickMove.Along(Riff("bell"), 2));
    }

    [Fact]
    public void Card_ShowsTheLick_OtherPositions_AndOtherKeys_EachWithItsHand()
    {
        Assert.True(Key.TryParse("A", "minor", out var home));
        var versions = new LickCard(Song, home).Of(Riff("blues"), Tempo.Default);
        Assert.Equal("As in the song", versions[0].Title);
        Assert.Equal(2, versions.Count(v => v.Title.StartsWith("Same notes, ", StringComparison.Ordinal)));
        Assert.Equal(3, versions.Count(v => v.Title.StartsWith("In ", StringComparison.Ordinal)));
        Assert.All(versions, v => Assert.True(v.Hand.Cost > 0 && v.Hand.Difficulty != Difficulty.None));
        Assert.All(versions.Where(v => v.Title.Contains("a fourth up", StringComparison.Ordinal)), v => Assert.StartsWith("In D minor", v.Title, StringComparison.Ordinal));
    }

    [Fact]
    public void Fingers_StandForEachNoteOfTheHandPlan_BarByBar()
    {
        Assert.True(Key.TryParse("A", "minor", out var home));
        var fingers = new LickCard(Song, home).Of(Riff("blues"), Tempo.Default)[0].Fingers;
        Assert.StartsWith("Position ", fingers, StringComparison.Ordinal);
        Assert.Equal(Notes(Riff("blues")).Count(n => !n.IsTiedFromBefore), fingers.Count(char.IsAsciiDigit) - Regex.Count(fingers, @"\d+:"));
        var open = new LickCard(Song, home).Of(Riff("open"), Tempo.Default)[0].Fingers;
        Assert.Equal(3, open.Split(' ').Count(f => f.TrimEnd(';') == "0"));
    }

    [Fact]
    public void CardAsASong_HasItsVersionsAsSections_AndEachNoteOnce()
    {
        Assert.True(Key.TryParse("A", "minor", out var home));
        var card = LickCardSong.Of(Song, "Blues", "It comes once.", Tempo.Default, new LickCard(Song, home).Of(Riff("blues"), Tempo.Default));
        Assert.Equal(card.Sections.Count, card.Bars.Count);
        var ids = card.Parts[0].Bars.SelectMany(b => b.Notes).Select(n => n.Id.Index).ToArray();
        Assert.Equal(Enumerable.Range(0, card.NoteCount), ids.Order());
        Assert.StartsWith("It comes once. ", card.Parts[0].Bars[0].Strands[0].Events[0].Words, StringComparison.Ordinal);
        Assert.NotEmpty(SongReader.Read(card).Parts);
    }

    private static Riff Riff(string name) => Song.Riffs.First(r => r.Name == name);

    private static IEnumerable<Note> Notes(Riff riff) => riff.Content.SelectMany(bar => bar.Notes);

    private static IEnumerable<Height> Heights(Riff riff) => Notes(riff).Select(n => n.Sounding);
}
