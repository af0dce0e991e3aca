using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Exchange.Reports;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>What one line of music is written from: a part's bars, or a riff's.</summary>
internal sealed record LineSource
{
    public required ValueList<Bar> Bars { get; init; }

    public required ValueList<PartBar> Content { get; init; }

    public required string Title { get; init; }

    public required IReadOnlyDictionary<string, NamedShape> Shapes { get; init; }

    public required Remarks Remarks { get; init; }

    public ImmutableArray<Repeat> Repeats { get; init; } = [];

    /// <summary>The riff played from a bar on, and its bars; or null.</summary>
    public Func<int, (string Name, int Count)?> RiffAt { get; init; } = _ => null;

    /// <summary>Metre, tempo and the like to be written at a time of a bar, or null.</summary>
    public Func<int, Beats, string?> ChangesAt { get; init; } = (_, _) => null;

    /// <summary>The jump to be written at a bar's end, or null.</summary>
    public Func<int, string?> JumpAt { get; init; } = _ => null;

    /// <summary>True to write bars that are like the one before as <c>again</c>.</summary>
    public Func<int, bool> IsAgain { get; init; } = _ => false;

    /// <summary>True when a repeat is nothing but rests here and another part writes it.</summary>
    public Func<Repeat, bool> RestsThrough { get; init; } = _ => false;
}

/// <summary>Writes a stretch of bars as items of a line, each a bar or a play, for the layout to set out.</summary>
internal sealed class LineText(LineSource source)
{
    private readonly StrandHand main = new();
    private readonly Dictionary<StrandKind, StrandHand> sides = [];

    /// <summary>The neck the line is on; changes where a capo moves.</summary>
    public Neck? Neck { get; private set; }

    public List<string> Write(int first, int end, Neck neck)
    {
        Neck = neck;
        var items = new List<string>();
        Block(first, end, items);
        return items;
    }

    private void Block(int first, int end, List<string> items)
    {
        Forget();
        for (var i = first; i < end;)
        {
            if (source.Repeats.FirstOrDefault(r => r.First == i && r.End <= end) is { } repeat)
            {
                WriteRepeat(repeat, items);
                i = repeat.End;
            }
            else i = Item(first, i, end, items);
        }
    }

    private void WriteRepeat(Repeat repeat, List<string> items)
    {
        if (repeat.Endings.IsEmpty && source.RiffAt(repeat.First) is { } whole && repeat.First + whole.Count == repeat.End)
        {
            items.Add(Changes(repeat.First) + $"{whole.Name} times {Number(repeat.Count)}{Line(repeat.End - 1)}");
            Forget();
            return;
        }
        if (source.RestsThrough(repeat))
        {
            var bars = repeat.Count * (repeat.BodyEnd - repeat.First) + repeat.Endings.Sum(e => (e.End - e.First) * Math.Max(1, e.Passes.Count));
            items.Add("rest " + Number(bars));
            main.Sounding = [];
            return;
        }
        items.Add($"times {Number(repeat.Count)}{{");
        Inner(repeat.First, repeat.BodyEnd, items);
        foreach (var (first, end, passes) in repeat.Endings)
        {
            items.Add($"on {string.Join(',', passes.Select(Number))}{{");
            Inner(first, end, items);
            items.Add("}");
        }
        items.Add("}");
        Forget();
    }

    private void Inner(int first, int end, List<string> items)
    {
        Forget();
        for (var i = first; i < end;) i = Item(first, i, end, items);
    }

    private int Item(int first, int i, int end, List<string> items)
    {
        var content = source.Content[i];
        if (source.RiffAt(i) is { } riff && i + riff.Count <= end)
        {
            items.Add(Changes(i) + riff.Name + Line(i + riff.Count - 1));
            Forget();
            return i + riff.Count;
        }
        if (content.RoadMap is not null) return Empty(i, end, items, b => b.RoadMap == content.RoadMap, n => $"roadmap {content.RoadMap} {Number(n)} bars");
        if (source.Bars[i].IsPickup) return Upbeat(i, items);
        if (content.IsRest) return Empty(i, end, items, b => b.IsRest && b.RoadMap is null, n => n == 1 ? "rest" : "rest " + Number(n));
        if (AgainAt(first, i, end) is var again and > 0)
        {
            items.Add(Changes(i) + (again == 1 ? "again" : "again 2") + Line(i + again - 1));
            Forget();
            return i + again;
        }
        return Bars(i, end, items);
    }

    private int Empty(int i, int end, List<string> items, Func<PartBar, bool> isLike, Func<int, string> text)
    {
        var after = i + 1;
        while (after < end && source.Bars[after - 1].EndLine != BarLine.Double && source.JumpAt(after - 1) is null && isLike(source.Content[after]) && !source.Bars[after].IsPickup
            && source.Content[after].Neck == source.Content[i].Neck && source.ChangesAt(after, Beats.Zero) is null && !StartsRepeat(after)) after++;
        items.Add(Changes(i) + text(after - i) + Line(after - 1));
        Forget();
        main.Sounding = [];
        return after;
    }

    private bool StartsRepeat(int bar) => source.Repeats.Any(r => r.First == bar || r.Endings.Any(e => e.First == bar) || r.End == bar);

    // A jump back has a double line of itself.
    private string Line(int bar) => (source.JumpAt(bar) is { } jump ? " " + jump : "") + (IsDouble(bar) ? " ||" : "");

    private bool IsDouble(int bar) => source.Bars[bar].EndLine == BarLine.Double && !source.Bars[bar].Jump.GoesBack();

    private int Upbeat(int i, List<string> items)
    {
        if (source.Content[i].IsRest)
        {
            // The other parts' pickup makes this part rest too.
            if (source.ChangesAt(i, Beats.Zero) is { } changes) items.Add(changes);
            return i + 1;
        }
        Forget();
        var change = Changes(i);
        var tokens = new List<Token>();
        AddBar(i, tokens);
        items.Add(change + $"upbeat{{ {string.Join(' ', TokenText.Bars([.. tokens]))} }}{Line(i)}");
        Forget();
        return i + 1;
    }

    // Bars may be played again only from the same stretch, where they stand written out before.
    private int AgainAt(int first, int i, int end)
    {
        var count = source.Content[i].Repeats;
        if (count == 0 && source.IsAgain(i)) count = 1;
        if (count == 0 || i + count > end || i - count < first || StartsRepeat(i)) return 0;
        for (var b = i; b < i + count; b++)
        {
            var (bar, before) = (source.Content[b], source.Content[b - count]);
            if (bar.Repeats != count && !source.IsAgain(b) || before.IsRest || before.Neck != bar.Neck || source.Bars[b - count].IsPickup) return 0;
            if (b < i + count - 1 && source.JumpAt(b) is not null) return 0;
            if (b > i && source.ChangesAt(b, Beats.Zero) is not null || bar.Strands.SelectMany(s => s.Events).Any(e => !e.Start.IsZero && source.ChangesAt(b, e.Start) is not null)) return 0;
        }
        return count;
    }

    private int Bars(int i, int end, List<string> items)
    {
        var tokens = new List<Token>();
        var start = i;
        do
        {
            AddBar(i, tokens);
            if (source.JumpAt(i) is { } jump) tokens.Add(new Token { Text = jump });
            tokens.Add(Token.BarLine(IsDouble(i)));
            i++;
        }
        while (i < end && !StartsRepeat(i) && !source.Content[i].IsRest && source.Content[i].RoadMap is null && !source.Bars[i].IsPickup
            && source.RiffAt(i) is null && AgainAt(start, i, end) == 0 && source.Content[i].Neck == Neck);
        items.AddRange(TokenText.Bars([.. tokens]));
        return i;
    }

    private void AddBar(int i, List<Token> tokens)
    {
        var content = source.Content[i];
        var change = Changes(i);
        var begin = tokens.Count;
        var strands = content.Strands;
        var writer = new StrandText(content.Neck, source.Shapes, source.Remarks, source.Title);
        var written = new HashSet<int>();
        if (strands.Count > 0)
        {
            var events = strands[0].Events;
            for (var e = 0; e < events.Count;)
            {
                WriteSides(i, events[e].Start, written, writer, tokens);
                // Up to the next place where a strand begins, so that shapes picked string by string stay together.
                var next = e + 1;
                while (next < events.Count && !SideStarts(strands, events[next].Start, written)) next++;
                WriteMain(i, events, e, next, writer, tokens);
                e = next;
            }
        }
        WriteSides(i, null, written, writer, tokens);
        if (change.Length > 0 && tokens.Count > begin) tokens[begin] = tokens[begin] with { Prefix = (change + tokens[begin].Prefix).TrimEnd() };
    }

    private void WriteMain(int i, ValueList<Event> events, int from, int to, StrandText writer, List<Token> tokens)
    {
        var before = Before(i, StrandKind.Main);
        writer.Write(new StrandBar(events.Items, before, i, at => at.IsZero ? null : source.ChangesAt(i, at)) { From = from, To = to }, main, tokens);
    }

    private static bool SideStarts(ValueList<Strand> strands, Beats at, HashSet<int> written)
    {
        for (var s = 1; s < strands.Count; s++)
        {
            if (!written.Contains(s) && strands[s].Start == at) return true;
        }
        return false;
    }

    // Strands that start here; with no time, those that start where no event of the main one does.
    private void WriteSides(int i, Beats? at, HashSet<int> written, StrandText writer, List<Token> tokens)
    {
        var strands = source.Content[i].Strands;
        for (var s = 1; s < strands.Count; s++)
        {
            if (strands[s].Events.Count == 0 || written.Contains(s) || (at is { } time && strands[s].Start != time)) continue;
            written.Add(s);
            if (at is null)
            {
                source.Remarks.Add(RemarkKind.LeftOut, "A second line that starts between the notes of the first.", source.Title, i + 1);
                continue;
            }
            var kind = strands[s].Kind == StrandKind.Main ? StrandKind.Top : strands[s].Kind;
            if (!sides.TryGetValue(kind, out var hand)) sides[kind] = hand = new StrandHand();
            var inner = new List<Token>();
            writer.Write(new StrandBar(strands[s].Events.Items, Before(i, kind), i, _ => null), hand, inner);
            tokens.Add(new Token { Text = kind.ToString().ToLowerInvariant(), Inner = [.. inner] });
        }
    }

    private Event? Before(int i, StrandKind kind)
    {
        var bar = Repeat.Before(source.Repeats, i);
        if (bar < 0) return null;
        return source.Content[bar].Strands.Where(s => s.Kind == kind && s.Events.Count > 0 && s.End >= source.Bars[bar].Length).Select(s => s.Events[^1]).LastOrDefault();
    }

    private string Changes(int i)
    {
        var text = source.ChangesAt(i, Beats.Zero) is { } changes ? changes + " " : "";
        var neck = source.Content[i].Neck;
        if (Neck is { } before && neck.Capo != before.Capo)
        {
            text += $"(capo {neck.Capo}) ";
            Forget();
        }
        Neck = neck;
        return text;
    }

    private void Forget()
    {
        main.Forget();
        foreach (var side in sides.Values) side.Forget();
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
