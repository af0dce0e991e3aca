using System.Collections.Immutable;
using System.Text;
using Fretlore.Exchange.Reports;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>A song as the text of a sheet.</summary>
/// <param name="Text">The sheet; lines end in a line feed.</param>
/// <param name="Remarks">What the sheet says otherwise than the song.</param>
public sealed record WrittenSheet(string Text, ImmutableArray<Remark> Remarks);

/// <summary>How a sheet is written.</summary>
/// <param name="FindsRiffs">
/// True to look for bars that come back and make riffs, <c>again</c> and shapes of them, for a song from elsewhere; false to keep to
/// what the song says of itself.
/// </param>
public sealed record SheetStyle(bool FindsRiffs = true);

/// <summary>Writes a song as a sheet that a person would have typed: time and place once, rhythm cells, spans, riffs.</summary>
/// <remarks>Parsed and bound, the text gives the same music. The same song gives the same text.</remarks>
public static class SheetWriter
{
    public static WrittenSheet Write(Song song, SheetStyle? style = null)
    {
        var remarks = new Remarks();
        var findsRiffs = style?.FindsRiffs ?? true;
        song = SheetNames.Fitted(song, remarks);
        if (findsRiffs) song = ShapeFinder.Named(song);
        var text = new StringBuilder();
        HeaderText.Write(song, text);
        new SongText(song, findsRiffs, remarks).Write(text);
        LessonText.Write(song, text);
        RecordingText.Write(song, text);
        return new WrittenSheet(text.ToString(), remarks.ToImmutable());
    }
}
