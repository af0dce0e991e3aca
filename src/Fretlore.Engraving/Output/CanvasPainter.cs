using System.Runtime.InteropServices;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Fonts.Shaping;
using Fretlore.Engraving.Output.Pdf;
using SkiaSharp;

namespace Fretlore.Engraving.Output;

/// <summary>Draws marks on a canvas whose unit is the staff space: a PDF page or a bitmap.</summary>
internal sealed class CanvasPainter(FontLibrary fonts, CanvasFonts canvasFonts, PictureGround behind = PictureGround.White) : IDisposable
{
    private const double SpacesPerEm = 4;

    private readonly SKPaint ink = new() { IsAntialias = true, Color = InkOn(behind), Style = SKPaintStyle.Fill };
    private readonly SKPaint ground = new() { IsAntialias = true, Style = SKPaintStyle.Fill };
    private readonly SKPaint stroke = new() { IsAntialias = true, Color = InkOn(behind), Style = SKPaintStyle.Stroke, StrokeJoin = SKStrokeJoin.Round };

    // How far below their own places the marks of the open groups are.
    private double down;

    public void Dispose()
    {
        ink.Dispose();
        ground.Dispose();
        stroke.Dispose();
    }

    public void Paint(SKCanvas canvas, ReadOnlySpan<Mark> marks)
    {
        foreach (var mark in marks)
        {
            switch (mark)
            {
                case Group group: Paint(canvas, group); break;
                case Glyph glyph: Paint(canvas, glyph); break;
                case Line line: Paint(canvas, line); break;
                case Polygon polygon: Paint(canvas, polygon); break;
                case Curve curve: Paint(canvas, curve); break;
                case Slur slur: Paint(canvas, slur); break;
                case Fill fill: Paint(canvas, fill); break;
                case Text text: Paint(canvas, text); break;
                default: throw new NotSupportedException($"A canvas has no way to draw a {mark.GetType().Name}.");
            }
        }
    }

    /// <summary>Draws the sign that says where a part of a tagged page begins.</summary>
    public void Sign(SKCanvas canvas)
    {
        var (left, top, width, height) = PdfTags.Sign;
        canvas.DrawRect(left, top, width, height, ink);
    }

    private void Paint(SKCanvas canvas, Group group)
    {
        down += group.Down;
        Paint(canvas, group.Marks.AsSpan());
        down -= group.Down;
    }

    private void Paint(SKCanvas canvas, Glyph glyph)
    {
        if (canvasFonts.Music is { } music)
        {
            using var font = music.AtSize((float)(SpacesPerEm * glyph.Scale));
            ReadOnlySpan<ushort> glyphs = [music.GlyphOf(fonts.MusicSource.GlyphOf(glyph.CodePoint))];
            using var blob = SKTextBlob.CreatePositioned(MemoryMarshal.AsBytes(glyphs), SKTextEncoding.GlyphId, font, [default]);
            canvas.DrawText(blob, (float)glyph.At.X, (float)(glyph.At.Y + down), ink);
            return;
        }

        canvas.Save();
        canvas.Translate(At(glyph.At));
        canvas.Scale((float)glyph.Scale);
        canvas.DrawPath(fonts.Outlines.Of(glyph.CodePoint), ink);
        canvas.Restore();
    }

    private void Paint(SKCanvas canvas, Line line)
    {
        stroke.StrokeWidth = (float)line.Thickness;
        using var dashes = DashPattern.Of(line) is { } pattern ? SKPathEffect.CreateDash([(float)pattern.Dash, (float)pattern.Gap], 0) : null;
        stroke.PathEffect = dashes;
        stroke.StrokeCap = line.Style == LineStyle.Dotted ? SKStrokeCap.Round : SKStrokeCap.Butt;
        canvas.DrawLine(At(line.From), At(line.To), stroke);
        stroke.PathEffect = null;
        stroke.StrokeCap = SKStrokeCap.Butt;
    }

    private void Paint(SKCanvas canvas, Polygon polygon)
    {
        using var outline = new SKPathBuilder();
        outline.AddPoly([.. polygon.Points.Items.Select(At)], close: true);
        using var path = outline.Detach();
        canvas.DrawPath(path, ink);
    }

    private void Paint(SKCanvas canvas, Curve curve)
    {
        using var outline = new SKPathBuilder();
        outline.MoveTo(At(curve.From));
        outline.CubicTo(At(curve.Control1), At(curve.Control2), At(curve.To));
        using var path = outline.Detach();
        stroke.StrokeWidth = (float)curve.Thickness;
        canvas.DrawPath(path, stroke);
    }

    private void Paint(SKCanvas canvas, Slur slur)
    {
        var shape = SlurShape.Of(slur);
        using var outline = new SKPathBuilder();
        outline.MoveTo(At(slur.From));
        outline.CubicTo(At(shape.Out1), At(shape.Out2), At(slur.To));
        outline.CubicTo(At(shape.Back1), At(shape.Back2), At(slur.From));
        outline.Close();
        using var path = outline.Detach();
        stroke.StrokeWidth = (float)slur.EndThickness;
        canvas.DrawPath(path, ink);
        canvas.DrawPath(path, stroke);
    }

    private void Paint(SKCanvas canvas, Fill fill)
    {
        var level = fill.Level();
        if (behind == PictureGround.White) ground.Color = new SKColor(level, level, level);
        else
        {
            // A clear ground shows through where paper would: what lies beneath is taken away, and a tint is a thinner ink.
            ground.BlendMode = SKBlendMode.Src;
            ground.Color = ink.Color.WithAlpha((byte)(255 - level));
        }
        canvas.DrawRect(new SKRect((float)fill.Box.Left, (float)(fill.Box.Top + down), (float)fill.Box.Right, (float)(fill.Box.Bottom + down)), ground);
    }

    private void Paint(SKCanvas canvas, Text text)
    {
        var shaped = fonts.Shaper.Shape(text.Value, text.Face);
        var left = text.At.X - shaped.Width * text.Size * (text.Anchor switch { Anchor.Middle => 0.5, Anchor.End => 1, _ => 0 });
        foreach (var run in shaped.Runs)
        {
            if (run.Glyphs.Length == 0) continue;
            using var blob = Blob(run, text.Size);
            canvas.DrawText(blob, (float)left, (float)(text.At.Y + down), ink);
        }
    }

    private SKTextBlob Blob(GlyphRun run, double size)
    {
        var canvasFont = canvasFonts.Of(run.Source);
        using var font = canvasFont.AtSize((float)size);
        var glyphs = Array.ConvertAll(run.Glyphs, canvasFont.GlyphOf);
        var places = Array.ConvertAll(run.Places, place => new SKPoint((float)(place.X * size), (float)(place.Y * size)));
        using var builder = new SKTextBlobBuilder();
        builder.AddPositionedRun(glyphs, font, places);
        return builder.Build() ?? throw new InvalidOperationException("A run of glyphs makes no text.");
    }

    private static SKColor InkOn(PictureGround ground) => ground == PictureGround.ClearUnderWhiteInk ? SKColors.White : SKColors.Black;

    private SKPoint At(Point point) => new((float)point.X, (float)(point.Y + down));
}
