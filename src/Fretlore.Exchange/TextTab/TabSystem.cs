using System.Text;

namespace Fretlore.Exchange.TextTab;

/// <summary>Bars side by side, with what stands above them.</summary>
internal sealed class TabSystem
{
    private readonly string[] names;
    private readonly List<TabBar> bars;
    private readonly int width;
    private readonly int[] starts;
    private readonly StringBuilder[] strings;

    public TabSystem(string[] names, List<TabBar> bars, int width)
    {
        (this.names, this.bars, this.width) = (names, bars, width);
        starts = new int[bars.Count];
        strings = [.. names.Select(n => new StringBuilder(n))];
        for (var i = 0; i < bars.Count; i++)
        {
            var line = LineBefore(i);
            foreach (var text in strings) text.Append(line);
            starts[i] = strings[0].Length;
            for (var s = 0; s < strings.Length; s++) strings[s].Append(bars[i].Strings[s]);
        }
        foreach (var text in strings) text.Append(bars[^1].Right);
    }

    public void Write(StringBuilder text)
    {
        var above = new List<string>();
        foreach (var row in Enum.GetValues<TabRow>()) above.AddRange(Row(row));
        for (var i = above.Count - 1; i >= 0; i--) text.Append(above[i]).Append('\n');
        foreach (var line in strings) text.Append(line).Append('\n');
        text.Append('\n');
    }

    // A line that ends one bar and begins the next is written once: ":|" and "|:" are ":|:".
    private string LineBefore(int bar)
    {
        var left = bars[bar].Left;
        if (bar == 0) return left.Length > 0 ? left : " ";
        var right = bars[bar - 1].Right;
        return right + (left.Length > 1 ? left[1..] : "");
    }

    // The lines of a row, the lowest first: each label in the lowest line in which it has room.
    private List<string> Row(TabRow row)
    {
        var lines = new List<StringBuilder>();
        foreach (var (column, text) in Labels(row).OrderBy(l => l.Column))
        {
            // What would stand out on the right is moved in as far as it goes.
            var at = row is TabRow.Values or TabRow.Hand ? column : Math.Max(0, Math.Min(column, width - text.Length));
            var line = lines.Find(l => l.Length == 0 || l.Length < at);
            if (line is null) lines.Add(line = new StringBuilder());
            line.Append(' ', at - line.Length).Append(text);
        }
        return lines.ConvertAll(l => l.ToString());
    }

    private IEnumerable<(int Column, string Text)> Labels(TabRow row)
    {
        for (var i = 0; i < bars.Count; i++)
        {
            foreach (var label in bars[i].Labels.Where(l => l.Row == row))
            {
                // How often a repeat is played stands at its end.
                yield return (row == TabRow.Form ? starts[i] + label.Column - label.Text.Length : starts[i] + label.Column, label.Text);
            }
        }
        if (row == TabRow.Form) foreach (var ending in Endings()) yield return ending;
        if (row == TabRow.Marks) foreach (var stretch in Stretches()) yield return stretch;
    }

    private IEnumerable<(int Column, string Text)> Endings()
    {
        for (var i = 0; i < bars.Count;)
        {
            var next = i + 1;
            if (bars[i].Ending is not { } passes)
            {
                i = next;
                continue;
            }
            while (next < bars.Count && bars[next].Ending == passes && (!bars[next].StartsEnding || bars[next].Left.Length == 0)) next++;
            var end = starts[next - 1] + bars[next - 1].Width;
            var room = end - starts[i] - passes.Length - 1;
            // How often it is played stands at the right end.
            var times = bars[next - 1].Labels.Where(l => l.Row == TabRow.Form).Sum(l => l.Text.Length + 1);
            yield return (starts[i], passes + "." + new string('-', Math.Max(0, room - times - 1)) + (room - times > 0 ? "|" : ""));
            i = next;
        }
    }

    // Stretches of neighbouring bars are one, from its first moment to its last.
    private IEnumerable<(int Column, string Text)> Stretches()
    {
        foreach (var word in bars.SelectMany(b => b.Stretches).Select(s => s.Word).Distinct())
        {
            var (columns, room) = (new List<int>(), 0);
            for (var i = 0; i < bars.Count; i++)
            {
                foreach (var stretch in bars[i].Stretches.Where(s => s.Word == word))
                {
                    var goesOn = stretch.First && i > 0 && bars[i - 1].Stretches.Exists(s => s.Word == word && s.Last);
                    if (!goesOn && columns.Count > 0)
                    {
                        foreach (var text in Stretch(word, columns, room)) yield return text;
                        columns = [];
                    }
                    columns.AddRange(stretch.Columns.Select(c => starts[i] + c));
                    room = starts[i] + stretch.Room;
                }
            }
            if (columns.Count > 0) foreach (var text in Stretch(word, columns, room)) yield return text;
        }
    }

    /// <summary>A word as it is written where there is little room.</summary>
    public static string Short(string word) => word == "let ring" ? "ring" : word;

    // "PM----|": the line ends over the last moment, or before the one after it; where there is no room for it the word stands over each.
    private static IEnumerable<(int Column, string Text)> Stretch(string word, List<int> columns, int room)
    {
        if (columns[0] + word.Length > room) word = Short(word);
        var end = Math.Max(columns[^1], columns[0] + word.Length);
        if (columns.Count == 1) yield return (columns[0], word);
        else if (end > room) foreach (var column in columns) yield return (column, word);
        else yield return (columns[0], word + new string('-', end - columns[0] - word.Length) + "|");
    }
}
