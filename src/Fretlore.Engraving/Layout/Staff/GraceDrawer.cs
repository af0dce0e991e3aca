using System.Globalization;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Spacing;
using Fretlore.Engraving.Layout.Tab;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Draws grace notes before a chord: small, stems up, one alone with a slashed flag, several under two beams.</summary>
internal sealed class GraceDrawer(Pen pen, NoteTitles? titles)
{
    private const double StemLength = 2.5;
    private const double FlagRoom = 0.35;
    private const double StrokesRoom = 0.6;
    private const double AccidentalRoom = 0.8;
    private const double Scale = HouseStyle.GraceScale;

    /// <summary>The left edge of a grace note's head.</summary>
    public static double XOf(Slot slot, int grace, double x) => x + slot.Shape.Left - FromMain(slot, grace);

    /// <summary>From the left edge of the main note's ink back to that of the grace notes'.</summary>
    public static double Reach(Slot slot) => FromMain(slot, 0) + (slot.Graces[0].Accidental is null ? 0 : AccidentalRoom);

    private static double FromMain(Slot slot, int grace)
    {
        var from = slot.Graces.Length == 1 ? ColumnInk.GraceGap + FlagRoom : ColumnInk.GraceGap;
        if (slot.Stem == StemSide.Down && TremoloStrokes.Of(slot) > 0) from += StrokesRoom;
        for (var g = slot.Graces.Length - 1; g > grace; g--) from += ColumnInk.GracePitch + (slot.Graces[g].Accidental is null ? 0 : AccidentalRoom);
        return from;
    }

    /// <summary>Where their stems end.</summary>
    public static double TipOf(Slot slot) => slot.Graces.Min(g => Math.Min(g.Y - StemLength, 2));

    public void Draw(Slot slot, double x)
    {
        var stemX = pen.Ink.GlyphWidth(Smufl.NoteheadBlack) * Scale - pen.Ink.Stem / 2;
        var tip = TipOf(slot);
        for (var i = 0; i < slot.Graces.Length; i++)
        {
            var head = slot.Graces[i];
            var at = XOf(slot, i, x);
            pen.Open();
            pen.Glyph(Signs.GlyphOf(head.Shape), at, head.Y, Scale);
            if (head.Accidental is { } alteration)
            {
                var sign = Signs.AccidentalOf(alteration);
                pen.Glyph(sign, at - 0.15 - pen.Ink.GlyphWidth(sign) * Scale, head.Y, Scale);
            }
            pen.Close("head-" + head.Note.Id.Index.ToString(CultureInfo.InvariantCulture), titles?.Of(head.Note));
            Ledgers(head, at);
            pen.Line(at + stemX, head.Y - 0.1, at + stemX, tip, pen.Ink.Stem * 0.8);
        }
        var first = XOf(slot, 0, x) + stemX;
        if (slot.Graces.Length == 1)
        {
            pen.Glyph(Smufl.Flag8thUp, first - pen.Ink.Stem / 2, tip, Scale);
            pen.Line(first - 0.55, tip + 1.5, first + 0.7, tip + 0.55, pen.Ink.Stem);
            return;
        }
        var last = XOf(slot, slot.Graces.Length - 1, x) + stemX;
        for (var beam = 0; beam < 2; beam++) pen.Beam(first, tip + 0.15 + beam * 0.5, last, tip + 0.15 + beam * 0.5, 0.3);
    }

    private void Ledgers(Head head, double x)
    {
        var width = pen.Ink.GlyphWidth(Smufl.NoteheadBlack) * Scale;
        for (var position = -2; position >= head.Position; position -= 2) Ledger(position);
        for (var position = 10; position <= head.Position; position += 2) Ledger(position);

        void Ledger(int position) => pen.Line(x - 0.2, 4 - position / 2.0, x + width + 0.2, 4 - position / 2.0, pen.Ink.LedgerLine);
    }
}
