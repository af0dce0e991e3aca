using System.Collections.Immutable;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Tab;
using Fretlore.Engraving.Drawing;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Spacing;

/// <summary>How far a slot's ink reaches left and right of its column, on the staff and in the tablature.</summary>
internal readonly record struct SlotInk(double StaffLeft, double StaffRight, double TabLeft, double TabRight, double RhythmRight);

/// <summary>Measures the ink of slots for the rods between columns.</summary>
/// <param name="ink">Fonts.</param>
/// <param name="links">Which notes lead to which.</param>
/// <param name="showsHeldNotes">Whether held notes stand in the tablature too.</param>
internal sealed class ColumnInk(Ink ink, Links links, bool showsHeldNotes)
{
    /// <summary>Where a fret number is centred right of its column: under the middle of a head.</summary>
    public const double Centre = 0.59;

    /// <summary>From one grace note to the next.</summary>
    public const double GracePitch = 1.45;

    /// <summary>From the last grace note's column to the main note's ink.</summary>
    public const double GraceGap = 1.35;

    private const double RestWidth = 1.3;

    public SlotInk Of(Slot slot)
    {
        if (slot.IsRest)
        {
            var width = slot.Event.IsAirStroke ? 1.2 : RestWidth + slot.Event.Value.Dots * 0.6;
            return new SlotInk(0, width, 0, 0, width);
        }
        double tabHalf = 0, tabRight = 0, tabLeft = 0;
        var widest = WidestOfBent(slot.Heads);
        foreach (var head in slot.Heads)
        {
            var note = head.Note;
            var half = HalfOf(note);
            tabHalf = Math.Max(tabHalf, half);
            // Bends begin right of the widest number of the chord.
            tabRight = Math.Max(tabRight, (note.Bend is null ? half : widest) + AfterNote(note));
            if (note.GlideIn != GlideIn.None) tabLeft = 1.3;
            if (note.Bend is not null) tabRight += BentChord.Step * BentChord.RankOf(slot, note);
            // A pre-bend under other numbers goes up beside them.
            if (note is { Bend.FromCents: > 0, IsTiedFromBefore: false } && IsUnderAnother(note, slot.Heads)) tabRight += 0.6;
        }
        var (left, right) = (slot.Shape.Left, slot.Shape.Right + slot.Shift + Staff.ReachedHeads.Width(slot));
        if (Staff.TremoloStrokes.Of(slot) > 0)
        {
            left = Math.Min(left, slot.Shape.StemX - Staff.TremoloStrokes.HalfWidth);
            right = Math.Max(right, slot.Shift + slot.Shape.StemX + Staff.TremoloStrokes.HalfWidth);
        }
        if (slot.Heads.Any(h => h.Note.GlideIn != GlideIn.None)) left -= 1.5;
        // Away from all voices' signs.
        if (slot.Heads.Any(h => h.Note.GlideOut != GlideOut.None)) right = Math.Max(right, slot.RightOfColumn) + 1.6;
        // What comes over a system break needs room to come in.
        if (slot.Column == 0) left -= EnteringRoom(slot.Heads);
        // A tie has to be seen, and two of a unison from each other.
        if (slot.Heads.Any(h => h.Note.IsHeldOn)) right += slot.Shape.HeadX.Any(x => x != 0) ? 1.1 : 0.6;
        if (slot.Event.Roll != Roll.None)
        {
            left -= 1.1;
            tabLeft += 1.5;
        }
        tabLeft += tabHalf - Centre;
        if (slot.Graces.Length > 0)
        {
            var graces = Staff.GraceDrawer.Reach(slot);
            left -= graces;
            tabLeft += graces - Math.Min(0, slot.Shape.Left) + 0.2;
        }
        return new SlotInk(-left, right, tabLeft, tabRight + Centre, Centre + RhythmRight(slot));
    }

    // Half the width of a note's number.
    private double HalfOf(Note note) => ink.TextWidth(FretLabels.Of(note, showsHeldNotes), Face.Sans, HouseStyle.FretSize) / 2;

    // Half the width of the widest number, where any of them is bent.
    private double WidestOfBent(ImmutableArray<Head> heads)
    {
        var widest = 0.0;
        if (!heads.Any(h => h.Note.Bend is not null)) return widest;
        foreach (var head in heads) widest = Math.Max(widest, HalfOf(head.Note));
        return widest;
    }

    private static bool IsUnderAnother(Note note, ImmutableArray<Head> heads)
    {
        foreach (var head in heads)
        {
            if (head.Note.String.Value < note.String.Value) return true;
        }
        return false;
    }

    private static double EnteringRoom(ImmutableArray<Head> heads)
    {
        var room = 0.0;
        foreach (var head in heads)
        {
            if (head.Note.IsTiedFromBefore || head.Note.Attack is Attack.HammerOn or Attack.PullOff) room = Math.Max(room, 0.7);
            else if (head.Note.Attack is Attack.Glide or Attack.PickedGlide) room = Math.Max(room, 1.3);
        }
        return room;
    }

    // Right of a stem on tablature alone.
    private static double RhythmRight(Slot slot)
    {
        var dots = slot.Event.Value.Dots;
        if (dots > 0) return TabRhythm.DotX(slot) + dots * 0.6;
        return slot.Beam < 0 && slot.Flags > 0 ? 0.9 : Staff.TremoloStrokes.Of(slot) > 0 ? Staff.TremoloStrokes.HalfWidth : 0.1;
    }

    // What follows a fret number before the next one may come: bends, glides and slurs need room to be seen.
    private double AfterNote(Note note)
    {
        var room = 0.0;
        if (note.Bend is { } bend) room = 1.2 + 1.5 * bend.ToCents.Count - (bend is { FromCents: > 0, ToCents.Count: > 0 } ? 0.4 : 0);
        if (note is { Bend.ToCents.Count: > 0, Vibrato.Width: not VibratoWidth.None }) room += 3;
        else if (note.Vibrato.Width != VibratoWidth.None) room = Math.Max(room, 1.6);
        if (note.GlideOut != GlideOut.None) room = Math.Max(room, 1.5);
        if (links.LeadsTo(note) is { } next) room = Math.Max(room, next.Note.Attack is Attack.Glide or Attack.PickedGlide ? 1.1 : note.Attack is Attack.Tap or Attack.HammerFromNowhere ? 1.3 : 0.55);
        return room;
    }
}
