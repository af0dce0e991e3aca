using CsCheck;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Performance;

/// <summary>What a cursor asks: when is this written note heard, and where is the music now.</summary>
public sealed class WrittenTimesFacts
{
    [Fact]
    public void ANoteInARepeat_IsHeardOnceAPass()
    {
        var (song, times) = Of("times 2{ @6 Q 0 1 2 3 | } @6 W 5");
        var second = NotesOf(song)[1];
        Assert.Equal([(0, 0.5, 1.0), (1, 2.5, 3.0)], times.Of(second.Id).Select(t => (t.Bar, t.Start, t.End)));
        Assert.Equal([1, 2, 1], song.Bars.Select(b => b.Pass));
    }

    [Fact]
    public void ATiedNote_IsFollowedValueByValue()
    {
        var (song, times) = Of("@6 H. 0 Q 3 | Q = H 5 Q R");
        var (start, held) = (NotesOf(song)[1], NotesOf(song)[2]);
        Assert.Equal(Attack.Held, held.Attack);
        Assert.Equal([(0, 1.5, 2.0)], times.Of(start.Id).Select(t => (t.Bar, t.Start, t.End)));
        Assert.Equal([(1, 2.0, 2.5)], times.Of(held.Id).Select(t => (t.Bar, t.Start, t.End)));
    }

    [Fact]
    public void ATremoloPickedNote_IsHeardOnce()
    {
        var (song, times) = Of("@1 H 12:S 10");
        Assert.Equal([(0, 0.0, 1.0)], times.Of(NotesOf(song)[0].Id).Select(t => (t.Bar, t.Start, t.End)));
    }

    [Fact]
    public void APlaceInABar_IsReachedWhereTheFeelPutsIt()
    {
        var (song, times) = Of("(swing) @6 E 0 1 2 3 Q 5 3 | W 0");
        Assert.Equal(0.5 * 2 / 3, times.SecondsAt(0, Beats.Of(1, 2)), 9);
        Assert.Equal(2.5, times.SecondsAt(1, Beats.Of(1)), 9);
        Assert.Equal(0.5 * 2 / 3, times.Of(NotesOf(song)[1].Id)[0].Start, 9);
        Assert.Equal([0, 0, 1, 1], ((double[])[-1, 1.99, 2, 99]).Select(times.BarAt));
    }

    [Fact]
    public void EveryNoteOfEveryPart_IsHeardAsOftenAsItsBarIsPlayed_AndNeverBackwards() => SongGen.Songs.Sample(song =>
    {
        var performed = Performer.Play(song);
        var times = WrittenTimes.Of(performed);
        foreach (var part in song.Parts)
        {
            for (var bar = 0; bar < song.Bars.Count; bar++)
            {
                var passes = performed.Bars.Count(b => b.Bar == bar);
                foreach (var note in part.Bars[bar].Notes)
                {
                    var heard = times.Of(note.Id);
                    Assert.Equal(passes, heard.Length);
                    Assert.Equal(heard.Select(t => t.Start).Order(), heard.Select(t => t.Start));
                    Assert.All(heard, t => Assert.True(t.End >= t.Start && performed.Bars[t.Bar].Bar == bar, $"{t}"));
                }
            }
        }
    }, iter: 200);

    private static (PerformedSong Song, WrittenTimes Times) Of(string music)
    {
        var song = Performer.Play(Sheets.Line(music));
        return (song, WrittenTimes.Of(song));
    }

    private static List<Note> NotesOf(PerformedSong song) => [.. song.Song.Parts[0].Bars.SelectMany(b => b.Notes)];
}
