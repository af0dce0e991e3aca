using System.Collections.Immutable;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;

namespace Fretlore.Engraving.Layout.Lettering;

/// <summary>A piece of a chord symbol: text, or an accidental of the music font.</summary>
/// <param name="Value">Text; null for a glyph.</param>
/// <param name="CodePoint">The glyph.</param>
/// <param name="X">Right of the symbol's left edge.</param>
/// <param name="Raise">Above the baseline.</param>
/// <param name="Size">Em size, or the glyph's scale.</param>
internal readonly record struct ChordPiece(string? Value, int CodePoint, double X, double Raise, double Size);

/// <summary>A chord symbol set as printed: root, then m, then what is added raised and smaller, then the bass after a stroke.</summary>
internal sealed record ChordLabel(string Symbol, ImmutableArray<ChordPiece> Pieces, double Width)
{
    private const double RaisedSize = HouseStyle.ChordSize * 0.72;
    private const double Raise = HouseStyle.ChordSize * 0.27;

    public static ChordLabel Of(string symbol, Ink ink)
    {
        var pieces = ImmutableArray.CreateBuilder<ChordPiece>();
        var x = 0.0;
        var text = symbol.Replace('\u266F', '#').Replace('\u266D', 'b');
        // A power chord's 5 stays on the line: it is half of the name and not an addition.
        var slash = text.LastIndexOf('/');
        var bass = slash > 0 && slash + 1 < text.Length && text[slash + 1] is >= 'A' and <= 'G' ? text[slash..] : "";
        var upper = text[..^bass.Length];
        var i = 0;
        if (upper.Length > 0 && upper[0] is >= 'A' and <= 'G')
        {
            Put(upper[..1], false);
            for (i = 1; i < upper.Length && upper[i] is '#' or 'b'; i++) PutSign(upper[i], false);
            if (upper.AsSpan(i).StartsWith("m") && !upper.AsSpan(i).StartsWith("maj") || upper.AsSpan(i).StartsWith("–")) Put(upper.Substring(i++, 1), false);
            var rest = upper[i..];
            PutMixed(rest, rest is not "5" and not "");
        }
        else
        {
            Put(upper, false);
        }
        if (bass.Length > 0) PutMixed(bass, false);
        return new ChordLabel(symbol, pieces.ToImmutable(), x);

        // Between letters and digits b and # are accidentals only before a digit, or after a bass letter.
        void PutMixed(string value, bool raised)
        {
            var from = 0;
            for (var k = 0; k < value.Length; k++)
            {
                var isSign = value[k] is '#' or 'b'
                    && (k + 1 < value.Length && char.IsAsciiDigit(value[k + 1]) || k > 0 && value[k - 1] is >= 'A' and <= 'G');
                var quality = QualityOf(value[k]);
                if (!isSign && quality == 0) continue;
                Put(value[from..k], raised);
                if (isSign) PutSign(value[k], raised);
                else PutGlyph(quality, raised);
                from = k + 1;
            }
            Put(value[from..], raised);
        }

        void Put(string value, bool raised)
        {
            if (value.Length == 0) return;
            var size = raised ? RaisedSize : HouseStyle.ChordSize;
            pieces.Add(new ChordPiece(value, 0, x, raised ? Raise : 0, size));
            x += ink.TextWidth(value, Face.SansBold, size);
        }

        void PutSign(char sign, bool raised) => PutGlyph(sign == '#' ? Smufl.CsymAccidentalSharp : Smufl.CsymAccidentalFlat, raised);

        void PutGlyph(int glyph, bool raised)
        {
            var size = raised ? RaisedSize : HouseStyle.ChordSize;
            // The chord symbol accidentals are drawn for a text of four staff spaces' size.
            var scale = size / 4 * 0.95;
            x += 0.05;
            pieces.Add(new ChordPiece(null, glyph, x, raised ? Raise : 0, scale));
            x += ink.Music.AdvanceOf(glyph) * scale + 0.05;
        }
    }

    // The triangle of a major seventh and the circles of diminished chords.
    private static int QualityOf(char sign) => sign switch
    {
        '△' => Smufl.CsymMajorSeventh,
        'ø' => Smufl.CsymHalfDiminished,
        '°' => Smufl.CsymDiminished,
        _ => 0,
    };

    public void Draw(Pen pen, double x, double y)
    {
        foreach (var piece in Pieces)
        {
            if (piece.Value is { } value) pen.Text(value, x + piece.X, y - piece.Raise, piece.Size, Face.SansBold);
            else pen.Glyph(piece.CodePoint, x + piece.X, y - piece.Raise, piece.Size);
        }
    }
}
