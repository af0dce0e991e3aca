using Fretlore.Guitar;
using Fretlore.Lesson.CallOuts.Telling;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.ReadingBack;

/// <summary>Holds what a headline says against the notes of its riff: each sentence is read back from its words, and must be true of them.</summary>
/// <remarks>A word that it does not understand is a problem, never skipped.</remarks>
internal sealed class HeadlineReader(Riff riff, StringWords strings)
{
    /// <summary>How many frets up from a position the hand reaches, a stretch included (common practice: four, and one more).</summary>
    private const int HandReach = 4;

    private readonly Event[] events = [.. riff.Content.SelectMany(b => b.Strands).SelectMany(s => s.Events).Where(e => !e.IsRest)];
    private readonly Note[] notes = [.. riff.Content.SelectMany(b => b.Strands).SelectMany(s => s.Events).SelectMany(e => e.Notes)];

    /// <summary>What is not true, or not understood, in a sentence of a headline; null when all of it is so.</summary>
    public string? Problem(string sentence)
    {
        var row = new WordRow(sentence);
        var isTrue = row.Take("nothing to play : count rest") ? events.Length == 0
            : row.Take("variation on") ? IsVariation(row)
            : row.Take("hand") ? IsPosition(row)
            : row.Take("listen for") ? AreDevices(row)
            : row.Take("mind") ? IsPlace(row)
            : TryLength(row) is { } length ? length
            : IsWhat(row);
        if (!isTrue) return $"not so of the riff: '{sentence}'";
        return row.IsAtEnd ? null : $"not understood: '{row.Rest}' in '{sentence}'";
    }

    private bool IsVariation(WordRow row)
    {
        if (riff.VariationOf is not { } basis) return false;
        var name = new WordRow(SpokenName.Of(basis)).Rest;
        if (row.Rest != name && row.Rest != name + " riff") return false;
        return ToEnd(row);
    }

    private bool IsWhat(WordRow row)
    {
        var together = events.Where(e => e.Notes.Count > 1).ToArray();
        var isLine = together.Length * 2 <= events.Length;
        if (row.Take("one finger across")) return !isLine && TakeStrings(row) is { } across && together.Any(e => EventTeller.IsUniform(e) && StringsOf(e).SequenceEqual(across)) && IsReach(row);
        if (row.Take("pairs")) return !isLine && AreStrings(row, [.. together.Where(e => e.Notes.Count == 2).SelectMany(StringsOf)]) && IsReach(row);
        if (row.Take("shapes of several strings")) return !isLine && IsReach(row);
        if (row.Take("shapes :")) return !isLine && AreShapes(row) && IsReach(row);
        if (row.Take("ringing line")) isLine &= notes.Any(n => n.LetsRing);
        else if (row.Take("legato line")) isLine &= notes.Any(n => n.Attack is Attack.HammerOn or Attack.PullOff or Attack.Tap);
        else isLine &= row.Take("single-note line");
        return isLine && AreStrings(row, [.. notes.Select(n => n.String)]) && IsReach(row);
    }

    // "on the low string", "on the high two strings", "from the low string to the first string"
    private bool AreStrings(WordRow row, HashSet<StringNumber> used)
    {
        if (row.Take("on")) return TakeStrings(row) is { } said && used.SetEquals(said);
        return row.Take("from") && TakeStrings(row) is [var low] && row.Take("to") && TakeStrings(row) is [var high]
            && low.Value == used.Max(s => s.Value) && high.Value == used.Min(s => s.Value);
    }

    private StringNumber[]? TakeStrings(WordRow row)
    {
        var at = row.Place;
        if (!strings.TryRead(row.Words, ref at, out var said)) return null;
        row.Place = at;
        return [.. said];
    }

    private static IEnumerable<StringNumber> StringsOf(Event item) => item.Notes.Select(n => n.String);

    private bool AreShapes(WordRow row)
    {
        var left = events.Select(e => e.Shape).OfType<string>().Select(name => new WordRow(SpokenName.OfShape(name)).Rest).ToHashSet();
        while (left.Count > 0)
        {
            row.SkipPauses();
            // The longest first: one name may begin with another.
            if (left.OrderByDescending(name => name.Length).FirstOrDefault(row.Take) is not { } said) return false;
            left.Remove(said);
        }
        return true;
    }

    private bool IsReach(WordRow row)
    {
        var stopped = notes.Where(n => !n.IsDead && !n.Fret.IsOpen).Select(n => n.Fret.Number).ToArray();
        var open = notes.Where(n => n.Fret.IsOpen && !n.IsDead).Select(n => n.String).Distinct().Count();
        row.SkipPauses();
        if (row.Take("all open")) return stopped.Length == 0 && open > 0;
        var said = (Low: 0, High: 0);
        if (row.Take("frets")) said = row.TakeNumber(out var low) && row.Take("to") && row.TakeNumber(out var high) ? (low, high) : (-1, -1);
        else if (row.Take("fret")) said = row.TakeNumber(out var one) ? (one, one) : (-1, -1);
        var isOpen = row.Take("open strings") ? 2 : row.Take("open string") ? 1 : 0;
        return said == (stopped.Length == 0 ? (0, 0) : (stopped.Min(), stopped.Max())) && isOpen == Math.Min(open, 2);
    }

    // A position is where the first finger is: something is stopped there, or within the hand's reach above it.
    private bool IsPosition(WordRow row)
    {
        if (!(row.Take("stands in") || row.Take("goes from") || row.Take("moves between"))) return false;
        while (TakeOrdinal(row) is { } position)
        {
            if (!notes.Any(n => !n.Fret.IsOpen && n.Fret.Number >= position && n.Fret.Number <= position + HandReach)) return false;
            if (row.Take("position back") || row.Take("position")) return true;
            row.Take("to");
        }
        return false;
    }

    private static int? TakeOrdinal(WordRow row)
    {
        if (row.Take("number")) return row.TakeNumber(out var number) ? number : null;
        if (NumberWords.OrdinalValue(row.Current) is not (> 0 and var ordinal)) return null;
        row.Place++;
        return ordinal;
    }

    private bool AreDevices(WordRow row)
    {
        while (!row.IsAtEnd)
        {
            row.SkipPauses();
            var isThere = row.Take("gallops") ? Gallops() > 1
                : row.Take("gallop") ? Gallops() == 1
                : row.Take("palm mutes") ? notes.Any(n => n.IsPalmMuted)
                : row.Take("bends") ? notes.Count(n => n.Bend is not null) > 1
                : row.Take("bend") ? notes.Count(n => n.Bend is not null) == 1
                : row.Take("taps") ? notes.Any(n => n.Attack == Attack.Tap)
                : row.Take("harmonics") ? notes.Any(n => n.Harmonic is not null)
                : row.Take("slides") ? notes.Any(n => n.Attack is Attack.Glide or Attack.PickedGlide || n.GlideIn != GlideIn.None || n.GlideOut != GlideOut.None)
                : row.Take("tuplets") && events.Any(e => e.Tuplet is not null);
            if (!isThere) return false;
        }
        return true;
    }

    private int Gallops() => riff.Content.SelectMany(b => b.Strands).SelectMany(s => RhythmRun.Of(s.Events)).Where(r => r.Cell != Cell.None).Sum(r => r.Count / 3);

    private bool IsPlace(WordRow row)
    {
        if (!HandWords.Places.Any(place => row.Take(new WordRow(place).Rest))) return false;
        if (row.IsAtEnd) return riff.Bars.Count == 1;
        return row.Take("in bar") && row.TakeNumber(out var number) && riff.Bars.Any(bar => bar.Number == number);
    }

    // "two bars of three four, four with the repeats"; null for a sentence that is about something else.
    private bool? TryLength(WordRow row)
    {
        var start = row.Place;
        if (!row.TakeNumber(out var bars) || !(row.Take("bars") || row.Take("bar")))
        {
            row.Place = start;
            return null;
        }
        var meter = Meter.FourFour;
        if (row.Take("of"))
        {
            if (!row.TakeNumber(out var count) || !row.TakeNumber(out var unit)) return false;
            if ((count, unit) != (riff.Bars[0].Meter.Count, riff.Bars[0].Meter.Unit)) return false;
            meter = riff.Bars[0].Meter;
        }
        var played = bars;
        row.SkipPauses();
        if (!row.IsAtEnd && !(row.TakeNumber(out played) && row.Take("with repeats"))) return false;
        return meter == riff.Bars[0].Meter && bars == riff.Bars.Count(b => !b.IsPickup) && played == PlayOrder.Of(riff.Bars).Count(p => !riff.Bars[p.Bar].IsPickup);
    }

    private static bool ToEnd(WordRow row)
    {
        row.Place = row.Words.Count;
        return true;
    }
}
