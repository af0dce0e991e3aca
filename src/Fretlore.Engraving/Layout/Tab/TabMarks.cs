using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Spacing;
using Fretlore.Engraving.Layout.Systems;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Tab;

/// <summary>Draws what the hands do around the numbers of one system: slurs, glides, bends, letters, vibrato, strokes and fingers.</summary>
internal sealed class TabMarks(Pen pen, StaffPlan staff, SystemGeometry geometry, ScoreModel model, ChordRows chords, TabRow row)
{
    private const double RaiseStep = 0.5;
    private const int MostRaises = 24;

    private readonly Links links = model.Links;
    private readonly BendDrawer bends = new(pen);
    private readonly Dictionary<NoteId, BendEnd> bendEnds = [];
    private readonly HandLetters handLetters = new(pen);
    private readonly StackedRows letters = new(pen);
    private readonly AlignedRow accents = new(pen);
    private readonly StrokeSigns strokes = new(pen);
    private readonly HashSet<double> accented = [];
    private readonly VibratoLines vibratos = new(pen);

    public void Draw(List<SystemNote> notes)
    {
        foreach (var place in geometry.Measures)
        {
            foreach (var voice in place.Measure.Parts[staff.Index].Voices)
            {
                foreach (var slot in voice.Slots) DrawSlot(slot, RoomAfter(place, slot));
            }
        }
        bends.DrawAmounts();
        foreach (var note in notes)
        {
            if (!staff.ShowsStaff) DrawTie(note.Placed);
            DrawGlides(note.Placed);
            DrawSlur(note.Placed);
        }
        handLetters.Place(letters);
        letters.DrawAbove(0, 0.6);
        accents.DrawAbove(0, 0.6);
        strokes.Draw(0.7);
        vibratos.Draw();
        new TabSpans(pen, staff, geometry).Draw();
        new TabFingers(pen, staff, geometry, model.Hands, chords).Draw();
    }

    // Up to the next number or rest, in whichever voice.
    private double RoomAfter(MeasurePlace place, Slot slot)
    {
        var room = place.Right - (place.Measure.LastBar.RepeatCount > 0 ? Prefix.RepeatWidth(pen.Ink) : 0.3);
        foreach (var voice in place.Measure.Parts[staff.Index].Voices)
        {
            foreach (var next in voice.Slots)
            {
                if (next.Column <= slot.Column) continue;
                room = Math.Min(room, geometry.X(next) - next.Shift);
                foreach (var head in next.Heads) room = Math.Min(room, row.Middle(links[head.Note]) - row.HalfWidth(links[head.Note]));
                if (next.Graces.Length > 0) room = Math.Min(room, row.Middle(links[next.Graces[0].Note]) - 0.6);
                break;
            }
        }
        return room;
    }

    private void DrawSlot(Slot slot, double room)
    {
        var bent = BentTogether(slot);
        foreach (var head in slot.Heads)
        {
            var note = links[head.Note];
            var middle = row.Middle(note);
            var clear = middle - 0.4;
            if (note.Note.Bend is not null)
            {
                var end = bendEnds[note.Note.Id] = DrawBend(note, middle, bent, room);
                clear = end.Clear;
            }
            if (note.Note.Vibrato.Width != VibratoWidth.None) vibratos.Add(note.Note.Vibrato.Width, clear, room);
            handLetters.Add(note.Note, middle);
        }
        if (model.Hands.Strokes) strokes.Add(slot.Event.Stroke, geometry.X(slot) - slot.Shift + ColumnInk.Centre);
        if (!staff.ShowsStaff) AddArticulation(slot);
    }

    // A staff has these at its heads.
    private void AddArticulation(Slot slot)
    {
        var x = geometry.X(slot) - slot.Shift + ColumnInk.Centre;
        var (accent, staccato) = (slot.Heads.Any(h => h.Note.IsAccented), slot.Heads.Any(h => h.Note.IsStaccato));
        if ((accent || staccato) && accented.Add(x)) AddArticulation(x, accent, staccato);
    }

    private void AddArticulation(double x, bool accent, bool staccato)
    {
        accents.Add(x - 0.7, x + 0.7, y =>
        {
            if (staccato) pen.GlyphCentred(Smufl.ArticStaccatoAbove, x, y);
            if (accent) pen.GlyphCentred(Smufl.ArticAccentAbove, x, staccato ? y - 0.6 : y);
        });
    }

    // A bend that is held has its dashes instead.
    private void DrawTie(PlacedNote placed)
    {
        if (placed.Note.Bend is { EndCents: > 0 } || links.TiedTo(placed.Note) is not { } next) return;
        var y = TabRow.LineOf(placed.Note) - 0.35;
        var left = row.Middle(placed) + row.HalfWidth(placed) + 0.12;
        var right = geometry.Has(next.Slot.Measure) ? row.Middle(next) - row.HalfWidth(next) - 0.12 : geometry.Right - 0.1;
        if (right - left > 0.5) pen.Slur(left, y, right, y, -0.4);
    }

    private BendEnd DrawBend(PlacedNote note, double middle, BentChord bent, double room)
    {
        var before = note.Note.IsTiedFromBefore ? links.Before(note.Note) : null;
        var heldFrom = before is null ? middle - 0.8 : bendEnds.TryGetValue(before.Note.Id, out var left) ? left.X : Math.Min(geometry.MusicLeft - 0.3, middle - 1);
        var end = bends.Draw(note, bent, middle, room, heldFrom);
        var isLeaving = links.TiedTo(note.Note) is { } next && !geometry.Has(next.Slot.Measure);
        if (isLeaving && note.Note.Bend is { EndCents: > 0, ToCents.Count: > 0 }) bends.HoldOn(note, bent, end.X + 0.25, geometry.Right - 0.3);
        return end;
    }

    private BentChord BentTogether(Slot slot)
    {
        if (!HasBend(slot)) return new BentChord(slot, 0, [], false);
        var half = 0.0;
        var heights = new SortedSet<int>();
        foreach (var head in slot.Heads)
        {
            half = Math.Max(half, row.HalfWidth(links[head.Note]));
            if (head.Note.Bend is not null) AddHeights(heights, links[head.Note]);
        }
        // Numbers of another voice stand there too.
        foreach (var other in SlotsAt(slot).SelectMany(s => s.Heads)) half = Math.Max(half, row.HalfWidth(links[other.Note]));
        return new BentChord(slot, half, [.. heights.Where(cents => cents > 0)], heights.Count > 0 && IsPreBendUnderNumbers(slot));
    }

    private static bool HasBend(Slot slot)
    {
        foreach (var head in slot.Heads)
        {
            if (head.Note.Bend is not null) return true;
        }
        return false;
    }

    // Whether a note bent before it is picked has a number above it, in its chord or in another voice.
    private bool IsPreBendUnderNumbers(Slot slot)
    {
        var lowest = 0;
        foreach (var head in slot.Heads)
        {
            if (head.Note is { Bend.FromCents: > 0, IsTiedFromBefore: false }) lowest = Math.Max(lowest, head.Note.String.Value);
        }
        return lowest > 1 && SlotsAt(slot).Any(s => s.Heads.Any(h => h.Note.String.Value < lowest));
    }

    private IEnumerable<Slot> SlotsAt(Slot slot) =>
        geometry[slot.Measure].Measure.Parts[staff.Index].Voices.SelectMany(v => v.Slots).Where(s => s.Column == slot.Column);

    // A bend that goes on over ties keeps each of its heights through all of them.
    private void AddHeights(SortedSet<int> heights, PlacedNote note)
    {
        var first = note;
        while (first.Note.IsTiedFromBefore && links.Before(first.Note) is { Note.Bend: not null } before) first = before;
        for (var at = first; at?.Note.Bend is { } bend; at = links.TiedTo(at.Note))
        {
            heights.UnionWith(bend.ToCents.Items.Add(bend.FromCents));
        }
    }

    private void DrawGlides(PlacedNote placed)
    {
        var note = placed.Note;
        var y = TabRow.LineOf(note);
        double middle = row.Middle(placed), half = row.HalfWidth(placed);
        if (note.GlideIn != GlideIn.None) Slant(middle - half - 1.25, middle - half - 0.2, y, note.GlideIn == GlideIn.FromBelow);
        if (note.GlideOut != GlideOut.None) Slant(middle + half + 0.2, middle + half + 1.4, y, note.GlideOut == GlideOut.Upwards);
        if (links.LeadsTo(note) is { } next && SystemNotes.IsGlide(next.Note))
        {
            var right = geometry.Has(next.Slot.Measure) ? row.Middle(next) - row.HalfWidth(next) - 0.2 : geometry.Right - 0.4;
            Slant(middle + half + 0.2, right, y, next.Note.Fret.Number >= note.Fret.Number);
        }
        if (SystemNotes.IsGlide(note) && links.Before(note) is { } before && !geometry.Has(before.Slot.Measure))
        {
            Slant(middle - half - 1.6, middle - half - 0.2, y, note.Fret.Number >= before.Note.Fret.Number);
        }
    }

    // As much of the line as is free of signs: a bar written as again may be on the way.
    private void Slant(double left, double right, double y, bool rising)
    {
        if (right - left < 0.3) return;
        var lean = rising ? 0.42 : -0.42;
        if (pen.Signs.FreeRun(left, y + lean, right, y - lean, 0.1) is not var (from, to)) return;
        pen.Line(left + (right - left) * from, y + lean - 2 * lean * from, left + (right - left) * to, y + lean - 2 * lean * to, 0.15);
    }

    // One arc over a run on a string, with a letter where a finger hammers on or pulls off.
    private void DrawSlur(PlacedNote placed)
    {
        var note = placed.Note;
        var enters = SystemNotes.IsSlurred(note) && links.Before(note) is { } before && !geometry.Has(before.Slot.Measure);
        var starts = !SystemNotes.IsSlurred(note) && links.LeadsTo(note) is { } after && SystemNotes.IsSlurred(after.Note);
        if (SystemNotes.IsSlurred(note) && note.Attack != Attack.Glide && links.Before(note) is { } from && IsTopOfSlurs(placed))
        {
            var left = bendEnds.TryGetValue(from.Note.Id, out var bend) ? bend.X : geometry.Has(from.Slot.Measure) ? row.Middle(from) : row.Middle(placed) - 2;
            handLetters.AddMove(note.Attack, left, row.Middle(placed));
        }
        if ((!starts && !enters) || !(starts ? IsTopOfStarts(placed) : IsTopOfSlurs(placed))) return;
        var end = placed;
        var leaves = false;
        while (links.LeadsTo(end.Note) is { } next && SystemNotes.IsSlurred(next.Note))
        {
            leaves = !geometry.Has(next.Slot.Measure);
            if (leaves) break;
            end = next;
        }
        var y = TabRow.LineOf(note) - 0.78;
        var x1 = enters ? row.Middle(placed) - 2 : bendEnds.TryGetValue(note.Id, out var bent) ? bent.X + 0.3 : row.Middle(placed);
        var x2 = leaves ? geometry.Right : row.Middle(end);
        // Between numbers that stand on the string above, not through them.
        if (NumberAbove(placed) is { } first) x1 = Math.Max(x1, row.Middle(placed) + first + 0.3);
        if (NumberAbove(end) is { } second) x2 = Math.Min(x2, row.Middle(end) - second - 0.3);
        if (x2 - x1 <= 0.5) return;
        var height = Math.Clamp((x2 - x1) * 0.12, 0.4, 0.8);
        // Over what other voices have on the strings above.
        for (var tries = 0; tries < MostRaises && !pen.Signs.IsFreeSlur(x1, y, x2, y, -height); tries++) y -= RaiseStep;
        pen.Slur(x1, y, x2, y, -height);
    }

    // Half the width of the wider of a number and the one on the string above it; null where there is none.
    private double? NumberAbove(PlacedNote placed)
    {
        if (placed.IsGrace) return null;
        for (var h = 0; h < placed.Slot.Heads.Length; h++)
        {
            if (placed.Slot.Heads[h].Note.String.Value != placed.Note.String.Value - 1) continue;
            return Math.Max(row.HalfWidth(placed), row.HalfWidth(placed with { Head = h }));
        }
        return null;
    }

    private static bool IsTopOfSlurs(PlacedNote placed) => placed.IsGrace
        || !placed.Slot.Heads.Any(h => h.Note.String.Value < placed.Note.String.Value && SystemNotes.IsSlurred(h.Note));

    private bool IsTopOfStarts(PlacedNote placed) => placed.IsGrace
        || !placed.Slot.Heads.Any(h => h.Note.String.Value < placed.Note.String.Value && links.LeadsTo(h.Note) is { } next && SystemNotes.IsSlurred(next.Note));
}
