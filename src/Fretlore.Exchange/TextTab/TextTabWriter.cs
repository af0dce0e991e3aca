using System.Collections.Immutable;
using System.Text;
using Fretlore.Exchange.Reports;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Exchange.TextTab;

/// <summary>How plain-text tab is laid out.</summary>
/// <param name="Width">The most characters in a line, <see cref="Narrowest"/> to <see cref="Widest"/>; only words and titles are never cut to fit.</param>
public sealed record TabStyle(int Width = TabStyle.UsualWidth)
{
    /// <summary>What mail and forums show without breaking lines (common practice).</summary>
    public const int UsualWidth = 80;

    public const int Narrowest = 40;

    public const int Widest = 400;
}

/// <summary>A song as plain-text tab.</summary>
/// <param name="Text">The tab; lines end in a line feed.</param>
/// <param name="Remarks">What the tab leaves out or says otherwise than the song.</param>
public sealed record WrittenTab(string Text, ImmutableArray<Remark> Remarks);

/// <summary>Writes a song as plain-text tab: a line for each string, the note values above it.</summary>
/// <remarks>
/// The values make its times exact, so that strings, frets and times come back as they were; the lines played beside each other by one part
/// become one. The same song gives the same text.
/// </remarks>
public static class TextTabWriter
{
    public static WrittenTab Write(Song song, SongReading reading, TabStyle? style = null)
    {
        var width = Math.Clamp((style ?? new TabStyle()).Width, TabStyle.Narrowest, TabStyle.Widest);
        var remarks = new Remarks();
        var text = new StringBuilder();
        var signs = new TabSigns();
        TabHeader.Write(song, text);
        for (var part = 0; part < song.Parts.Count; part++)
        {
            TabHeader.Write(song.Parts[part], text);
            new TabPart(song, reading, part, width, signs, remarks).Write(text);
        }
        signs.WriteLegend(text);
        LeaveOut(song, remarks);
        return new WrittenTab(text.ToString(), remarks.ToImmutable());
    }

    /// <summary>One part's lines alone, without title and tuning, and what its signs mean.</summary>
    public static string WritePart(Song song, SongReading reading, int part, TabStyle? style = null)
    {
        var text = new StringBuilder();
        var signs = new TabSigns();
        new TabPart(song, reading, part, Math.Clamp((style ?? new TabStyle()).Width, TabStyle.Narrowest, TabStyle.Widest), signs, new Remarks()).Write(text);
        signs.WriteLegend(text);
        return text.ToString();
    }

    private static void LeaveOut(Song song, Remarks remarks)
    {
        foreach (var part in song.Parts.Where(p => p.Sound is not null)) remarks.Add(RemarkKind.LeftOut, "The sound is not carried over.", part.Title);
        if (song.RoadMaps.Count > 0) remarks.Add(RemarkKind.LeftOut, "The rules of road maps are not carried over.");
        if (song.Lesson is not null) remarks.Add(RemarkKind.LeftOut, "The lesson is not carried over.");
        if (song.Recordings.Count > 0) remarks.Add(RemarkKind.LeftOut, "The times of recordings are not carried over.");
    }
}
