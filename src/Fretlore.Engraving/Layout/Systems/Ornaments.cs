using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Spacing;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>Draws trills and fermatas above the upper row of a part.</summary>
internal sealed class Ornaments(Pen pen, StaffPlan staff, SystemGeometry geometry)
{
    private const double TrillScale = 0.85;

    private readonly StackedRows trills = new(pen);
    private readonly AlignedRow fermatas = new(pen);

    public void Draw()
    {
        foreach (var place in geometry.Measures)
        {
            foreach (var voice in place.Measure.Parts[staff.Index].Voices)
            {
                for (var i = 0; i < voice.Slots.Length; i++) Add(voice.Slots[i], i + 1 < voice.Slots.Length ? geometry.X(voice.Slots[i + 1]) : place.Right - 0.3);
            }
        }
        trills.DrawAbove(0, 1);
        fermatas.DrawAbove(0, 1);
    }

    private void Add(Slot slot, double room)
    {
        var x = geometry.X(slot) - slot.Shift;
        var middle = x + (slot.IsRest ? 0.5 : ColumnInk.Centre);
        if (slot.Heads.Any(h => h.Note.Trill is not null)) AddTrill(x, room);
        if (slot.Event.HasFermata) AddFermata(middle);
    }

    private void AddFermata(double middle)
    {
        var half = pen.Ink.GlyphWidth(Smufl.FermataAbove) / 2;
        // One for voices that are held together.
        if (fermatas.HasRoom(middle - half, middle + half)) fermatas.Add(middle - half, middle + half, y => pen.GlyphCentred(Smufl.FermataAbove, middle, y));
    }

    // The letters, and a wave up to the next note where there is room for one.
    private void AddTrill(double x, double room)
    {
        var letters = pen.Ink.Glyph(Smufl.OrnamentTrill);
        var start = x + (letters.Right - letters.Left) * TrillScale;
        var step = pen.Ink.Music.AdvanceOf(Smufl.WiggleTrill);
        var waves = Math.Max(0, (int)((room - 0.6 - start - 0.1) / step));
        var wave = pen.Ink.Glyph(Smufl.WiggleTrill);
        const double Apart = 0.15;
        // The last wave's ink reaches beyond its step.
        trills.Add(x, start + Apart + waves * step + 0.25, y =>
        {
            pen.Glyph(Smufl.OrnamentTrill, x - letters.Left * TrillScale, y, TrillScale);
            var middle = y + letters.Top * TrillScale / 2 - (wave.Top + wave.Bottom) / 2;
            for (var i = 0; i < waves; i++) pen.Glyph(Smufl.WiggleTrill, start + Apart + i * step, middle);
        });
    }
}
