using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Guitar;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Lettering;

/// <summary>A chord frame: the shape seen with the nut on top, low string left, for any number of strings.</summary>
/// <remarks>From the first fret where all of it is there, else from its lowest pressed fret, whose number stands beside (common practice).</remarks>
internal sealed class ChordFrame
{
    public const double StringPitch = 0.95;

    private const double FretPitch = 1.3;
    private const int FewestFrets = 4;

    // Further from the fingers, a capo is left out.
    private const int MostFrets = 6;
    private const double NumberSize = HouseStyle.SmallSize;
    private const double FingerSize = HouseStyle.SmallSize * 0.75;

    private readonly Shape shape;
    private readonly ImmutableArray<Finger?> fingers;
    private readonly Capo capo;
    private readonly int first;
    private readonly int frets;

    /// <param name="shape">The shape.</param>
    /// <param name="fingers">A finger for each string from the low one, or none at all.</param>
    /// <param name="capo">The capo it is held under; drawn where it covers some strings only.</param>
    public ChordFrame(Shape shape, ImmutableArray<Finger?> fingers, Capo capo = default)
    {
        (this.shape, this.fingers, this.capo) = (shape, fingers, capo);
        var pressed = shape.LowToHigh.Items.OfType<Fret>().Where(f => !f.IsOpen).Select(f => f.Number).DefaultIfEmpty(capo.IsPartial ? capo.Fret : 1).ToArray();
        if (capo.IsPartial && pressed.Max() - capo.Fret < MostFrets) pressed = [capo.Fret, .. pressed];
        first = pressed.Max() <= FewestFrets ? 1 : pressed.Min();
        frets = Math.Max(FewestFrets, pressed.Max() - first + 1);
    }

    public double GridWidth => (shape.LowToHigh.Count - 1) * StringPitch;

    /// <summary>Room for open and mute signs over the grid.</summary>
    public static double Head => 1.3;

    public double Height => Head + frets * FretPitch + (fingers.IsEmpty ? 0 : FingerSize);

    /// <param name="pen">Draws it.</param>
    /// <param name="left">The low string.</param>
    /// <param name="top">The top of the open and mute signs.</param>
    public void Draw(Pen pen, double left, double top)
    {
        double nut = top + Head, bottom = nut + frets * FretPitch, right = left + GridWidth;
        for (var s = 0; s < shape.LowToHigh.Count; s++) pen.Line(left + s * StringPitch, nut, left + s * StringPitch, bottom, pen.Ink.StaffLine);
        for (var f = 0; f <= frets; f++)
        {
            var thickness = f == 0 && first == 1 ? pen.Ink.ThickBar : pen.Ink.StaffLine;
            pen.Line(left - pen.Ink.StaffLine / 2, nut + f * FretPitch, right + pen.Ink.StaffLine / 2, nut + f * FretPitch, thickness);
        }
        if (first > 1) pen.Text(first.ToString(CultureInfo.InvariantCulture), right + 0.6, nut + FretPitch / 2 + pen.Ink.DigitHeight(Face.Sans, NumberSize) / 2, NumberSize, Face.Sans);
        DrawCapo(pen, left, nut);
        DrawBarre(pen, left, nut);
        for (var s = 0; s < shape.LowToHigh.Count; s++)
        {
            var x = left + s * StringPitch;
            if (s < fingers.Length && fingers[s] is { } finger)
            {
                pen.Text(finger == Finger.Thumb ? "T" : ((int)finger).ToString(CultureInfo.InvariantCulture), x, bottom + FingerSize, FingerSize, Face.SansBold, Anchor.Middle);
            }
            if (shape.LowToHigh[s] is not { } fret) pen.Glyph(Smufl.FretboardX, x, top + 0.55, 1.25);
            else if (fret.IsOpen) pen.Glyph(Smufl.FretboardO, x, top + 0.55, 1.25);
            else pen.Glyph(Smufl.FretboardFilledCircle, x, nut + (fret.Number - first + 0.5) * FretPitch, 1.35);
        }
    }

    // A hollow bar, so that it is no finger's.
    private void DrawCapo(Pen pen, double left, double nut)
    {
        if (!capo.IsPartial || capo.Fret < first || capo.Fret >= first + frets) return;
        const double Half = 0.28, Beyond = 0.38;
        var y = nut + (capo.Fret - first + 0.5) * FretPitch;
        double from = left + (shape.LowToHigh.Count - capo.Lowest.Value) * StringPitch - Beyond, to = left + (shape.LowToHigh.Count - capo.Highest.Value) * StringPitch + Beyond;
        pen.White(from, y - Half, to, y + Half);
        foreach (var edge in (ReadOnlySpan<double>)[y - Half, y + Half]) pen.Line(from, edge, to, edge, pen.Ink.StaffLine * 1.4);
        foreach (var end in (ReadOnlySpan<double>)[from, to]) pen.Line(end, y - Half, end, y + Half, pen.Ink.StaffLine * 1.4);
    }

    // One finger lies across where the lowest fret is pressed on several strings and nothing between them is open.
    private void DrawBarre(Pen pen, double left, double nut)
    {
        var strings = shape.LowToHigh.Items;
        var lowest = strings.OfType<Fret>().Where(f => !f.IsOpen).Select(f => f.Number).DefaultIfEmpty(0).Min();
        int from = -1, to = -1;
        for (var s = 0; s < strings.Length; s++)
        {
            if (strings[s]?.Number != lowest || lowest == 0) continue;
            if (from < 0) from = s;
            to = s;
        }
        if (to <= from) return;
        for (var s = from; s <= to; s++)
        {
            if (strings[s] is null or { IsOpen: true }) return;
        }
        var y = nut + (lowest - first + 0.5) * FretPitch;
        pen.Line(left + from * StringPitch, y, left + to * StringPitch, y, 0.42);
    }
}
