using Fretlore.Tests.Outside;
using SkiaSharp;

namespace Fretlore.Tests.Cli;

/// <summary><c>fretlore pages</c>.</summary>
public sealed class PagesFacts : IDisposable
{
    private readonly Desktop desktop = new();
    private readonly string kestrel = Path.Combine(Repository.Root, "demo", "kestrel-over-slate.lore");

    [Fact]
    public void APdf_HasAllPagesInOneFile()
    {
        Assert.Equal(0, desktop.Run("pages", kestrel, "-o", "kestrel.pdf"));
        Assert.Equal(["kestrel.pdf"], desktop.Everything().Keys);
        Assert.StartsWith("%PDF-", desktop.Read("kestrel.pdf"), StringComparison.Ordinal);
        Assert.Matches(@"^kestrel\.pdf: \d pages\.\n", desktop.Out);
        Assert.Contains("licence", desktop.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Pictures_AreNumberedByTheirPages()
    {
        Assert.Equal(0, desktop.Run("pages", kestrel, "--paper", "letter", "-o", "k.svg"));
        Assert.Contains("k-1.svg", desktop.Everything().Keys);
        Assert.Contains("k-2.svg", desktop.Everything().Keys);
    }

    [Fact]
    public void DegreesAndSigns_AreOnThePagesWhenAskedFor()
    {
        desktop.Run("pages", kestrel, "-o", "plain.svg", "--page", "1");
        Assert.Equal(0, desktop.Run("pages", kestrel, "-o", "full.svg", "--page", "1", "--degrees", "--symbols", "signs"));
        Assert.Contains(">G<", desktop.Read("full.svg"), StringComparison.Ordinal);
        Assert.Contains(">–<", desktop.Read("full.svg"), StringComparison.Ordinal);
        Assert.DoesNotContain(">–<", desktop.Read("plain.svg"), StringComparison.Ordinal);
        // Every picked note of the page has its number below it.
        Assert.True(Count("full.svg", ">1<") > Count("plain.svg", ">1<") + 10);
        int Count(string file, string text) => desktop.Read(file).Split(text).Length - 1;
    }

    [Fact]
    public void AFilmFrame_IsAsWideAsAsked_WithAClearGround()
    {
        Assert.Equal(0, desktop.Run("pages", kestrel, "--paper", "slide", "--width", "1920", "--ground", "dark", "--page", "2", "-o", "frame.png"));
        Assert.Equal(["frame.png"], desktop.Everything().Keys);
        using var picture = SKBitmap.Decode(desktop.PathOf("frame.png"));
        Assert.Equal((1920, 1080), (picture.Width, picture.Height));
        Assert.Equal(0, picture.GetPixel(2, 2).Alpha);
        Assert.DoesNotContain(picture.Pixels, pixel => pixel.Alpha == 255 && pixel.Red < 255);
    }

    [Fact]
    public void ThePixelsOfAPicture_GoByThePaper()
    {
        Assert.Equal(0, desktop.Run("pages", kestrel, "--page", "1", "--dpi", "50", "-o", "k.png"));
        using var picture = SKBitmap.Decode(desktop.PathOf("k.png"));
        // A4: 210 by 297 mm, 25.4 mm to the inch.
        Assert.Equal((414, 585), (picture.Width, picture.Height));
    }

    [Theory]
    [InlineData("-o", "pages.doc")]
    [InlineData("-o", "nowhere/k.pdf")]
    [InlineData("--page", "90")]
    [InlineData("--page", "0")]
    [InlineData("--dpi", "0")]
    [InlineData("--dpi", "100000")]
    [InlineData("--width", "-4")]
    [InlineData("--parts", "led")]
    [InlineData("--ground", "pink")]
    public void WhatCannotBeMade_IsWrongUse_AndLeavesNothing(string option, string value)
    {
        string[] output = option == "-o" ? [] : ["-o", "k.png"];
        Assert.Equal(2, desktop.Run(["pages", kestrel, option, value, .. output]));
        Assert.Contains("fretlore: ", desktop.Error, StringComparison.Ordinal);
        Assert.Empty(desktop.Everything());
    }

    public void Dispose() => desktop.Dispose();
}
