using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Fretlore.Lesson.Kit;

/// <summary>The list of a kit's files, <c>kit.json</c>: each but itself with its hash, its size and what it is for.</summary>
/// <param name="Fretlore">The version that made the kit; also the sign that a folder is a kit.</param>
/// <param name="Title">The song's title.</param>
/// <param name="Artist">Who plays it, or null.</param>
/// <param name="Paper">The pages' paper.</param>
/// <param name="Parts">The parts on the pages, by their short names.</param>
/// <param name="Files">The files.</param>
public sealed record KitList(
    string Fretlore, string Title, string? Artist, string Paper, IReadOnlyList<string> Parts, IReadOnlyList<KitListEntry> Files)
{
    public const string FileName = "kit.json";

    public const string Purpose = "The list of the kit's files";

    public KitFile ToFile() =>
        new(FileName, ImmutableArray.Create(JsonSerializer.SerializeToUtf8Bytes(this, KitListJson.Readable.KitList)).Add((byte)'\n'), Purpose);

    /// <summary>Reads a list; null when the text is none of ours.</summary>
    public static KitList? Read(ReadOnlySpan<byte> json)
    {
        try
        {
            var list = JsonSerializer.Deserialize(json, KitListJson.Readable.KitList);
            var isOurs = list is { Fretlore: not null, Files: not null } && list.Files.All(f => f is { Path: not null, Sha256: not null });
            return isOurs ? list : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

/// <summary>One line of a kit's list.</summary>
/// <param name="Path">Where in the kit, with <c>/</c> between folders.</param>
/// <param name="For">What it is for.</param>
/// <param name="Bytes">Its size.</param>
/// <param name="Sha256">Its SHA-256 in lower-case hexadecimal.</param>
public sealed record KitListEntry(string Path, string For, long Bytes, string Sha256);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(KitList))]
internal sealed partial class KitListJson : JsonSerializerContext
{
    public static KitListJson Readable { get; } = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });
}
