using System.Runtime.InteropServices;
using HarfBuzzSharp;
using SkiaSharp;
using HarfBuzzFont = HarfBuzzSharp.Font;
using HarfBuzzFace = HarfBuzzSharp.Face;

namespace Fretlore.Engraving.Fonts;

/// <summary>One font file, opened for shaping, drawing and subsetting.</summary>
/// <remarks>Nothing of it changes once it is open, so threads may share it.</remarks>
internal sealed class FontSource
{
    /// <param name="family">The name we hand its subsets out under, such as "Fretlore Serif".</param>
    /// <param name="style">The style within that family, such as "Bold".</param>
    /// <param name="bytes">The font file.</param>
    /// <param name="index">Which font of a collection file.</param>
    public FontSource(string family, string style, byte[] bytes, int index = 0)
        : this(family, style, bytes, index, Open(bytes, index) ?? throw new InvalidOperationException($"{family} {style} is not a font."))
    {
    }

    private FontSource(string family, string style, byte[] bytes, int index, SKTypeface typeface)
    {
        Family = family;
        Style = style;
        Bytes = GC.AllocateUninitializedArray<byte>(bytes.Length, pinned: true);
        bytes.CopyTo(Bytes, 0);
        Index = index;
        Typeface = typeface;
        Face = OpenFace(Bytes, index);
        Font = new HarfBuzzFont(Face);
        Font.SetFunctionsOpenType();
        UnitsPerEm = Face.UnitsPerEm;
    }

    public string Family { get; }

    public string Style { get; }

    /// <summary>The copyright line to keep with its subsets.</summary>
    public string Copyright { get; init; } = "";

    public byte[] Bytes { get; }

    public int Index { get; }

    public SKTypeface Typeface { get; }

    public HarfBuzzFace Face { get; }

    public HarfBuzzFont Font { get; }

    public int UnitsPerEm { get; }

    /// <summary>Whether the file is one of ours; a font of the system is drawn with but not handed out in an SVG.</summary>
    public bool IsOurs => Family.StartsWith("Fretlore", StringComparison.Ordinal);

    /// <summary>Opens a font that is not ours under its own name; null when the bytes are no font.</summary>
    public static FontSource? TryOpen(byte[] bytes, int index = 0) =>
        Open(bytes, index) is { } typeface
            ? new FontSource(typeface.FamilyName, $"{typeface.FontWeight}-{typeface.FontSlant}", bytes, index, typeface)
            : null;

    /// <summary>The glyph of a character; 0 when the font has none.</summary>
    public ushort GlyphOf(int codePoint) => Font.TryGetNominalGlyph((uint)codePoint, out var glyph) ? (ushort)glyph : (ushort)0;

    /// <summary>A glyph's outline in font units, y downwards; empty for a glyph without ink.</summary>
    public SKPath OutlineOf(ushort glyph)
    {
        using var font = AtSize(UnitsPerEm);
        return font.GetGlyphPath(glyph) ?? new SKPath();
    }

    /// <summary>A glyph's advance in font units.</summary>
    public int AdvanceOf(ushort glyph) => Font.GetHorizontalGlyphAdvance(glyph);

    /// <summary>The face's line measures as a share of its em.</summary>
    public FaceMeasures Measure()
    {
        using var font = AtSize(UnitsPerEm);
        var metrics = font.Metrics;
        double Share(float units) => units / (double)UnitsPerEm;
        using var one = OutlineOf(GlyphOf('1'));
        return new FaceMeasures(Share(metrics.CapHeight), Share(-one.TightBounds.Top), Share(-metrics.Ascent), Share(metrics.Descent));
    }

    /// <summary>The font at a size, unhinted: the same shapes at any scale.</summary>
    public SKFont AtSize(float size) =>
        new(Typeface, size) { Hinting = SKFontHinting.None, Subpixel = true, LinearMetrics = true, Edging = SKFontEdging.Antialias };

    private static SKTypeface? Open(byte[] bytes, int index)
    {
        using var data = SKData.CreateCopy(bytes);
        return SKTypeface.FromData(data, index);
    }

    /// <summary>Opens a face over memory that is pinned for as long as <see cref="Bytes"/> lives.</summary>
    /// <remarks>Not by <c>Blob.FromStream</c>: that leaves the native side with the address of an array the collector may move.</remarks>
    private static HarfBuzzFace OpenFace(byte[] pinned, int index)
    {
        using var blob = new Blob(Marshal.UnsafeAddrOfPinnedArrayElement(pinned, 0), pinned.Length, MemoryMode.ReadOnly);
        blob.MakeImmutable();
        var face = new HarfBuzzFace(blob, index);
        face.MakeImmutable();
        return face;
    }
}

/// <summary>A face's heights as a share of its em, all positive.</summary>
internal readonly record struct FaceMeasures(double CapHeight, double DigitHeight, double Ascent, double Descent);
