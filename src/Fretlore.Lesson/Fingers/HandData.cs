using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Fretlore.Hands.Grips;
using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Fingers;

/// <summary>A song's hand plan as data.</summary>
/// <param name="Hand">small, average or large.</param>
/// <param name="Parts">The parts asked for.</param>
/// <param name="Riffs">All riffs, as defined.</param>
/// <param name="Caution">What stands wherever the load of practice is shown.</param>
public sealed record HandData(string Hand, IReadOnlyList<LineOfHands> Parts, IReadOnlyList<LineOfHands> Riffs, string Caution)
{
    /// <summary>What stands wherever the load of practice is shown.</summary>
    public const string Cautions =
        "Hands tire before heads do: warm up, rest every quarter of an hour, and stop when something hurts. Pain, numbness or tingling that comes back belongs before a doctor or a hand therapist.";

    /// <param name="song">The song.</param>
    /// <param name="plan">Its hand plan.</param>
    /// <param name="parts">Indexes of the parts wanted.</param>
    public static HandData Of(Song song, SongHands plan, IEnumerable<int> parts) => new(
        plan.Size.ToString().ToLowerInvariant(),
        [.. parts.Select(part => LineOfHands.Of(song.Bars, song.Parts[part].Bars, plan.Parts[part], plan))],
        [.. plan.Riffs.Select((riff, i) => LineOfHands.Of(song.Riffs[i].Bars, song.Riffs[i].Content, riff, plan))],
        Cautions);

    /// <summary>As a file; lines end in a line feed.</summary>
    public byte[] ToJson() => JsonSerializer.SerializeToUtf8Bytes(this, HandDataJson.Readable.HandData);
}

/// <summary>A part or a riff; costs in points of effort, rounded to hundredths.</summary>
public sealed record LineOfHands(string Name, string Difficulty, double Cost, IReadOnlyList<BarOfHands> Bars)
{
    internal static LineOfHands Of(ValueList<Bar> bars, ValueList<PartBar> content, LineHands line, SongHands plan) =>
        new(line.Name, BarOfHands.Word(line.Whole.Difficulty), Math.Round(line.Whole.Cost, 2), [.. line.Bars.Select((load, i) => BarOfHands.Of(bars[i], content[i], load, plan))]);
}

/// <summary>One written bar: its printed number, how hard it is and why, and each note's place and finger.</summary>
public sealed record BarOfHands(
    int Bar, string Difficulty, double Cost, double Seconds, IReadOnlyDictionary<string, double> Efforts, IReadOnlyList<string> Reasons, IReadOnlyList<NoteOfHands> Notes)
{
    /// <summary>For example <c>moderate</c>.</summary>
    public static string Word(Difficulty difficulty) => difficulty.ToString().ToLowerInvariant();

    internal static BarOfHands Of(Bar bar, PartBar content, HandLoad load, SongHands plan) => new(
        bar.Number, Word(load.Difficulty), Math.Round(load.Cost, 2), Math.Round(load.Seconds, 3), EffortsOf(load), load.Reasons,
        [.. content.Strands.SelectMany(strand => strand.Events).SelectMany(e => e.Graces.Concat(e.Notes).Select(note => NoteOfHands.Of(e, note, plan)))]);

    private static SortedDictionary<string, double> EffortsOf(HandLoad load)
    {
        var efforts = new SortedDictionary<string, double>(StringComparer.Ordinal);
        foreach (var effort in Enum.GetValues<Effort>())
        {
            var amount = Math.Round(load.ByEffort[(int)effort], 2);
            if (amount > 0) efforts.Add(JsonNamingPolicy.CamelCase.ConvertName(effort.ToString()), amount);
        }
        return efforts;
    }
}

/// <summary>One note; <c>at</c> in quarter notes from the bar's start as a fraction, the finger 1 to 4, 0 for the thumb, null where none is needed.</summary>
public sealed record NoteOfHands(string At, int String, int Fret, int? Finger, int? Position)
{
    internal static NoteOfHands Of(Event item, Note note, SongHands plan)
    {
        var hand = plan.Of(note.Id);
        return new NoteOfHands(item.Start.ToString(), note.String.Value, note.Fret.Number, (int?)hand.Finger, hand.Finger is null ? null : hand.Position);
    }
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(HandData))]
internal sealed partial class HandDataJson : JsonSerializerContext
{
    public static HandDataJson Readable { get; } = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });
}
