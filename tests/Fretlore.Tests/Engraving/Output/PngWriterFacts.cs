using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Output;
using SkiaSharp;

namespace Fretlore.Tests.Engraving.Output;

public class PngWriterFacts
{
    private static readonly FontLibrary Library = new();

    [Theory]
    [InlineData(PictureGround.White, 255, 0)]
    [InlineData(PictureGround.Clear, 0, 0)]
    [InlineData(PictureGround.ClearUnderWhiteInk, 0, 255)]
    public void Ground_IsClearOrWhite_AndInkShowsOnIt(PictureGround ground, byte alpha, byte ink)
    {
        using var picture = Picture(SampleDrawing.Small().Pages[0], 10, ground);
        Assert.Equal(200, picture.Width);
        Assert.Equal(100, picture.Height);
        Assert.Equal(alpha, picture.GetPixel(1, 1).Alpha);
        Assert.Equal(new SKColor(ink, ink, ink), picture.GetPixel(45, 25));
    }

    [Fact]
    public void Fill_HidesTheLineUnderIt()
    {
        var page = new DrawnPage(10, 10, 1.75, [new Line(new Point(0, 5), new Point(10, 5), 0.4), new Fill(new Box(4, 4, 6, 6))]);
        using var picture = Picture(page, 10, PictureGround.White);
        Assert.Equal(SKColors.Black, picture.GetPixel(20, 50));
        Assert.Equal(SKColors.White, picture.GetPixel(50, 50));
        using var clear = Picture(page, 10, PictureGround.Clear);
        Assert.Equal(SKColors.Black, clear.GetPixel(20, 50));
        Assert.Equal(0, clear.GetPixel(50, 50).Alpha);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    [InlineData(double.NaN)]
    [InlineData(1e6)]
    public void SizeThatCannotBe_IsRefusedAndWritesNothing(double pixelsPerSpace)
    {
        using var to = new MemoryStream();
        Assert.False(PngWriter.Write(SampleDrawing.Small().Pages[0], Library, pixelsPerSpace, PictureGround.White, to));
        Assert.Equal(0, to.Length);
    }

    private static SKBitmap Picture(DrawnPage page, double scale, PictureGround ground)
    {
        using var to = new MemoryStream();
        Assert.True(PngWriter.Write(page, Library, scale, ground, to));
        return SKBitmap.Decode(to.ToArray());
    }
}
