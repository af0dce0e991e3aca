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

    /// <summary>What stands in every list, for whoever is about to publish.</summary>
    public const string LicenceReminder = "If the song is someone else's, publishing pages, sound or film of it may need a licence from its publisher.";

    /// <summary>Who wrote the song, or null.</summary>
    public string? Credits { get; init; }

    /// <summary>Who owns it, or null.</summary>
    public string? Rights { get; init; }

    /// <summary>The permission or licence it is taught and handed out under, or null.</summary>
    public string? Permission { get; init; }

    public string? Reminder { get; init; }

    /// <summary>What each part plays, bar by bar, so that two kits can be compared; null in older lists.</summary>
    public IReadOnlyList<KitPart>? Music { get; init; }

    /// <summary>The song's sections; null in older lists.</summary>
    public IReadOnlyList<KitStretch>? Sections { get; init; }

    public const string Purpose = "The list of the kit's files";

    public KitFile ToFile() =>
        new(FileName, ImmutableArray.Create(JsonSerializer.SerializeToUtf8Bytes(this, KitListJson.Readable.KitList)).Add((byte)'\n'), Purpose) { Audience = Audience.Teacher };

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
public sealed record KitListEntry(string Path, string For, long Bytes, string Sha256)
{
    /// <summary>Whom it is for: <c>everyone</c>, <c>supporters</c> or <c>teacher</c>; null in older lists.</summary>
    public string? Audience { get; init; }
}

/// <summary>What a part plays.</summary>
/// <param name="Part">Its short name.</param>
/// <param name="Title">Its name on the pages.</param>
/// <param name="Numbers">The printed number of each written bar.</param>
/// <param name="Bars">A fingerprint of each: equal bars have equal ones.</param>
public sealed record KitPart(string Part, string Title, IReadOnlyList<int> Numbers, IReadOnlyList<string> Bars);

/// <summary>A section of the song.</summary>
/// <param name="Name">As printed.</param>
/// <param name="FirstBar">Its first written bar, counted from 0.</param>
/// <param name="BarCount">Written bars.</param>
public sealed record KitStretch(string Name, int FirstBar, int BarCount);

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
