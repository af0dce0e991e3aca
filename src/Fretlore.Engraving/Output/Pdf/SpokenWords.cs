using System.Text;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;

namespace Fretlore.Engraving.Output.Pdf;

/// <summary>Drawn words as they are read: pieces that stand together, such as those of a chord symbol, are one word.</summary>
internal static class SpokenWords
{
    private const double Near = 0.35;
    private const double Raised = 1.2;

    /// <param name="marks">What is drawn; signs that stand for letters are read too.</param>
    /// <param name="fonts">What it is drawn with.</param>
    /// <param name="between">What parts pieces that stand apart.</param>
    public static string Of(IEnumerable<Mark> marks, FontLibrary fonts, string between)
    {
        var words = new StringBuilder();
        Point? end = null;
        Add(marks);
        return words.ToString();

        void Add(IEnumerable<Mark> all)
        {
            foreach (var mark in all)
            {
                switch (mark)
                {
                    case Group group: Add(group.InPlace); break;
                    case Text text:
                        var width = fonts.Texts.WidthOf(text.Value, text.Face, text.Size);
                        var left = text.At.X - width * (text.Anchor switch { Anchor.Middle => 0.5, Anchor.End => 1, _ => 0 });
                        Put(text.Value, left, left + width, text.At.Y);
                        break;
                    case Glyph glyph when LetterOf(glyph.CodePoint) is { } letter:
                        Put(letter, glyph.At.X, glyph.At.X + fonts.Music.AdvanceOf(glyph.CodePoint) * glyph.Scale, glyph.At.Y);
                        break;
                }
            }
        }

        void Put(string piece, double left, double right, double y)
        {
            var isNear = end is { } before && Math.Abs(left - before.X) < Near && Math.Abs(y - before.Y) < Raised;
            if (words.Length > 0 && !isNear) words.Append(between);
            words.Append(piece);
            end = new Point(right, y);
        }
    }

    private static string? LetterOf(int glyph) => glyph switch
    {
        Smufl.CsymAccidentalFlat => "\u266D",
        Smufl.CsymAccidentalSharp => "\u266F",
        Smufl.CsymMajorSeventh => "maj",
        Smufl.CsymHalfDiminished => "\u00F8",
        Smufl.CsymDiminished => "\u00B0",
        Smufl.MetNoteHalfUp => "half note",
        Smufl.MetNoteQuarterUp => "quarter note",
        Smufl.MetNote8thUp => "eighth note",
        Smufl.MetNote16thUp => "sixteenth note",
        Smufl.MetAugmentationDot => "dotted",
        _ => null,
    };
}
