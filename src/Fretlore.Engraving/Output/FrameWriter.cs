using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using SkiaSharp;

namespace Fretlore.Engraving.Output;

/// <summary>What of a drawing is seen in a film's frame, and where.</summary>
/// <param name="Left">The drawing's place, in staff spaces, that is at the window's left edge.</param>
/// <param name="Top">The drawing's place at the window's top edge.</param>
/// <param name="PixelsPerSpace">Its size.</param>
/// <param name="Window">Where in the frame it is seen, in pixels; nothing of it shows outside.</param>
public readonly record struct FrameView(double Left, double Top, double PixelsPerSpace, Box Window);

/// <summary>Writes frames of a film as PNG pictures on a clear ground: a drawing that moves, and marks that stay.</summary>
/// <remarks>The drawing is recorded once. Frames may be written from several threads; the same frame gives the same bytes.</remarks>
public sealed class FrameWriter : IDisposable
{
    private readonly SKPicture drawing;
    private readonly SKPicture still;
    private readonly int width;
    private readonly int height;

    /// <param name="drawing">What moves.</param>
    /// <param name="still">What stays, in pixels of the frame.</param>
    /// <param name="fonts">The fonts of both.</param>
    /// <param name="width">Of the frame, in pixels.</param>
    /// <param name="height">Of the frame, in pixels.</param>
    /// <param name="ground">What colour the ink is.</param>
    public FrameWriter(DrawnPage drawing, DrawnPage still, FontLibrary fonts, int width, int height, PictureGround ground)
    {
        (this.width, this.height) = (width, height);
        this.drawing = Record(drawing, fonts, ground);
        this.still = Record(still, fonts, ground);
    }

    public void Dispose()
    {
        drawing.Dispose();
        still.Dispose();
    }

    /// <summary>Writes one frame to a stream, which stays open.</summary>
    public void Write(FrameView view, Stream to)
    {
        using var surface = SKSurface.Create(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Premul));
        var canvas = surface.Canvas;
        canvas.Clear(SKColors.Transparent);
        canvas.DrawPicture(still);
        canvas.Save();
        canvas.ClipRect(new SKRect((float)view.Window.Left, (float)view.Window.Top, (float)view.Window.Right, (float)view.Window.Bottom));
        canvas.Translate((float)(view.Window.Left - view.Left * view.PixelsPerSpace), (float)(view.Window.Top - view.Top * view.PixelsPerSpace));
        canvas.Scale((float)view.PixelsPerSpace);
        canvas.DrawPicture(drawing);
        canvas.Restore();
        using var image = surface.Snapshot();
        using var pixels = image.PeekPixels() ?? throw new InvalidOperationException("A picture in memory shows its pixels.");
        // Frames are many and mostly empty: little effort packs them nearly as well.
        using var png = pixels.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.NoFilters, 1));
        (png ?? throw new InvalidOperationException("A frame can't be packed.")).SaveTo(to);
    }

    private static SKPicture Record(DrawnPage page, FontLibrary fonts, PictureGround ground)
    {
        using var recorder = new SKPictureRecorder();
        using var canvasFonts = CanvasFonts.Whole();
        using var painter = new CanvasPainter(fonts, canvasFonts, ground);
        painter.Paint(recorder.BeginRecording(new SKRect(0, 0, (float)page.Width, (float)page.Height)), page.Marks.AsSpan());
        return recorder.EndRecording();
    }
}
