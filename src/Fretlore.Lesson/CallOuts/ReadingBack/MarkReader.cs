using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.ReadingBack;

/// <summary>Understands what is said after a note: mutes, bends, vibrato, fingers, and what concerns the whole event.</summary>
internal static class MarkReader
{
    /// <summary>Reads one mark of a note if it stands here.</summary>
    public static bool TryMark(WordRow row, Note note, out Note marked)
    {
        marked = note;
        if (row.Take("pick again")) marked = note with { Attack = Attack.PickedGlide };
        else if (row.Take("palm-muted")) marked = note with { IsPalmMuted = true, LetsRing = false };
        else if (row.Take("ghosted")) marked = note with { IsGhost = true };
        else if (row.Take("with accent")) marked = note with { IsAccented = true };
        else if (row.Take("cut short")) marked = note with { IsStaccato = true };
        else if (row.Take("let ring")) marked = note with { LetsRing = true };
        else if (row.Take("slide off down neck")) marked = note with { GlideOut = GlideOut.Downwards };
        else if (row.Take("slide off up neck")) marked = note with { GlideOut = GlideOut.Upwards };
        else if (row.Current == "trilled" && row.Look(1) == "with") return TryTrill(row, ref marked);
        else if (row.Current == "dipped") return TryDip(row, ref marked);
        else if (row.Current == "tremolo-picked" && row.Look(1) == "in") return TryTremolo(row, ref marked);
        else if (row.Current == "with") return TryFinger(row, ref marked) || TryVibrato(row, ref marked);
        else return TryBend(row, ref marked);
        return true;
    }

    /// <summary>Reads one mark of the whole event if it stands here.</summary>
    public static bool TryEventMark(WordRow row, Event item, out Event marked)
    {
        marked = item;
        if (row.Take("rolled up")) marked = item with { Roll = Roll.LowToHigh };
        else if (row.Take("rolled down")) marked = item with { Roll = Roll.HighToLow };
        else if (row.Take("raked")) marked = item with { Roll = Roll.Rake };
        else if (row.Take("all accented")) marked = item with { Notes = item.Notes.Select(n => n with { IsAccented = true }).ToValueList() };
        else if (row.Take("under fermata")) marked = item with { HasFermata = true };
        else if (row.Take("downstroke")) marked = item with { Stroke = Stroke.Down };
        else if (row.Take("upstroke")) marked = item with { Stroke = Stroke.Up };
        else if (row.Take("tremolo-picked all through")) marked = item with { Spans = item.Spans | Spans.TremoloPicking };
        else if (row.Take("with arm")) marked = item with { Spans = item.Spans | Spans.TremoloArm };
        else if (row.Take("with wah")) marked = item with { Spans = item.Spans | Spans.Wah };
        else if (row.Take("getting louder")) marked = item with { Spans = item.Spans | Spans.Crescendo };
        else if (row.Take("getting softer")) marked = item with { Spans = item.Spans | Spans.Diminuendo };
        else if (row.Current == "by" && NoteWords.PickingFingerOf(row.Look(1)) is { } finger)
        {
            row.Place += 2;
            marked = item with { PickingFinger = finger };
        }
        else return false;
        return true;
    }

    private static bool TryTrill(WordRow row, ref Note note)
    {
        var start = row.Place;
        row.Place += 2;
        var fret = 0;
        if (!row.Take("open") && !row.TakeNumber(out fret)) return Undo(row, start);
        note = note with { Trill = new Guitar.Fret(fret) };
        return true;
    }

    private static bool TryDip(WordRow row, ref Note note)
    {
        var start = row.Place++;
        if (!Size(row, out var cents) || !row.Take("with arm")) return Undo(row, start);
        note = note with { DipCents = cents };
        return true;
    }

    private static bool TryTremolo(WordRow row, ref Note note)
    {
        var at = row.Place + 2;
        if (!ValueWords.TryRead(row.Words, ref at, out var value)) return false;
        row.Place = at;
        note = note with { Tremolo = value.Value.Base };
        return true;
    }

    private static bool TryFinger(WordRow row, ref Note note)
    {
        if (NoteWords.FrettingFingerOf(row.Look(1)) is not { } finger) return false;
        if (finger != Finger.Thumb && row.Look(2) != "finger") return false;
        row.Place += finger == Finger.Thumb ? 2 : 3;
        note = note with { Finger = finger };
        return true;
    }

    private static bool TryVibrato(WordRow row, ref Note note)
    {
        var width = row.Take("with vibrato") ? VibratoWidth.Normal : row.Take("with wide vibrato") ? VibratoWidth.Wide : VibratoWidth.None;
        if (width == VibratoWidth.None) return false;
        note = note with { Vibrato = new Vibrato(width, note.Bend?.ToCents.Count ?? 0) };
        return true;
    }

    private static bool TryBend(WordRow row, ref Note note)
    {
        var bend = note.Bend ?? new Bend(0, []);
        var start = row.Place;
        if (row.Take("pre-bent") || row.Take("still bent up"))
        {
            if (!Size(row, out var from)) return Undo(row, start);
            note = note with { Bend = bend with { FromCents = from } };
            return true;
        }
        int to;
        if (row.Take("bend up") || row.Take("push on up to"))
        {
            if (!Size(row, out to)) return Undo(row, start);
        }
        else if (row.Take("keep there"))
        {
            to = bend.EndCents;
        }
        else if (row.Take("let down"))
        {
            to = 0;
            if (row.Take("to") && !Size(row, out to)) return Undo(row, start);
        }
        else
        {
            return false;
        }
        note = note with { Bend = bend with { ToCents = [.. bend.ToCents.Items, to] } };
        return true;
    }

    private static bool Size(WordRow row, out int cents)
    {
        var at = row.Place;
        if (!BendWords.TryReadSize(row.Words, ref at, out cents)) return false;
        row.Place = at;
        return true;
    }

    private static bool Undo(WordRow row, int start)
    {
        row.Place = start;
        return false;
    }
}
