using System.Buffers.Binary;

namespace Fretlore.Engraving.Fonts.Subset;

/// <summary>The tables that make a font's outlines TrueType, which a PDF can carry under its name; others would become nameless drawings there.</summary>
/// <param name="Glyf">The outlines.</param>
/// <param name="Loca">Where each begins.</param>
/// <param name="Maxp">The greatest counts.</param>
/// <remarks>Source: OpenType 1.9, "glyf", "loca" (long offsets) and "maxp" (version 1.0).</remarks>
internal sealed record TrueTypeTables(byte[] Glyf, byte[] Loca, byte[] Maxp)
{
    /// <param name="outlines">Of each glyph, in glyph order.</param>
    public static TrueTypeTables Of(IReadOnlyList<QuadraticOutline> outlines)
    {
        var glyf = new List<byte>();
        var loca = new List<byte>();
        foreach (var outline in outlines)
        {
            Put32(loca, glyf.Count);
            Put(glyf, outline);
            while (glyf.Count % 4 != 0) glyf.Add(0);
        }

        Put32(loca, glyf.Count);
        return new TrueTypeTables([.. glyf], [.. loca], Greatest(outlines));
    }

    /// <summary>Marks the offsets as long ones in a copy of the head table.</summary>
    public static byte[] WithLongOffsets(byte[] head)
    {
        var copy = (byte[])head.Clone();
        const int indexToLocFormat = 50;
        BinaryPrimitives.WriteInt16BigEndian(copy.AsSpan(indexToLocFormat), 1);
        return copy;
    }

    /// <summary>A copy of the hmtx table whose side bearings are where these outlines begin.</summary>
    /// <remarks>A reader shifts a TrueType outline by the difference, which the original's rounded bearings would not make nought.</remarks>
    /// <param name="hmtx">The original, of <paramref name="metrics"/> pairs of advance and bearing, then bearings alone.</param>
    /// <param name="metrics">How many pairs.</param>
    /// <param name="outlines">Of each glyph, in glyph order.</param>
    public static byte[] WithBearings(byte[] hmtx, int metrics, IReadOnlyList<QuadraticOutline> outlines)
    {
        var copy = (byte[])hmtx.Clone();
        for (var glyph = 0; glyph < outlines.Count; glyph++)
        {
            var at = glyph < metrics ? 4 * glyph + 2 : 4 * metrics + 2 * (glyph - metrics);
            BinaryPrimitives.WriteInt16BigEndian(copy.AsSpan(at), (short)outlines[glyph].Left);
        }

        return copy;
    }

    /// <summary>How many pairs the hmtx table begins with, as the hhea table says.</summary>
    public static int MetricsCount(byte[] hhea)
    {
        const int numberOfHMetrics = 34;
        return BinaryPrimitives.ReadUInt16BigEndian(hhea.AsSpan(numberOfHMetrics));
    }

    private static void Put(List<byte> glyf, QuadraticOutline outline)
    {
        if (outline.Contours.Count == 0) return;
        var nodes = outline.Contours.SelectMany(contour => contour).ToArray();
        Put16(glyf, outline.Contours.Count);
        Put16(glyf, outline.Left);
        Put16(glyf, nodes.Min(node => node.Y));
        Put16(glyf, nodes.Max(node => node.X));
        Put16(glyf, nodes.Max(node => node.Y));
        var last = -1;
        foreach (var contour in outline.Contours) Put16(glyf, last += contour.Count);
        Put16(glyf, 0);
        foreach (var node in nodes) glyf.Add((byte)(node.OnCurve ? 1 : 0));
        PutSteps(glyf, nodes.Select(node => node.X));
        PutSteps(glyf, nodes.Select(node => node.Y));
    }

    private static void PutSteps(List<byte> glyf, IEnumerable<int> values)
    {
        var before = 0;
        foreach (var value in values)
        {
            Put16(glyf, value - before);
            before = value;
        }
    }

    private static byte[] Greatest(IReadOnlyList<QuadraticOutline> outlines)
    {
        var maxp = new List<byte>();
        Put32(maxp, 0x00010000);
        Put16(maxp, outlines.Count);
        Put16(maxp, outlines.Max(outline => outline.Contours.Sum(contour => contour.Count)));
        Put16(maxp, outlines.Max(outline => outline.Contours.Count));
        // No composites and no instructions: two zones as the standard recommends, and nothing else.
        foreach (var value in (ReadOnlySpan<int>)[0, 0, 2, 0, 0, 0, 0, 0, 0, 0, 0]) Put16(maxp, value);
        return [.. maxp];
    }

    private static void Put16(List<byte> to, int value)
    {
        Span<byte> bytes = stackalloc byte[2];
        BinaryPrimitives.WriteInt16BigEndian(bytes, (short)value);
        to.AddRange(bytes);
    }

    private static void Put32(List<byte> to, int value)
    {
        Span<byte> bytes = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(bytes, value);
        to.AddRange(bytes);
    }
}
