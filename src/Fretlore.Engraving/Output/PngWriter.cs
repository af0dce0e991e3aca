using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using SkiaSharp;

namespace Fretlore.Engraving.Output;

/// <summary>Writes one page as a PNG picture.</summary>
public static class PngWriter
{
    /// <summary>Pixels along either side beyond which a picture is refused.</summary>
    public const int MostPixels = 16_384;

    /// <summary>Writes to a stream, which stays open.</summary>
    /// <param name="page">The page.</param>
    /// <param name="fonts">Its fonts.</param>
    /// <param name="pixelsPerSpace">How many pixels a staff space takes; more than 0.</param>
    /// <param name="ground">What is behind the ink.</param>
    /// <param name="to">Where the file goes.</param>
    /// <returns>False, with nothing written, when the picture would have no pixel or more than <see cref="MostPixels"/> along a side.</returns>
    public static bool Write(DrawnPage page, FontLibrary fonts, double pixelsPerSpace, PictureGround ground, Stream to)
    {
        var (width, height) = (PixelsOf(page.Width), PixelsOf(page.Height));
        if (!(width >= 1 && height >= 1 && width <= MostPixels && height <= MostPixels)) return false;
        using var surface = SKSurface.Create(new SKImageInfo((int)width, (int)height, SKColorType.Rgba8888, SKAlphaType.Premul));
        surface.Canvas.Clear(ground == PictureGround.White ? SKColors.White : SKColors.Transparent);
        surface.Canvas.Scale((float)pixelsPerSpace);
        using var canvasFonts = CanvasFonts.Whole();
        using (var painter = new CanvasPainter(fonts, canvasFonts, ground)) painter.Paint(surface.Canvas, page.Marks.AsSpan());
        using var image = surface.Snapshot();
        using var png = image.Encode(SKEncodedImageFormat.Png, 100);
        png.SaveTo(to);
        return true;

        // Not one more for a hair of a pixel.
        double PixelsOf(double spaces) => Math.Ceiling(spaces * pixelsPerSpace - 1e-6);
    }
}
