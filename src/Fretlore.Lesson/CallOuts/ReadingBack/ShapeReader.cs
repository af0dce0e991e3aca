using Fretlore.Guitar;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.ReadingBack;

/// <summary>A string and its fret within a shape.</summary>
/// <param name="String">The string.</param>
/// <param name="Fret">Its fret.</param>
/// <param name="Finger">The finger it is stopped with, where that was said.</param>
internal readonly record struct Stop(StringNumber String, Fret Fret, Finger? Finger = null);

/// <summary>Understands shapes: spelled out, by name, moved, or held while their strings are picked.</summary>
internal sealed class ShapeReader(StringWords strings)
{
    private readonly Dictionary<string, ValueList<Stop>> named = [];
    private ValueList<Stop> last;
    private ValueList<Stop> held;
    private (string Name, bool Hold, bool Take) defined = ("", false, false);

    /// <summary>True when what is picked from the held shape rings.</summary>
    public bool Rings { get; set; }

    /// <summary>Reads "lift shape, from the low string up: seven, seven, seven, nine".</summary>
    public bool TryDefine(WordRow row)
    {
        var start = row.Place;
        var hold = row.Take("hold");
        var take = row.Take("take");
        var name = Until(row, "shape");
        row.SkipPauses();
        if (name is null || !row.Take("from") || !TryFrets(row, out var stops) || !row.IsAtEnd)
        {
            row.Place = start;
            return false;
        }
        defined = (name, hold, take);
        Define(stops);
        return true;
    }

    /// <summary>Reads "its fingers: index, open, any, ring" after a shape is spelled out.</summary>
    public bool TryFingers(WordRow row)
    {
        if (!row.Take("its fingers") || !named.TryGetValue(defined.Name, out var stops)) return false;
        var fingered = new List<Stop>();
        foreach (var stop in stops)
        {
            row.SkipPauses();
            var finger = NoteWords.FrettingFingerOf(row.Current);
            if (finger is null && row.Current is not ("open" or "any")) return false;
            fingered.Add(stop with { Finger = finger });
            row.Place++;
        }
        Define(fingered.ToValueList());
        return row.IsAtEnd;
    }

    private void Define(ValueList<Stop> stops)
    {
        named[defined.Name] = stops;
        if (defined.Hold) (held, Rings) = (stops, false);
        if (defined.Take) last = stops;
    }

    /// <summary>Reads the name of a shape that is to be held.</summary>
    public bool TryHold(WordRow row)
    {
        if (!TryNamed(row, out var stops)) return false;
        (held, Rings) = (stops, false);
        return true;
    }

    /// <summary>Reads a string of the held shape, or several together, said without the word string.</summary>
    public bool TryStrike(WordRow row, out ValueList<Stop> struck)
    {
        struck = [];
        var start = row.Place;
        while (!row.IsAtEnd && row.Current is not ("," or "together" or "for" or "twice") && TryShort(row, out var number))
        {
            var found = held.Where(s => s.String == number).ToArray();
            if (found.Length == 0) return Undo(row, start);
            struck = [.. struck.Items, found[0]];
        }
        if (struck.Count == 0) return Undo(row, start);
        return row.Take("together") == struck.Count > 1 || Undo(row, start);
    }

    /// <summary>Reads a shape that is sounded as a whole.</summary>
    public bool TryShape(WordRow row, out ValueList<Stop> stops)
    {
        var start = row.Place;
        stops = last;
        if (row.Take("this shape")) return last.Count > 0;
        if (row.Take("again")) return last.Count > 0 || Undo(row, start);
        if (row.Take("same shape at") || row.Take("move up to") || row.Take("move down to"))
        {
            if (!row.TakeNumber(out var fret) || last.Count == 0) return Undo(row, start);
            var by = fret - last[0].Fret.Number;
            stops = last = last.Select(s => s with { Fret = new Fret(s.Fret.Number + by) }).ToValueList();
            return true;
        }
        if (!TryNamed(row, out stops)) return false;
        last = stops;
        return true;
    }

    // "low string up: seven, skip one, six"
    private bool TryFrets(WordRow row, out ValueList<Stop> stops)
    {
        var read = new List<Stop>();
        stops = [];
        var at = row.Place;
        if (!strings.TryRead(row.Words, ref at, out var low) || low.Count != 1) return false;
        row.Place = at;
        if (!row.Take("up")) return false;
        var number = low[0].Value;
        for (row.SkipPauses(); number > 0 && !row.IsAtEnd; row.SkipPauses())
        {
            var taken = 1;
            if (row.Take("skip"))
            {
                if (!row.TakeNumber(out taken)) return false;
            }
            else if (row.Take("open")) read.Add(new Stop(new StringNumber(number), Fret.Open));
            else if (row.TakeNumber(out var fret)) read.Add(new Stop(new StringNumber(number), new Fret(fret)));
            else return false;
            number -= taken;
        }
        stops = read.ToValueList();
        return read.Count > 0;
    }

    private bool TryNamed(WordRow row, out ValueList<Stop> stops)
    {
        foreach (var (name, known) in named.OrderByDescending(n => n.Key.Length))
        {
            if (!row.Take(name.Length == 0 ? "shape" : name + " shape")) continue;
            stops = known;
            return true;
        }
        stops = [];
        return false;
    }

    private bool TryShort(WordRow row, out StringNumber number)
    {
        number = default;
        foreach (var stop in held)
        {
            var name = strings.One(stop.String)[..^" string".Length];
            if (row.Look(name.Split(' ').Length) is "string" or "strings" || !row.Take(name)) continue;
            number = stop.String;
            return true;
        }
        return false;
    }

    private static string? Until(WordRow row, string end)
    {
        var words = new List<string>();
        while (!row.IsAtEnd && row.Current is not ("," or ":"))
        {
            if (row.Take(end)) return string.Join(' ', words);
            words.Add(row.Current);
            row.Place++;
        }
        return null;
    }

    private static bool Undo(WordRow row, int start)
    {
        row.Place = start;
        return false;
    }
}
