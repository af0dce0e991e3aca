using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Model;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Draws the pitches that notes are trilled with: small heads in brackets after the chord (common practice).</summary>
internal sealed class TrilledHeads(Pen pen)
{
    private const double Scale = 0.66;
    private const double Gap = 0.35;
    private const double Bracket = 0.3;
    private const double BracketGap = 0.12;

    private readonly double headWidth = pen.Ink.GlyphWidth(Smufl.NoteheadBlack) * Scale;

    /// <summary>How far right of the chord's ink, and of what its bends reach, they go.</summary>
    public static double WidthOf(ReachedStep? trilled) =>
        trilled is null ? 0 : Gap + 2 * (Bracket + BracketGap) + (trilled.Shape.Right - trilled.Shape.Left) * Scale;

    /// <param name="slot">The chord.</param>
    /// <param name="x">Its left edge.</param>
    public void Draw(Slot slot, double x)
    {
        var (_, heads, shape) = slot.Trilled!;
        var left = x + slot.Shape.Right + ReachedHeads.WidthOf(slot.Reached) + Gap;
        var origin = left + Bracket + BracketGap - shape.Left * Scale;
        for (var i = 0; i < heads.Length; i++)
        {
            var at = origin + shape.HeadX[i] * Scale;
            pen.Glyph(Smufl.NoteheadBlack, at, heads[i].Y, Scale);
            if (heads[i].Accidental is { } alteration) pen.Glyph(Signs.AccidentalOf(alteration), origin + shape.AccidentalX[i] * Scale, heads[i].Y, Scale);
            Ledgers(heads[i], at);
        }
        DrawBrackets(heads[^1].Y, heads[0].Y, left, origin + shape.Right * Scale + BracketGap);
    }

    // One pair around all heads.
    private void DrawBrackets(double top, double bottom, double left, double right)
    {
        const double Over = 0.55;
        (top, bottom) = (top - Over, bottom + Over);
        foreach (var (end, side) in ((double, double)[])[(left + Bracket, -1), (right, 1)])
        {
            pen.Curve(new(end, top), new(end + side * Bracket * 1.2, top + 0.35), new(end + side * Bracket * 1.2, bottom - 0.35), new(end, bottom), 0.12);
        }
    }

    private void Ledgers(Head head, double x)
    {
        for (var position = -2; position >= head.Position; position -= 2) Ledger(position);
        for (var position = 10; position <= head.Position; position += 2) Ledger(position);

        void Ledger(int position) => pen.Line(x - 0.15, 4 - position / 2.0, x + headWidth + 0.15, 4 - position / 2.0, pen.Ink.LedgerLine);
    }
}
