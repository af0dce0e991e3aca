using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Systems;
using Fretlore.Music;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Draws the beams of a group: the first through the whole group, further ones over the notes that have them.</summary>
internal sealed class BeamDrawer(Pen pen)
{
    private const double StubLength = 1.1;

    public BeamEdge Draw(MeasurePlace place, Voice voice, (int First, int Last) group)
    {
        var count = group.Last - group.First + 1;
        var up = voice.Slots[group.First].Stem == StemSide.Up;
        Span<BeamStem> stems = count <= 64 ? stackalloc BeamStem[count] : new BeamStem[count];
        for (var i = 0; i < count; i++)
        {
            var slot = voice.Slots[group.First + i];
            stems[i] = new BeamStem(place.Columns[slot.Column] + slot.Shift + slot.Shape.StemX, slot.NearTip.Y, slot.Flags, TremoloStrokes.StemFor(slot));
        }
        var edge = BeamShape.Fit(stems, up);
        var bar = place.Measure.Bar;
        var missing = bar.IsPickup ? bar.Meter.Length - bar.Length : Beats.Zero;
        var levels = 0;
        foreach (var stem in stems) levels = Math.Max(levels, stem.Beams);
        for (var level = 1; level <= levels; level++)
        {
            for (var first = 0; first < count; first++)
            {
                if (stems[first].Beams < level) continue;
                var last = first;
                while (last + 1 < count && stems[last + 1].Beams >= level
                    && !BeamGroups.Breaks(bar.Meter, level, voice.Slots[group.First + last + 1].Event.Start + missing))
                {
                    last++;
                }
                double left = stems[first].X, right = stems[last].X;
                if (first == last) (left, right) = Stub(voice, group.First, first, count, stems, missing);
                DrawPiece(edge, left, right, level, up);
                first = last;
            }
        }
        return edge;
    }

    // A short beam points to the note it makes up a beat with: back after a dotted note, forward when it begins a division.
    private static (double, double) Stub(Voice voice, int offset, int at, int count, ReadOnlySpan<BeamStem> stems, Beats missing)
    {
        var item = voice.Slots[offset + at].Event;
        var forward = at == 0 || (at < count - 1 && (item.Start + missing).Modulo(item.Duration * 2).IsZero);
        var x = stems[at].X;
        var room = forward ? stems[at + 1].X - x : x - stems[at - 1].X;
        var length = Math.Min(StubLength, room * 0.6);
        return forward ? (x, x + length) : (x - length, x);
    }

    private void DrawPiece(BeamEdge edge, double left, double right, int level, bool up)
    {
        var half = pen.Ink.Stem / 2;
        var inwards = (pen.Ink.Beam / 2 + (level - 1) * HouseStyle.BeamPitch) * (up ? 1 : -1);
        pen.Beam(left - half, edge.At(left - half) + inwards, right + half, edge.At(right + half) + inwards, pen.Ink.Beam);
    }
}
