using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Systems;
using Fretlore.Engraving.Layout.Tab;
using Fretlore.Music;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Draws the voices of a measure on the staff: beams first, then each chord or rest, then tuplets.</summary>
internal sealed class VoiceDrawer(Pen pen, SystemGeometry geometry, NoteTitles? titles)
{
    private readonly ChordDrawer chords = new(pen, titles);
    private readonly BeamDrawer beams = new(pen);
    private readonly TupletDrawer tuplets = new(pen);
    private readonly GraceDrawer graces = new(pen, titles);
    private readonly ReachedHeads reached = new(pen);
    private readonly TrilledHeads trilled = new(pen);

    public void Draw(MeasurePlace place, MeasurePart part)
    {
        foreach (var voice in part.Voices)
        {
            var edges = new BeamEdge[voice.Beams.Length];
            for (var b = 0; b < voice.Beams.Length; b++) edges[b] = beams.Draw(place, part, voice, voice.Beams[b]);
            foreach (var slot in voice.Slots)
            {
                var x = geometry.X(slot);
                if (slot.IsRest)
                {
                    if (!IsDoubledRest(part, voice, slot)) DrawRest(slot, x, RestShift(part, voice, slot));
                    continue;
                }
                var tip = slot.Stem == StemSide.None ? slot.Highest.Y
                    : slot.Beam >= 0 ? edges[slot.Beam].At(x + slot.Shape.StemX)
                    : Stems.TipOf(slot, voice.Rule != StemSide.None);
                if (slot.Graces.Length > 0) graces.Draw(slot, x);
                chords.Draw(slot, x, tip, voice.Rule);
                if (slot.Trilled is not null) trilled.Draw(slot, x);
            }
            foreach (var tuplet in voice.Tuplets) tuplets.Draw(voice, tuplet, geometry, edges);
        }
        // Last, so that their slurs find room among the signs of all voices.
        foreach (var voice in part.Voices)
        {
            foreach (var slot in voice.Slots)
            {
                if (slot.Reached.Length > 0) reached.Draw(slot, geometry.X(slot), slot.Stem != StemSide.Up);
            }
        }
    }

    private void DrawRest(Slot slot, double x, double shift)
    {
        if (slot.Event.IsAirStroke) return;
        var (glyph, y) = Signs.RestOf(slot.Event.Value.Base);
        pen.Glyph(glyph, x, y + shift);
        if (slot.Event.Value.Base <= ValueBase.Half && y + shift is < 0 or > 4)
        {
            pen.Line(x - 0.3, y + shift, x + pen.Ink.GlyphWidth(glyph) + 0.3, y + shift, pen.Ink.LedgerLine);
        }
        var dotX = x + pen.Ink.GlyphWidth(glyph) + 0.3;
        for (var d = 0; d < slot.Event.Value.Dots; d++, dotX += 0.65) pen.Glyph(Smufl.AugmentationDot, dotX, 1.5 + shift);
    }

    // Voices that rest together at the same time show one rest.
    private static bool IsDoubledRest(MeasurePart part, Voice voice, Slot slot)
    {
        if (voice.Rule != StemSide.Down) return false;
        var upper = part.Voices[0].Slots.FirstOrDefault(s => s.Column == slot.Column);
        return upper is { IsRest: true } && upper.Event.Value == slot.Event.Value && upper.Event.Tuplet == slot.Event.Tuplet;
    }

    // Gould: with two voices rests move by whole spaces out of the other voice's way.
    private double RestShift(MeasurePart part, Voice voice, Slot slot)
    {
        const double Clear = 0.9;
        if (voice.Rule == StemSide.None) return 0;
        var up = voice.Rule == StemSide.Up;
        var shift = up ? -2.0 : 2.0;
        var (glyph, y) = Signs.RestOf(slot.Event.Value.Base);
        var ink = pen.Ink.Glyph(glyph);
        foreach (var other in part.Voices)
        {
            if (other == voice) continue;
            foreach (var near in other.Slots)
            {
                if (near.IsRest || near.Event.End <= slot.Event.Start || near.Event.Start >= slot.Event.End) continue;
                if (up) shift = Math.Min(shift, Math.Floor(near.Highest.Y - Clear - ink.Bottom - y));
                else shift = Math.Max(shift, Math.Ceiling(near.Lowest.Y + Clear - ink.Top - y));
            }
        }
        return shift;
    }
}
