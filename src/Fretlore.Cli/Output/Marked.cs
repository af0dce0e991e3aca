using System.Text;

namespace Fretlore.Cli.Output;

/// <summary>A line of text with a marker under a stretch of it, short enough to read and safe to show on a terminal.</summary>
internal static class Marked
{
    private const int Widest = 100;
    private const int Lead = 40;

    /// <summary>The line, then the marker.</summary>
    /// <param name="line">The line without its end.</param>
    /// <param name="column">Where the stretch begins, from 1.</param>
    /// <param name="length">How long it is; what reaches past the line's end is left out.</param>
    public static string[] Lines(string line, int column, int length)
    {
        var start = Math.Clamp(column - 1, 0, line.Length);
        var end = Math.Clamp(start + Math.Max(1, length), start, Math.Max(line.Length, start + 1));
        var from = line.Length <= Widest ? 0 : Math.Max(0, start - Lead);
        var to = Math.Min(line.Length, from + Widest);

        var shown = new StringBuilder(from > 0 ? "…" : "");
        var marker = new StringBuilder(from > 0 ? " " : "");
        for (var i = from; i < to; i++) shown.Append(Safe(line[i]));
        if (to < line.Length) shown.Append('…');
        marker.Append(' ', start - from).Append('^', Math.Max(1, Math.Min(end, Math.Max(to, start + 1)) - start));
        return [shown.ToString(), marker.ToString()];
    }

    /// <summary>A sheet is anyone's text: what would move the cursor or change colours is not sent to the terminal.</summary>
    private static char Safe(char c) => c == '\t' ? ' ' : char.IsControl(c) ? '\u00B7' : c;

    /// <summary>A text without signs that would move the cursor.</summary>
    public static string Safe(string text) => text.Any(char.IsControl) ? string.Concat(text.Select(Safe)) : text;
}
