using System.Text;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.Sheets;
using Fretlore.Exchange.TextTab;
using Fretlore.Guitar;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Exchange.TextTab;

/// <summary>A song written as plain-text tab and read again: the same strings and frets at the same times, in one line a part.</summary>
public sealed class TextTabRoundTripFacts
{
    [Theory]
    [MemberData(nameof(DemoSongs.Names), MemberType = typeof(DemoSongs))]
    public void ADemoSong_ThroughText_HasTheSameStringsAndFretsAtTheSameTimes(string name)
    {
        var song = DemoSongs.Load(name);
        SameThroughText(song, 80);
        SameThroughText(song, 40);
    }

    [Fact]
    public void AGeneratedSong_ThroughText_HasTheSameStringsAndFretsAtTheSameTimes() =>
        SheetGen.Valid(Soak.Songs(300), Soak.Songs(300) * 2 / 3, song => SameThroughText(song, 80));

    [Fact]
    public void AGeneratedSong_ThroughTheNarrowestText_HasTheSameStringsAndFretsAtTheSameTimes() =>
        SheetGen.Valid(Soak.Songs(100), Soak.Songs(100) * 2 / 3, song => SameThroughText(song, TabStyle.Narrowest));

    private static void SameThroughText(Song song, int width)
    {
        // A tab of rests alone is no tab.
        if (!song.Parts.Any(p => p.Bars.Any(b => b.Notes.Any()))) return;
        var tab = TextTabWriter.Write(song, SongReader.Read(song), new TabStyle(width));
        var read = TextTabReader.Read(Encoding.UTF8.GetBytes(tab.Text));
        var made = Assert.IsType<ImportResult.Made>(read);
        SameSong.Same(Picture(song, song), Picture(made.Song, song), tab.Text);
        Assert.Empty(made.Findings);
        // What is read can be written as a sheet that binds to the same again.
        var sheet = SheetWriter.Write(made.Song, new SheetStyle(FindsRiffs: false));
        SameSong.Same(Picture(song, song), Picture(Fretlore.Tests.Songs.Sheets.Song(sheet.Text), song), sheet.Text);
    }

    /// <summary>Form, changes, and for each bar and part what is struck when; with techniques where a part plays one line, as tab tells them.</summary>
    private static string Picture(Song song, Song model)
    {
        var text = new StringBuilder().AppendLine(song.Info.ToString());
        foreach (var part in song.Parts) text.AppendLine($"{part.Title} {part.Neck.Tuning} {part.Neck.Capo}");
        foreach (var section in song.Sections) text.AppendLine(section.ToString());
        for (var i = 0; i < song.Bars.Count; i++)
        {
            var bar = song.Bars[i];
            text.AppendLine($"{i} {bar with { EndLine = bar.RepeatCount > 0 ? BarLine.Single : bar.EndLine, Tempos = [.. bar.Tempos.Where(t => t.At.IsZero)] }}");
            for (var p = 0; p < song.Parts.Count; p++)
            {
                var part = song.Parts[p];
                var isOneLine = model.Parts[p].Bars[Math.Min(i, model.Bars.Count - 1)].Strands.Count <= 1;
                var struck = part.Bars[i].Strands.SelectMany(s => s.Events).OrderBy(e => e.Start).GroupBy(e => e.Start)
                    .Select(g => (g.Key, Notes: g.SelectMany(e => e.Graces.Concat(e.Notes.Where(n => !n.IsTiedFromBefore))).OrderByDescending(n => n.String.Value).ToList())).Where(g => g.Notes.Count > 0);
                text.AppendLine($"  {part.Title} {part.Bars[i].Neck.Capo}");
                foreach (var (at, notes) in struck) text.AppendLine($"    {at}: {string.Join(' ', notes.Select(n => Told(n, isOneLine)))}");
            }
        }
        return text.ToString();
    }

    // A hammer from nowhere on a string that was played before looks like a hammer-on; a note that is held is not struck.
    private static string Told(Note note, bool withTechniques) =>
        $"{note.String}/{(note.IsDead && note.Fret == Fret.Open ? "" : note.Fret)}{(note.IsDead ? "x" : "")}"
        + (withTechniques ? $" {note.GlideIn} {note.GlideOut} {note.Bend} {note.Vibrato.Width} {note.Harmonic} {note.IsGhost} {note.IsPalmMuted} {note.LetsRing} {AttackOf(note)}" : "");

    private static string AttackOf(Note note) => note.Attack is Attack.HammerFromNowhere or Attack.PullOff ? "HammerOn" : note.Attack.ToString();
}
