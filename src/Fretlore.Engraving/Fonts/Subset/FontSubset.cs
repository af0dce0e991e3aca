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
        var bytes = Rebuild(face, new Dictionary<uint, byte[]>
        {
            [Tag.Parse("name")] = SubsetNames.Table(source.Family, source.Style, postScript, source.Copyright),
            [Tag.Parse("cmap")] = CharacterMap.Table(cmap),
        });
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

    private static byte[] Rebuild(nint face, Dictionary<uint, byte[]> replaced)
    {
        var builder = SubsetLibrary.BuilderCreate();
        foreach (var tag in TableTags(face))
        {
            if (replaced.ContainsKey(tag)) continue;
            var table = SubsetLibrary.FaceReferenceTable(face, tag);
            _ = SubsetLibrary.BuilderAddTable(builder, tag, table);
            SubsetLibrary.BlobDestroy(table);
        }

        foreach (var (tag, bytes) in replaced)
        {
            var table = SubsetLibrary.BlobCreate(bytes, (uint)bytes.Length, 0, 0, 0);
            _ = SubsetLibrary.BuilderAddTable(builder, tag, table);
            SubsetLibrary.BlobDestroy(table);
        }

        var blob = SubsetLibrary.FaceReferenceBlob(builder);
        var data = SubsetLibrary.BlobData(blob, out var length);
        var file = new byte[length];
        Marshal.Copy(data, file, 0, file.Length);
        SubsetLibrary.BlobDestroy(blob);
        SubsetLibrary.FaceDestroy(builder);
        return file;
    }

    private static uint[] TableTags(nint face)
    {
        uint count = 64;
        var tags = new uint[count];
        SubsetLibrary.FaceTableTags(face, 0, ref count, tags);
        return tags[..(int)count];
    }
}
