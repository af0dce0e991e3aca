using System.Globalization;
using System.Text;
using Fretlore.Lesson.Plans;
using Fretlore.Music;

namespace Fretlore.Lesson.Film;

/// <summary>Where the chapters of a film really begin.</summary>
/// <param name="Starts">Seconds, one for each segment of the plan.</param>
/// <param name="End">Where the last chapter ends.</param>
public sealed record RecordedTimes(ValueList<double> Starts, double End)
{
    public double EndOf(int segment) => segment + 1 < Starts.Count ? Starts[segment + 1] : End;

    /// <summary>The times as planned.</summary>
    public static RecordedTimes Planned(ValueList<FilmSegment> segments) =>
        new(segments.Select(s => s.Start).ToValueList(), segments.Count > 0 ? segments[^1].End : 0);
}

/// <summary>What is wrong with a list of chapters.</summary>
/// <param name="Line">From 1; 0 for the list as a whole.</param>
/// <param name="Text">The line.</param>
/// <param name="Message">What is wrong, a whole sentence.</param>
/// <param name="Remedy">What to do about it, a whole sentence.</param>
public sealed record ChapterProblem(int Line, string Text, string Message, string Remedy);

/// <summary>The list of a film's chapters, a line each: <c>1:23 Main riff</c>. Written from the plan, and read back with the times of the recording.</summary>
public static class ChapterList
{
    private const string EndTitle = "End";

    private const string Form = "Write a time and a title, such as `1:23 Main riff` or `1:23.5 Main riff`.";

    /// <summary>The chapters as planned, for the video's description.</summary>
    public static string Write(ValueList<FilmSegment> segments)
    {
        var text = new StringBuilder();
        foreach (var segment in segments) text.Append(ClockText.At(segment.Start)).Append(' ').Append(OneLine(segment.Title)).Append('\n');
        return text.ToString();
    }

    /// <summary>Reads the times of the final recording.</summary>
    /// <param name="text">A line for each chapter in the plan's order; a last line <c>6:02 End</c> says where the film ends, else the last chapter is as long as planned.</param>
    /// <param name="segments">The planned chapters.</param>
    public static (RecordedTimes? Times, ChapterProblem? Problem) Read(string text, ValueList<FilmSegment> segments)
    {
        var starts = new List<double>();
        double? end = null;
        var lines = text.ReplaceLineEndings("\n").Split('\n');
        var last = 0;
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i].Trim().TrimStart('\uFEFF');
            if (line.Length == 0) continue;
            last = i + 1;
            if (Split(line) is not var (seconds, title)) return Wrong("This is no chapter.", Form);
            if (end is not null) return Wrong("Something stands after the film's end.", "Let the line `End` be the last one.");
            if (starts.Count > 0 && seconds <= starts[^1]) return Wrong("This chapter begins no later than the one before it.", "Put the chapters in the order of the film.");
            if (starts.Count == segments.Count)
            {
                if (!Same(title, EndTitle)) return Wrong($"The plan has {segments.Count} chapters, and this is one more.", "Leave it out, or call it `End` if the film ends here.");
                end = seconds;
                continue;
            }
            var wanted = segments[starts.Count].Title;
            if (!Same(title, OneLine(wanted))) return Wrong($"The plan's next chapter is “{OneLine(wanted)}”.", "Give the chapters the titles and the order of the plan; `fretlore lesson` prints it.");
            starts.Add(seconds);

            (RecordedTimes?, ChapterProblem?) Wrong(string message, string remedy) => (null, new ChapterProblem(i + 1, line, message, remedy));
        }
        if (starts.Count < segments.Count)
        {
            return (null, new ChapterProblem(last, "", $"“{OneLine(segments[starts.Count].Title)}” and what follows it are missing.", "Write a line for each chapter of the plan."));
        }
        return (new RecordedTimes(starts.ToValueList(), end ?? (starts.Count > 0 ? starts[^1] + segments[^1].Seconds : 0)), null);
    }

    private static (double Seconds, string Title)? Split(string line)
    {
        var blank = line.IndexOfAny([' ', '\t']);
        if (blank < 0 || Seconds(line[..blank]) is not { } seconds) return null;
        return (seconds, line[blank..].Trim());
    }

    // 1:23, 1:23.5, 1:02:03
    private static double? Seconds(string time)
    {
        var parts = time.Split(':');
        if (parts.Length is not (2 or 3)) return null;
        var whole = 0L;
        foreach (var part in parts[..^1])
        {
            if (!int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number > 100_000) return null;
            whole = whole * 60 + number;
        }
        if (!double.TryParse(parts[^1], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var seconds) || seconds >= 60) return null;
        return whole * 60 + seconds;
    }

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);

    internal static string OneLine(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
