using System.Globalization;
using System.Text;

namespace Fretlore.Lesson.Captions;

/// <summary>Writes captions as WebVTT (W3C Candidate Recommendation "WebVTT: The Web Video Text Tracks Format").</summary>
public static class WebVtt
{
    public static string Write(CaptionTrack track)
    {
        var text = new StringBuilder("WEBVTT\n");
        for (var i = 0; i < track.Captions.Count; i++)
        {
            var caption = track.Captions[i];
            text.Append(CultureInfo.InvariantCulture, $"\n{i + 1}\n{Time(caption.Start)} --> {Time(caption.End)}\n");
            foreach (var line in caption.Lines) text.Append(Escape(line)).Append('\n');
        }
        return text.ToString();
    }

    private static string Time(long milliseconds) => string.Create(
        CultureInfo.InvariantCulture, $"{milliseconds / 3_600_000:00}:{milliseconds / 60_000 % 60:00}:{milliseconds / 1000 % 60:00}.{milliseconds % 1000:000}");

    // A cue's text may hold tags and character references, so their signs are written as references.
    private static string Escape(string line) => line.Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal).Replace(">", "&gt;", StringComparison.Ordinal);
}
