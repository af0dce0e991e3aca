using System.Collections.Frozen;
using System.Text.Json;
using Fretlore.Engraving.Drawing;

namespace Fretlore.Engraving.Fonts;

/// <summary>Reads the metadata file that a SMuFL font comes with.</summary>
/// <remarks>The standard's y grows upwards and ours downwards, so every y changes its sign here and nowhere else.</remarks>
internal static class MusicFontMetadata
{
    private static readonly FrozenDictionary<string, Point> NoAnchors = FrozenDictionary<string, Point>.Empty;

    public static MusicFont Read(ReadOnlyMemory<byte> json)
    {
        using var document = JsonDocument.Parse(json);
        var root = document.RootElement;
        var codePoints = SmuflNames.CodePoints();
        var advances = Listed(root.GetProperty("glyphAdvanceWidths"), codePoints, value => value.GetDouble());
        var boxes = Listed(root.GetProperty("glyphBBoxes"), codePoints, ReadBox);
        var anchors = Listed(root.GetProperty("glyphsWithAnchors"), codePoints, ReadAnchors);
        var glyphs = codePoints.Values.Distinct().ToFrozenDictionary(
            code => code,
            code => new GlyphMeasures(advances[code], boxes[code], anchors.GetValueOrDefault(code, NoAnchors)));
        var defaults = root.GetProperty("engravingDefaults").EnumerateObject()
            .Where(setting => setting.Value.ValueKind == JsonValueKind.Number)
            .ToFrozenDictionary(setting => setting.Name, setting => setting.Value.GetDouble());
        return new MusicFont(glyphs, defaults);
    }

    private static Dictionary<int, T> Listed<T>(JsonElement table, FrozenDictionary<string, int> codePoints, Func<JsonElement, T> read)
    {
        var found = new Dictionary<int, T>(codePoints.Count);
        foreach (var entry in table.EnumerateObject())
            if (codePoints.TryGetValue(entry.Name, out var code)) found[code] = read(entry.Value);
        return found;
    }

    private static Box ReadBox(JsonElement box)
    {
        var northEast = ReadPoint(box.GetProperty("bBoxNE"));
        var southWest = ReadPoint(box.GetProperty("bBoxSW"));
        return new Box(southWest.X, northEast.Y, northEast.X, southWest.Y);
    }

    private static FrozenDictionary<string, Point> ReadAnchors(JsonElement anchors) =>
        anchors.EnumerateObject().ToFrozenDictionary(anchor => anchor.Name, anchor => ReadPoint(anchor.Value));

    private static Point ReadPoint(JsonElement pair) => new(pair[0].GetDouble(), -pair[1].GetDouble());
}
