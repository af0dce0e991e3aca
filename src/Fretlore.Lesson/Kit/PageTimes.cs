using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Fretlore.Performance;

namespace Fretlore.Lesson.Kit;

/// <summary>When the bars and notes of the pages sound, by the ids of their groups in the SVG pages: all that a cursor needs that follows the music.</summary>
/// <param name="Seconds">The length of the song.</param>
/// <param name="Bars">In written order; bars of rest drawn as one stand in the group of the first.</param>
/// <param name="Notes">In order of time, each as often as it is played.</param>
internal sealed record PageTimes(double Seconds, IReadOnlyList<BarTimes> Bars, IReadOnlyList<NoteTimes> Notes)
{
    /// <param name="played">The song as it sounds at full speed.</param>
    public static PageTimes Of(PerformedSong played) => new(
        Rounded(played.Seconds),
        [.. played.Bars.GroupBy(bar => bar.Bar).OrderBy(bar => bar.Key).Select(bar => new BarTimes(Id("bar", bar.Key + 1), [.. bar.Select(time => Rounded(time.StartSeconds))]))],
        [.. from part in played.Parts
            from note in part.Notes
            orderby note.OnsetSeconds, note.Note.Index
            select new NoteTimes(
                Id("note", note.Note.Index), Rounded(note.OnsetSeconds), Rounded(note.ReleaseSeconds),
                note.HeldNotes.Count == 0 ? null : [.. note.HeldNotes.Select(held => Id("note", held.Index))])]);

    public byte[] ToJson() => JsonSerializer.SerializeToUtf8Bytes(this, PageTimesJson.Plain.PageTimes);

    private static string Id(string kind, int number) => string.Create(CultureInfo.InvariantCulture, $"{kind}-{number}");

    private static double Rounded(double seconds) => Math.Round(seconds, 4);
}

/// <summary>A bar and the seconds from the song's start at which it begins, once for each time it is played.</summary>
internal sealed record BarTimes(string Id, IReadOnlyList<double> At);

/// <summary>A note, the seconds from the song's start at which it begins and is left, and the notes tied to it.</summary>
internal sealed record NoteTimes(string Id, double From, double To, IReadOnlyList<string>? Held);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(PageTimes))]
internal sealed partial class PageTimesJson : JsonSerializerContext
{
    public static PageTimesJson Plain { get; } = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });
}
