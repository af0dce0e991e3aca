using System.Runtime.InteropServices;
using HarfBuzzSharp;

namespace Fretlore.Engraving.Fonts.Subset;

/// <summary>A font file with only the glyphs that are used, under a name of our own.</summary>
/// <param name="Bytes">The file: TrueType or OpenType as the original.</param>
/// <param name="Glyphs">The number each used glyph of the original has in it.</param>
internal sealed record FontSubset(byte[] Bytes, IReadOnlyDictionary<ushort, ushort> Glyphs);

/// <summary>Cuts fonts down to what is used of them.</summary>
internal static class FontSubsetter
{
    private const uint NoGlyph = uint.MaxValue;

    /// <summary>Makes a subset; null when the font cannot be cut, as a font of the system may be.</summary>
    /// <param name="source">The whole font.</param>
    /// <param name="glyphs">The glyphs to keep, by their numbers in the whole font.</param>
    /// <param name="characters">Which character is to find which of those glyphs.</param>
    /// <param name="postScript">The PostScript name of the subset.</param>
    /// <param name="shapedByReader">Whether whoever draws with it shapes text anew and so needs the kerning.</param>
    public static FontSubset? Cut(
        FontSource source, IReadOnlyCollection<ushort> glyphs, IReadOnlyDictionary<int, ushort> characters, string postScript, bool shapedByReader)
    {
        var input = SubsetLibrary.InputCreate();
        Describe(input, glyphs, shapedByReader);
        var plan = SubsetLibrary.PlanCreate(source.Face.Handle, input);
        SubsetLibrary.InputDestroy(input);
        if (plan == 0) return null;
        var face = SubsetLibrary.PlanExecute(plan);
        var numbers = new SortedDictionary<ushort, ushort>();
        var map = SubsetLibrary.PlanOldToNew(plan);
        foreach (var glyph in glyphs)
            if (SubsetLibrary.MapGet(map, glyph) is var number and not NoGlyph) numbers[glyph] = (ushort)number;
        SubsetLibrary.PlanDestroy(plan);
        if (face == 0) return null;

        var cmap = new SortedDictionary<int, ushort>();
        foreach (var (character, glyph) in characters)
            if (numbers.TryGetValue(glyph, out var number)) cmap[character] = number;
        var tables = TablesOf(face);
        tables["name"] = SubsetNames.Table(source.Family, source.Style, postScript, source.Copyright);
        tables["cmap"] = CharacterMap.Table(cmap);
        if (!shapedByReader && tables.Remove("CFF ")) MakeTrueType(tables, source, numbers);
        var bytes = Build(tables);
        SubsetLibrary.FaceDestroy(face);
        GC.KeepAlive(source);
        return new FontSubset(bytes, numbers);
    }

    private static void Describe(nint input, IReadOnlyCollection<ushort> glyphs, bool shapedByReader)
    {
        SubsetLibrary.InputSetFlags(input, SubsetLibrary.Flags.NoHinting | SubsetLibrary.Flags.NotdefOutline);
        var kept = SubsetLibrary.InputGlyphSet(input);
        SubsetLibrary.SetAdd(kept, 0);
        foreach (var glyph in glyphs) SubsetLibrary.SetAdd(kept, glyph);
        SubsetLibrary.SetClear(SubsetLibrary.InputSet(input, SubsetLibrary.Sets.NameId));
        var features = SubsetLibrary.InputSet(input, SubsetLibrary.Sets.LayoutFeatureTag);
        SubsetLibrary.SetClear(features);
        foreach (var feature in (ReadOnlySpan<string>)["kern", "mark", "mkmk"]) SubsetLibrary.SetAdd(features, Tag.Parse(feature));
        var dropped = SubsetLibrary.InputSet(input, SubsetLibrary.Sets.DropTableTag);
        ReadOnlySpan<string> tables = shapedByReader ? ["GSUB", "STAT", "DSIG"] : ["GSUB", "STAT", "DSIG", "GPOS", "GDEF", "BASE"];
        foreach (var table in tables) SubsetLibrary.SetAdd(dropped, Tag.Parse(table));
    }

    private static void MakeTrueType(SortedDictionary<string, byte[]> tables, FontSource source, SortedDictionary<ushort, ushort> numbers)
    {
        var byNumber = numbers.ToDictionary(pair => pair.Value, pair => pair.Key);
        var outlines = new List<QuadraticOutline>();
        for (ushort number = 0; number < byNumber.Keys.Max() + 1; number++)
        {
            using var path = source.OutlineOf(byNumber.GetValueOrDefault(number));
            outlines.Add(QuadraticOutline.Of(path));
        }

        var made = TrueTypeTables.Of(outlines);
        tables["glyf"] = made.Glyf;
        tables["loca"] = made.Loca;
        tables["maxp"] = made.Maxp;
        tables["hmtx"] = TrueTypeTables.WithBearings(tables["hmtx"], TrueTypeTables.MetricsCount(tables["hhea"]), outlines);
        tables["head"] = TrueTypeTables.WithLongOffsets(tables["head"]);
    }

    private static SortedDictionary<string, byte[]> TablesOf(nint face)
    {
        uint count = 64;
        var tags = new uint[count];
        SubsetLibrary.FaceTableTags(face, 0, ref count, tags);
        var tables = new SortedDictionary<string, byte[]>(StringComparer.Ordinal);
        foreach (var tag in tags.AsSpan(0, (int)count))
        {
            var table = SubsetLibrary.FaceReferenceTable(face, tag);
            tables[((Tag)tag).ToString()] = Bytes(table);
        }

        return tables;
    }

    private static byte[] Build(SortedDictionary<string, byte[]> tables)
    {
        var builder = SubsetLibrary.BuilderCreate();
        foreach (var (tag, bytes) in tables)
        {
            var table = SubsetLibrary.BlobCreate(bytes, (uint)bytes.Length, 0, 0, 0);
            _ = SubsetLibrary.BuilderAddTable(builder, Tag.Parse(tag), table);
            SubsetLibrary.BlobDestroy(table);
        }

        var file = Bytes(SubsetLibrary.FaceReferenceBlob(builder));
        SubsetLibrary.FaceDestroy(builder);
        return file;
    }

    /// <summary>Copies a blob's bytes and lets it go.</summary>
    private static byte[] Bytes(nint blob)
    {
        var data = SubsetLibrary.BlobData(blob, out var length);
        var bytes = new byte[length];
        Marshal.Copy(data, bytes, 0, bytes.Length);
        SubsetLibrary.BlobDestroy(blob);
        return bytes;
    }
}
