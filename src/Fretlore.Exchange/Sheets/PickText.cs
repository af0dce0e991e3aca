using System.Text;
using Fretlore.Guitar;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>A held shape picked string by string: <c>pick #home{ E 6 4 3 2 }</c>.</summary>
internal static class PickText
{
    /// <summary>How many events from here on are one shape picked string by string; 0 when there is none.</summary>
    public static int LengthAt(StrandBar bar, int start, IReadOnlyDictionary<string, NamedShape> shapes, Neck neck)
    {
        var first = bar.Events[start];
        if (first.Shape is not { } name || !shapes.TryGetValue(name, out var shape) || shape.Shape.LowToHigh.Count != neck.StringCount) return 0;
        var frets = shape.Shape.On(neck).ToDictionary(s => s.String, s => s.Fret);
        var (length, isPart) = (0, false);
        for (var i = start; i < bar.To; i++)
        {
            var item = bar.Events[i];
            if (i > start && (Marked(item) || bar.ChangesAt(item.Start) is not null)) break;
            if (item.Spans != first.Spans || item.Graces.Count > 0 || item.Stroke != Stroke.None || item.Roll != Roll.None) break;
            if (item.IsRest && i > start) continue;
            if (item.Shape != name || !Fits(item, i > start ? bar.Events[i - 1] : bar.Before, frets, shape)) break;
            if (item.Notes.Any(n => n.IsPalmMuted) != first.Notes.Any(n => n.IsPalmMuted)) break;
            if ((item.PickingFinger is null) != (first.PickingFinger is null) && !item.Notes.All(n => n.IsTiedFromBefore)) break;
            isPart |= item.Notes.Count < frets.Count;
            length = i - start + 1;
        }
        return isPart && !first.Notes.All(n => n.IsTiedFromBefore) ? length : 0;
    }

    public static (string Text, string? Fingers) Of(IReadOnlyList<Event> events, ReadOnlySpan<RhythmCell?> times, NamedShape shape)
    {
        var text = new StringBuilder($"pick #{shape.Name}{{");
        var frets = Enumerable.Range(0, shape.Shape.LowToHigh.Count)
            .Where(i => shape.Shape.LowToHigh[i] is not null)
            .ToDictionary(i => new StringNumber(shape.Shape.LowToHigh.Count - i), i => shape.Shape.LowToHigh[i]!.Value);
        string? fingers = "";
        for (var i = 0; i < events.Count; i++)
        {
            if (times[i] is { } time) text.Append(' ').Append(time.Text);
            text.Append(' ');
            if (events[i].IsRest) text.Append('R');
            else if (events[i].Notes.All(n => n.IsTiedFromBefore)) text.Append('=').Append(NoteText.Moves(events[i].Notes[0]));
            else
            {
                text.Append(SheetWords.Strings(events[i].Notes.Select(n => n.String)));
                if (frets[events[i].Notes[0].String] != events[i].Notes[0].Fret)
                {
                    text.Append(':').Append(events[i].Notes[0].Fret);
                    frets[events[i].Notes[0].String] = events[i].Notes[0].Fret;
                }
                fingers = events[i].PickingFinger is { } finger ? fingers + finger : null;
            }
        }
        return (text.Append(" }").ToString(), fingers);
    }

    private static bool Marked(Event item) => item.Words is not null || item.Dynamic is not null || item.ChordSymbol is not null || item.HasFermata;

    // Each note at the fret that is held down, one at another fret only alone; or all that sounds held on.
    private static bool Fits(Event item, Event? before, Dictionary<StringNumber, Fret> frets, NamedShape shape)
    {
        if (item.Notes.All(n => n.IsTiedFromBefore))
        {
            var holdable = before?.Notes.Count(n => !n.IsDead && n.GlideOut == GlideOut.None) ?? 0;
            return holdable == item.Notes.Count && item.Notes.Select(NoteText.Moves).Distinct().Count() == 1;
        }
        foreach (var note in item.Notes)
        {
            if (!note.LetsRing || note.Attack != Attack.Picked || note.GlideIn != GlideIn.None || note.GlideOut != GlideOut.None) return false;
            if (note.Finger != shape.FingerOf(note.String, note.Fret) || NoteText.Of(note with { Finger = null }, palm: false) != note.Fret.ToString()) return false;
            if (!frets.TryGetValue(note.String, out var held)) return false;
            if (held == note.Fret) continue;
            if (item.Notes.Count > 1) return false;
            frets[note.String] = note.Fret;
        }
        return item.Notes.All(n => n.IsPalmMuted == item.Notes[0].IsPalmMuted);
    }
}
