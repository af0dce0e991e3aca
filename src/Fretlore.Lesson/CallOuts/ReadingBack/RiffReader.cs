using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.ReadingBack;

/// <summary>Turns a call-out back into notes: words -> notes.</summary>
/// <remarks>It knows the neck and the riffs that may be pointed at, and nothing of the riff that was told. A word that it does not understand is a problem, never skipped.</remarks>
internal sealed class RiffReader
{
    private readonly EventReader reader;
    private readonly Func<string, Riff?> riffNamed;
    private readonly List<List<ReadStrand>> bars = [];
    private readonly List<(int First, int Last, int Times)> repeats = [];
    private int bar = -1;
    private StrandKind kind = StrandKind.Main;
    private Beats start;
    private int sentenceFrom;
    private ReadStrand? ending;
    private bool inLines;
    private Detail detail;

    private RiffReader(StringWords strings, Func<string, Riff?> riffNamed)
    {
        reader = new EventReader(strings);
        this.riffNamed = riffNamed;
    }

    /// <param name="speech">What was said.</param>
    /// <param name="strings">The strings of the neck it was said about.</param>
    /// <param name="riffNamed">The riff that has a spoken name; null when none has.</param>
    /// <param name="detail">How much the speech is meant to say.</param>
    public static ReadRiff Read(Speech speech, StringWords strings, Func<string, Riff?> riffNamed, Detail detail)
    {
        var riff = new RiffReader(strings, riffNamed) { detail = detail };
        string? problem = null;
        foreach (var breath in speech.Breaths)
        {
            var row = new WordRow(breath);
            if (!riff.TrySentence(row) && riff.Play(row) is { } rest) problem ??= $"not understood: '{rest}' in '{breath}'";
        }
        riff.Close();
        return new ReadRiff(riff.bars.Select(b => b.ToValueList()).ToValueList(), riff.repeats.ToValueList(), problem);
    }

    private bool TrySentence(WordRow row)
    {
        if (row.Take("that is")) return true;
        if (RoleWords.IsNext(row)) return RoleWords.TrySkip(row);
        if (TryMutes(row) || TryStrand(row)) return true;
        if (row.Take("rest for whole bar")) return Enter(Math.Max(bar, 0)) && row.IsAtEnd;
        if (row.Take("do that")) return DoThat(row);
        if (row.Take("play")) return TryRepeat(row);
        if (row.Current == "same" && row.Look(1) == "as") return TryBase(row);
        if (row.Current is "bar" or "bars" or "pickup") return TryBar(row);
        return reader.Shapes.TryFingers(row) || reader.Shapes.TryDefine(row);
    }

    private bool TryMutes(WordRow row)
    {
        if (row.Take("palm-mute everything")) reader.PalmMuted = true;
        else if (row.Take("lift palm")) reader.PalmMuted = false;
        else if (row.Take("let everything ring")) reader.Ringing = true;
        else if (row.Take("no more ringing")) reader.Ringing = false;
        else return false;
        return row.IsAtEnd;
    }

    private bool TryStrand(WordRow row)
    {
        StrandKind? said = row.Take("bass underneath") ? StrandKind.Bass : row.Take("drone underneath") ? StrandKind.Drone
            : row.Take("top line") ? StrandKind.Top : row.Take("main line") ? StrandKind.Main : null;
        if (said is not { } strand) return false;
        Enter(Math.Max(bar, 0));
        CloseStrand();
        (kind, start) = (strand, Beats.Zero);
        (reader.Last, reader.PalmMuted, reader.Ringing, inLines) = (default, false, false, true);
        row.SkipPauses();
        if (row.Take("coming in after"))
        {
            var at = row.Place;
            if (!LengthWords.TryReadOffset(row.Words, ref at, out start)) return false;
            row.Place = at;
            row.SkipPauses();
        }
        if (row.Take("stays same")) return TryStay(strand);
        if (row.Take("ringing")) reader.Ringing = true;
        else if (row.Take("palm-muted")) reader.PalmMuted = true;
        return row.IsAtEnd;
    }

    // "the drone underneath stays the same": as in the bar before.
    private bool TryStay(StrandKind strand)
    {
        if (bar == 0 || bars[bar - 1].FirstOrDefault(s => s.Kind == strand) is not { } line) return false;
        bars[bar].Add(line);
        return true;
    }

    private string? Play(WordRow row)
    {
        Enter(Math.Max(bar, 0));
        sentenceFrom = reader.Events.Count;
        return reader.Read(row);
    }

    private bool DoThat(WordRow row)
    {
        if (!row.TakeTimes(out var times)) return false;
        var group = reader.Events.Skip(sentenceFrom).ToArray();
        for (var i = 1; i < times; i++) reader.Events.AddRange(group);
        return row.IsAtEnd && group.Length > 0;
    }

    private bool TryRepeat(WordRow row)
    {
        Close();
        int[] range = row.Take("all of") ? [0, bars.Count - 1] : Bars(row);
        if (range.Length == 0 || !row.TakeTimes(out var times)) return false;
        repeats.Add((range[0], range[^1], times));
        return row.IsAtEnd;
    }

    // "same as the furnace riff, but bar two changes"
    private bool TryBase(WordRow row)
    {
        row.Take("same as");
        var words = new List<string>();
        while (!row.IsAtEnd && row.Current != ",")
        {
            words.Add(row.Current);
            row.Place++;
        }
        if (words.Count > 1 && words[^1] == "riff" && riffNamed(string.Join(' ', words)) is null) words.RemoveAt(words.Count - 1);
        if (riffNamed(string.Join(' ', words)) is not { } riff) return false;
        foreach (var content in riff.Content) bars.Add([.. content.Strands.Select(Heard)]);
        repeats.AddRange(Repeats(riff));
        row.SkipPauses();
        if (row.IsAtEnd) return true;
        if (row.Look(1) == "end") return bars.Count > 0 && Enter(bars.Count - 1) && TryEnd(row, bar);
        return row.Take("but") && Bars(row).Length > 0 && (row.Take("changes") || row.Take("change")) && row.IsAtEnd;
    }

    /// <summary>The bars, by index, that "same as ..., but bars two and four change" says are others; none for other sentences.</summary>
    public static int[] ChangedBars(string sentence)
    {
        var row = new WordRow(sentence);
        for (row.Place = row.Words.Count; row.Place > 0; row.Place--)
        {
            if (row.Take("but")) return Bars(row);
        }
        return [];
    }

    /// <summary>The repeats written in a riff.</summary>
    public static IEnumerable<(int First, int Last, int Times)> Repeats(Riff riff)
    {
        var first = 0;
        for (var i = 0; i < riff.Bars.Count; i++)
        {
            if (riff.Bars[i].StartsRepeat) first = i;
            if (riff.Bars[i].RepeatCount < 2) continue;
            yield return (first, i, riff.Bars[i].RepeatCount);
            first = i + 1;
        }
    }

    private ReadStrand Heard(Strand strand) =>
        new(strand.Kind, strand.Start, strand.Events.Select(e => SpokenForm.Of(e, detail)).ToValueList());

    private bool TryBar(WordRow row)
    {
        Close();
        var told = Bars(row);
        if (told.Length == 0) return false;
        row.SkipPauses();
        if (row.Take("same again")) return TryShapeOn(row, told, told[0] - told.Length) || (Copy(told, told[0] - told.Length) && TryEnd(row, told[0] - told.Length));
        if (row.Take("same as")) return Bars(row) is { Length: > 0 } there && (TryShapeOn(row, told, there[0]) || (Copy(told, there[0]) && TryEnd(row, there[0])));
        if (row.Take("starts same")) return Copy(told, told[0]) && TryEnd(row, told[0]);
        if (told.Length != 1) return false;
        Enter(told[0]);
        bars[told[0]].Clear();
        if (told[0] > 0 && bars[told[0] - 1] is [var before])
        {
            foreach (var item in before.Events) reader.Follow(item);
        }
        return row.IsAtEnd || row.Take("ending for passes") || (NumberWords.OrdinalValue(row.Current) > 0 && row.Look(1) == "ending");
    }

    private bool Copy(int[] told, int from)
    {
        if (from < 0 || from + told.Length > bars.Count) return false;
        for (var i = 0; i < told.Length; i++)
        {
            Enter(told[i]);
            bars[told[i]] = [.. bars[from + i]];
            if (bars[from + i] is [var line]) foreach (var item in line.Events) reader.Follow(item);
            else reader.Last = default;
        }
        bar = told[^1];
        return true;
    }

    // ", but first with the lift shape, then with the gate shape": all that was struck in a bar is struck again with as many others.
    private bool TryShapeOn(WordRow row, int[] told, int from)
    {
        var place = row.Place;
        row.SkipPauses();
        if (row.Take("but") && told is [var to] && from >= 0 && from < bars.Count && bars[from] is [var line] && TryShapes(row, out var shapes) && shapes.Count == ShapeOn.Struck(line.Events).Count)
        {
            var moved = ShapeOn.Of(line.Events.Items, shapes).ToValueList();
            Enter(to);
            bars[to] = [line with { Events = moved }];
            foreach (var item in moved) reader.Follow(item);
            return true;
        }
        row.Place = place;
        return false;
    }

    private bool TryShapes(WordRow row, out List<ValueList<(Guitar.StringNumber, Guitar.Fret)>> shapes)
    {
        shapes = [];
        var several = row.Take("first");
        for (row.SkipPauses(); row.Take("with"); row.SkipPauses())
        {
            if (!reader.Shapes.TryShape(row, out var stops)) return false;
            shapes.Add(stops.Select(stop => (stop.String, stop.Fret)).ToValueList());
        }
        return row.IsAtEnd && several == shapes.Count > 1;
    }

    // ", but end on ten": what follows takes the place of the last ones.
    private bool TryEnd(WordRow row, int from)
    {
        row.SkipPauses();
        if (row.IsAtEnd) return true;
        if (!(row.Take("but end on") || row.Take("but end with")) || bars[from] is not [var line]) return false;
        ending = line;
        (kind, start) = (line.Kind, line.Start);
        bars[bar].Clear();
        reader.GoOnFrom(line.Events);
        return reader.Read(row) is null;
    }

    private bool Enter(int number)
    {
        while (bars.Count <= number) bars.Add([]);
        bar = number;
        return true;
    }

    private void Close()
    {
        CloseStrand();
        (kind, start) = (StrandKind.Main, Beats.Zero);
        if (inLines) (reader.PalmMuted, reader.Ringing) = (false, false);
        inLines = false;
    }

    private void CloseStrand()
    {
        // A new end takes the place of as many events as it has.
        var heard = reader.Events.ToArray();
        if (ending is not null) heard = [.. ending.Events.Take(ending.Events.Count - heard.Length), .. heard];
        if (heard.Length > 0) bars[bar].Add(new ReadStrand(kind, start, heard.ToValueList()));
        reader.Events.Clear();
        ending = null;
    }

    private static int[] Bars(WordRow row)
    {
        if (row.Take("pickup")) return [0];
        if (!row.Take("bars") && !row.Take("bar")) return [];
        var numbers = new List<int>();
        while (row.TakeBarNumber(out var number)) numbers.Add(number - 1);
        if (numbers.Count == 1 && row.Take("to")
            && row.TakeNumber(out var last)) numbers.AddRange(Enumerable.Range(numbers[0] + 1, Math.Max(0, last - 1 - numbers[0])));
        return [.. numbers];
    }
}
