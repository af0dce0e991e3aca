using System.Globalization;
using System.Text;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>Recordings and the times of their bars.</summary>
public static class RecordingText
{
    internal static void Write(Song song, StringBuilder text)
    {
        foreach (var recording in song.Recordings)
        {
            if (song.Lesson is not null || recording != song.Recordings[0]) text.Append('\n');
            text.Append(Of(recording));
        }
    }

    /// <summary>One recording as its block stands in a sheet.</summary>
    public static string Of(Recording recording)
    {
        var text = new StringBuilder();
        text.Append("recording ").Append(SheetWords.Quoted(recording.Name)).Append('\n');
        foreach (var bar in recording.Bars)
        {
            text.Append(CultureInfo.InvariantCulture, $"  bar {bar.Number}{(bar.Time > 1 ? $" time {bar.Time}" : "")} at {(int)bar.At.TotalMinutes}:{bar.At:ss\\.fff}\n");
        }
        return text.ToString();
    }
}
