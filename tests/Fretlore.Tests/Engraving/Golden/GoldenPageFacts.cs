using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Output;
using Fretlore.Tests.Outside;
using SkiaSharp;

namespace Fretlore.Tests.Engraving.Golden;

/// <summary>
/// Compares pages with the pictures beside this file, each of which was looked at. A page that changed leaves its new picture and a picture of the
/// difference (old red, new blue) in the folder <c>golden</c> beside the test program. With FRETLORE_GOLDEN=write the pictures are written anew: look at
/// every one before committing it.
/// </summary>
public class GoldenPageFacts
{
    private const double PixelsPerSpace = 4;

    // Smoothing differs a little between machines; a moved or missing sign is far more than this.
    private const int LevelsAllowed = 64;
    private const double ShareAllowed = 0.0004;

    private static readonly FontLibrary Fonts = new();

    public static TheoryData<string> Names => [.. GoldenPages.All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Page_IsAsItWasWhenSomeoneLookedAtIt(string name)
    {
        using var stream = new MemoryStream();
        Assert.True(PngWriter.Write(GoldenPages.All[name](), Fonts, PixelsPerSpace, PictureGround.White, stream));
        var kept = Path.Combine(Repository.Root, "tests", "Fretlore.Tests", "Engraving", "Golden", name + ".png");
        using var now = SKBitmap.Decode(stream.ToArray());
        if (Environment.GetEnvironmentVariable("FRETLORE_GOLDEN") == "write") Write(Grey(now), kept);
        Assert.True(File.Exists(kept), $"There is no picture of {name} yet.");
        using var before = SKBitmap.Decode(kept);
        var changed = before.Width != now.Width || before.Height != now.Height ? 1 : ShareChanged(before, now);
        if (changed <= ShareAllowed) return;
        var folder = Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, "golden")).FullName;
        Write(Grey(now), Path.Combine(folder, name + ".png"));
        Write(Difference(before, now), Path.Combine(folder, name + "-difference.png"));
        Assert.Fail($"{changed:P2} of {name} changed: see {folder}. When it is as it should be, write it anew with FRETLORE_GOLDEN=write.");
    }

    [Fact]
    public void Pictures_AreOnlyOfPagesThatAreCompared()
    {
        var files = Directory.GetFiles(Path.Combine(Repository.Root, "tests", "Fretlore.Tests", "Engraving", "Golden"), "*.png");
        Assert.Equal(GoldenPages.All.Keys.Order(), files.Select(f => Path.GetFileNameWithoutExtension(f)).Order());
        Assert.True(files.Sum(f => new FileInfo(f).Length) < 1_500_000);
    }

    private static double ShareChanged(SKBitmap before, SKBitmap now)
    {
        var changed = 0;
        for (var y = 0; y < now.Height; y++)
        {
            for (var x = 0; x < now.Width; x++)
            {
                if (Math.Abs(before.GetPixel(x, y).Green - now.GetPixel(x, y).Green) > LevelsAllowed) changed++;
            }
        }
        return changed / (double)(now.Width * now.Height);
    }

    private static SKBitmap Grey(SKBitmap picture)
    {
        var grey = new SKBitmap(picture.Width, picture.Height, SKColorType.Gray8, SKAlphaType.Opaque);
        for (var y = 0; y < picture.Height; y++)
        {
            for (var x = 0; x < picture.Width; x++) grey.SetPixel(x, y, picture.GetPixel(x, y));
        }
        return grey;
    }

    private static SKBitmap Difference(SKBitmap before, SKBitmap now)
    {
        var picture = new SKBitmap(Math.Max(before.Width, now.Width), Math.Max(before.Height, now.Height));
        for (var y = 0; y < picture.Height; y++)
        {
            for (var x = 0; x < picture.Width; x++)
            {
                byte old = LevelAt(before, x, y), fresh = LevelAt(now, x, y);
                picture.SetPixel(x, y, new SKColor(fresh, Math.Max(old, fresh), old));
            }
        }
        return picture;
    }

    private static byte LevelAt(SKBitmap picture, int x, int y) => x < picture.Width && y < picture.Height ? picture.GetPixel(x, y).Green : (byte)255;

    private static void Write(SKBitmap picture, string path)
    {
        using (picture)
        using (var file = File.Create(path))
        {
            picture.Encode(file, SKEncodedImageFormat.Png, 100);
        }
    }
}
