using System.IO.Compression;
using System.Text.Json;
using System.Text.Json.Serialization;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout;
using Fretlore.Engraving.Output;
using Fretlore.Practice.Data;
using Fretlore.Score;

namespace Fretlore.Practice.Making;

/// <summary>One set of pages, packed to stand inside the page.</summary>
/// <param name="View">What it shows.</param>
/// <param name="Packed">JSON with style, glyphs and pages, compressed (gzip) and in Base64.</param>
internal sealed record PackedView(ViewData View, string Packed);

/// <summary>Engraves the pages that can be shown: all parts together and each alone, for a screen and for a phone held upright.</summary>
internal sealed class ViewMaker(PracticeSource source)
{
    private readonly PageEngraver engraver = new(source.Fonts.Music, source.Fonts.Texts);
    private readonly Song song = source.Played.Song;

    /// <returns>The pages; those that can't be engraved at a width are left out.</returns>
    public IEnumerable<PackedView> All()
    {
        foreach (var narrow in new[] { false, true })
        {
            if (song.Parts.Count > 1 && Make(null, narrow) is { } all) yield return all;
            for (var part = 0; part < song.Parts.Count; part++)
            {
                if (Make(part, narrow) is { } one) yield return one;
            }
        }
    }

    private PackedView? Make(int? part, bool narrow)
    {
        var preset = narrow ? PaperPreset.Find("phone")! : PaperPreset.A4;
        var options = PageOptions.On(preset, song, source.Show, part is { } one ? [one] : []) with { Hands = source.HandSigns };
        if (engraver.Engrave(song, source.Reading, options, source.Hands) is not EngravingResult.Pages { Document: var document }) return null;
        var id = $"pages-{(part is { } number ? song.Parts[number].Name : "all")}-{(narrow ? "narrow" : "wide")}";
        return new PackedView(new ViewData(id, part, narrow), Pack(document));
    }

    private string Pack(Document document)
    {
        var svg = InlineSvg.Of(document, source.Fonts);
        var json = JsonSerializer.SerializeToUtf8Bytes(new PagesData(svg.Style, svg.Glyphs, [.. svg.Pages]), PagesJson.Default.PagesData);
        using var packed = new MemoryStream();
        using (var zip = new GZipStream(packed, CompressionLevel.SmallestSize)) zip.Write(json);
        return Convert.ToBase64String(packed.ToArray());
    }
}

/// <summary>Pages as the page's code unpacks them.</summary>
internal sealed record PagesData(string Style, string Glyphs, IReadOnlyList<string> Pages);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(PagesData))]
internal sealed partial class PagesJson : JsonSerializerContext;
