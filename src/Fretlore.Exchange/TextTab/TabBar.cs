using Fretlore.Music;

namespace Fretlore.Exchange.TextTab;

/// <summary>The rows above the strings, from the strings up.</summary>
internal enum TabRow
{
    Values,
    Hand,
    Marks,
    Chords,
    Changes,
    Form,
}

/// <summary>A text above a column of a bar.</summary>
/// <param name="Row">The row it stands in; where it meets another it goes one line up.</param>
/// <param name="Column">Its first character, from the bar's left.</param>
/// <param name="Text">The text.</param>
internal sealed record TabLabel(TabRow Row, int Column, string Text);

/// <summary>A way of playing that lasts over several columns.</summary>
/// <param name="Word">Such as <c>PM</c>.</param>
/// <param name="Columns">The columns of the moments that are played so.</param>
/// <param name="Room">The last column before the next moment, or before the bar line.</param>
/// <param name="First">True when the bar's first moment is.</param>
/// <param name="Last">True when the bar's last moment is.</param>
internal sealed record TabStretch(string Word, List<int> Columns, int Room, bool First, bool Last);

/// <summary>A bar, or a piece of one that is too wide for a line, as text: a line a string between bar lines.</summary>
internal sealed class TabBar
{
    public required string[] Strings { get; set; }

    public int Width => Strings[0].Length;

    /// <summary>How wide it has to be for what stands over its last notes; chord symbols and words may give way to the left.</summary>
    public int Needed => Labels.Where(l => l.Row is TabRow.Values or TabRow.Marks or TabRow.Changes && l.Text[0] != '"').Select(l => l.Column + l.Text.Length)
        .Concat(Stretches.Where(s => s.Columns.Count == 1).Select(s => s.Columns[0] + TabSystem.Short(s.Word).Length)).Append(Width).Max();

    public void WidenTo(int width) => Strings = [.. Strings.Select(s => s.PadRight(width, '-'))];

    public List<TabLabel> Labels { get; } = [];

    public List<TabStretch> Stretches { get; } = [];

    /// <summary>The passes of the ending it belongs to, such as <c>1,3</c>; null outside endings.</summary>
    public string? Ending { get; init; }

    public bool StartsEnding { get; init; }

    /// <summary>What stands to its left, such as <c>|:</c>; empty when it goes on from the piece before.</summary>
    public string Left { get; set; } = "|";

    /// <summary>What stands to its right; empty when it goes on in the next piece.</summary>
    public string Right { get; set; } = "|";
}

/// <summary>Gives moments their columns: in proportion to time as long as that is not too wide, and never on top of each other.</summary>
internal static class TabColumns
{
    // Characters a quarter note takes (from looking at typed tab): where true proportion would need more than the roomiest, the bar is set by eye.
    private const int Tightest = 4;
    private const int ByEye = 6;
    private const int Roomiest = 12;

    /// <summary>The column of each moment, and after them the bar's width.</summary>
    /// <param name="moments">The moments.</param>
    /// <param name="cells">For each moment the signs on its strings.</param>
    /// <param name="length">The bar's length.</param>
    public static int[] Of(List<TabMoment> moments, List<TabCell?[]> cells, Beats length)
    {
        var left = cells.ConvertAll(m => m.Max(c => c?.Before.Length ?? 0));
        var gaps = new int[moments.Count];
        for (var i = 0; i < moments.Count; i++)
        {
            var signs = Math.Max(1, cells[i].Max(c => c is null ? 0 : c.Body.Length + c.After.Length));
            var next = i + 1 < moments.Count ? left[i + 1] : 0;
            var dash = i + 1 == moments.Count || Touch(cells[i], cells[i + 1]) ? 1 : 0;
            gaps[i] = Math.Max(Math.Max(signs + next + dash, 2), moments[i].Value.Length + 1);
        }
        var needed = Enumerable.Range(0, moments.Count).Max(i => gaps[i] / moments[i].Length.ToDouble());
        var perQuarter = needed > Roomiest ? ByEye : Math.Max(Tightest, needed);
        var columns = new int[moments.Count + 1];
        columns[0] = left[0] + 1;
        for (var i = 0; i < moments.Count; i++)
        {
            var end = moments[i].At + moments[i].Length;
            var even = columns[0] + (int)Math.Round(end.ToDouble() * perQuarter);
            columns[i + 1] = Math.Max(columns[i] + gaps[i], even);
        }
        return columns;
    }
    // True when two notes on one string would run into each other; where a sign joins them they may.
    private static bool Touch(TabCell?[] first, TabCell?[] second)
    {
        for (var i = 0; i < first.Length; i++)
        {
            if (first[i] is { } one && second[i] is { } two && !(TabSigns.EndsInJoint(one) && two.Before.Length == 0)) return true;
        }
        return false;
    }
}
