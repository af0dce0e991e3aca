namespace Fretlore.Exchange.TextTab.Reading;

/// <summary>A piece of a text with tab in it.</summary>
internal abstract record TabBlock
{
    private TabBlock()
    {
    }

    /// <summary>String lines that belong together, the top one first.</summary>
    /// <param name="Strings">The strings.</param>
    /// <param name="Above">The lines right above them, from the top down.</param>
    /// <param name="Below">The lines right below them.</param>
    public sealed record System(List<StringLine> Strings, List<TabLine> Above, List<TabLine> Below) : TabBlock;

    /// <summary>Lines that show no strings and don't touch any that do.</summary>
    public sealed record Words(List<TabLine> Lines) : TabBlock;
}

/// <summary>Sorts the lines of a text into systems and what stands between.</summary>
internal static class TabBlocks
{
    public const int FewestStrings = 4;
    public const int MostStrings = 9;

    private const int MostAbove = 12;

    /// <summary>The blocks of a text.</summary>
    /// <param name="lines">Its lines.</param>
    /// <param name="isOwn">True for a tab that was written here: its strings are named on every line.</param>
    public static List<TabBlock> Of(List<TabLine> lines, bool isOwn)
    {
        var strings = lines.ConvertAll(StringLine.Of);
        Close(lines, strings);
        var blocks = new List<TabBlock>();
        var words = new List<TabLine>();
        for (var i = 0; i < lines.Count;)
        {
            var count = 0;
            while (i + count < lines.Count && strings[i + count] is not null) count++;
            if (count == 0)
            {
                words.Add(lines[i++]);
                continue;
            }
            var run = strings.GetRange(i, count).ConvertAll(s => s!);
            i += count;
            var systems = Systems(Unwrapped(run), isOwn).ToList();
            if (systems.Count == 0)
            {
                words.AddRange(run.Select(s => s.Line));
                continue;
            }
            var above = TakeAbove(words);
            if (words.Exists(w => !w.IsBlank)) blocks.Add(new TabBlock.Words(words));
            words = [];
            for (var s = 0; s < systems.Count; s++)
            {
                var below = new List<TabLine>();
                if (s == systems.Count - 1) i = TakeBelow(lines, strings, i, below);
                blocks.Add(new TabBlock.System(systems[s], s == 0 ? above : [], below));
            }
        }
        if (words.Exists(w => !w.IsBlank)) blocks.Add(new TabBlock.Words(words));
        return blocks;
    }

    // A text in which each line is followed by a blank one is read without them.
    private static void Close(List<TabLine> lines, List<StringLine?> strings)
    {
        var (alone, all) = (0, 0);
        for (var i = 0; i < lines.Count; i++)
        {
            if (strings[i] is null) continue;
            all++;
            if ((i == 0 || lines[i - 1].IsBlank) && (i + 1 == lines.Count || lines[i + 1].IsBlank)) alone++;
        }
        if (all < FewestStrings || alone * 5 < all * 4) return;
        for (var i = lines.Count - 1; i > 0; i--)
        {
            if (!lines[i].IsBlank || lines[i - 1].IsBlank) continue;
            lines.RemoveAt(i);
            strings.RemoveAt(i);
        }
    }

    // Where a page has broken every line of a system in two, the pieces without a name belong to the ones before them.
    private static List<StringLine> Unwrapped(List<StringLine> run)
    {
        var isBroken = run.Count >= 2 * FewestStrings && run.Count % 2 == 0;
        for (var i = 0; i < run.Count && isBroken; i++) isBroken = run[i].Label.Length > 0 == (i % 2 == 0);
        var widths = run.Where((_, i) => i % 2 == 0).Select(s => s.Line.Text.Length).ToList();
        if (!isBroken || widths.Max() - widths.Min() > 2) return run;
        var joined = new List<StringLine>();
        for (var i = 0; i < run.Count; i += 2)
        {
            var (first, second) = (run[i].Line, run[i + 1].Line);
            var line = first with { Text = first.Text + second.Text.TrimStart() };
            joined.Add(StringLine.Of(line) ?? run[i]);
        }
        return joined;
    }

    private static IEnumerable<List<StringLine>> Systems(List<StringLine> run, bool isOwn)
    {
        var size = SizeOf(run);
        for (var i = 0; i < run.Count; i += size)
        {
            var system = run.GetRange(i, Math.Min(size, run.Count - i));
            // The last notes of a bar that is broken over lines leave little of the strings to see: their names tell.
            var isNamed = system.TrueForAll(s => s.Label.Length > 0 && (isOwn || HasBars(s)));
            if (system.TrueForAll(s => !s.IsSure) && !(isNamed && system.Count >= FewestStrings)) continue;
            // Fewer lines are a system when they are named, such as the two strings that a riff is played on.
            if (system.Count >= FewestStrings || (isNamed && system.TrueForAll(s => s.IsSure && HasBars(s)))) yield return system;
        }
    }

    private static bool HasBars(StringLine line) => line.Line.Text.AsSpan(line.Start, line.End - line.Start).Contains('|');

    // How many lines a system has: up to where the first name comes back, or as many as lines of strings can be shared out among.
    private static int SizeOf(List<StringLine> run)
    {
        if (run.Count <= FewestStrings) return run.Count;
        var names = run.ConvertAll(s => s.Label);
        for (var size = FewestStrings; size <= MostStrings && size < run.Count; size++)
        {
            if (names[0].Length == 0) break;
            if (run.Count % size == 0 && Repeats(names, size)) return size;
        }
        if (run.Count <= MostStrings) return run.Count;
        foreach (var size in (ReadOnlySpan<int>)[6, 7, 4, 8, 5, 9])
        {
            if (run.Count % size == 0) return size;
        }
        return 6;
    }

    private static bool Repeats(List<string> names, int size)
    {
        for (var i = size; i < names.Count; i++)
        {
            if (!names[i].Equals(names[i - size], StringComparison.Ordinal)) return false;
        }
        return true;
    }

    // The lines above a system up to a blank one.
    private static List<TabLine> TakeAbove(List<TabLine> words)
    {
        var first = words.Count;
        while (first > 0 && words.Count - first < MostAbove && !words[first - 1].IsBlank) first--;
        var above = words.GetRange(first, words.Count - first);
        words.RemoveRange(first, words.Count - first);
        return above;
    }

    // The lines below a system, unless they stand right above the next one.
    private static int TakeBelow(List<TabLine> lines, List<StringLine?> strings, int at, List<TabLine> below)
    {
        var end = at;
        while (end < lines.Count && end - at < MostAbove && !lines[end].IsBlank && strings[end] is null) end++;
        if (end < lines.Count && strings[end] is not null) return at;
        below.AddRange(lines.GetRange(at, end - at));
        return end;
    }
}
