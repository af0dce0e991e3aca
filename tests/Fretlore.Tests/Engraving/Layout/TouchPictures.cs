using System.Globalization;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Output;
using SkiaSharp;

namespace Fretlore.Tests.Engraving.Layout;

/// <summary>Shows touches as pictures: what stands around each, with the sign boxed red. For looking, never compared.</summary>
internal static class TouchPictures
{
    private const int PixelsPerSpace = 16;
    private const int Around = 9;

    /// <param name="page">The page.</param>
    /// <param name="touches">Touches on it.</param>
    /// <param name="fonts">Its fonts.</param>
    /// <param name="folder">Where the pictures go.</param>
    /// <param name="name">How their names begin.</param>
    public static void Write(DrawnPage page, IReadOnlyList<Touch> touches, FontLibrary fonts, string folder, string name)
    {
        using var stream = new MemoryStream();
        if (touches.Count == 0 || !PngWriter.Write(page, fonts, PixelsPerSpace, PictureGround.White, stream)) return;
        Directory.CreateDirectory(folder);
        using var picture = SKBitmap.Decode(stream.ToArray());
        using var red = new SKPaint { Color = SKColors.Red, Style = SKPaintStyle.Stroke, StrokeWidth = 2 };
        for (var i = 0; i < touches.Count; i++)
        {
            var at = touches[i].At;
            int left = Math.Max(0, (int)((at.Left - Around * 1.6) * PixelsPerSpace)), top = Math.Max(0, (int)((at.Top - Around) * PixelsPerSpace));
            using var crop = new SKBitmap((int)(Around * 3.4 * PixelsPerSpace), Around * 2 * PixelsPerSpace);
            using (var canvas = new SKCanvas(crop))
            {
                canvas.Clear(SKColors.White);
                canvas.DrawBitmap(picture, -left, -top, SKSamplingOptions.Default);
                canvas.DrawRect((float)(at.Left * PixelsPerSpace - left), (float)(at.Top * PixelsPerSpace - top), (float)((at.Right - at.Left) * PixelsPerSpace), (float)((at.Bottom - at.Top) * PixelsPerSpace), red);
            }
            using var file = File.Create(Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{name}-{i}.png")));
            crop.Encode(file, SKEncodedImageFormat.Png, 100);
        }
    }
}
