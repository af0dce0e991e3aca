using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Fretlore.Hands.Alternatives;
using Fretlore.Hands.Grips;
using Fretlore.Hands.Picking;
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
    public static HandData Of(Song song, SongHands plan, IEnumerable<int> parts) => Of(song, plan, PickingPlanner.Plan(song), parts);

    private static HandData Of(Song song, SongHands plan, SongPicking picking, IEnumerable<int> parts) => new(
        plan.Hand.Size.ToString().ToLowerInvariant(),
        [.. parts.Select(part => LineOfHands.Of(song.Bars, song.Parts[part].Bars, plan.Parts[part], plan, picking))],
        [.. plan.Riffs.Select((riff, i) => LineOfHands.Of(song.Riffs[i].Bars, song.Riffs[i].Content, riff, plan, picking) with
        {
            Alternatives = [.. AlternativeFinder.Find(song.Riffs[i], plan.Hand).Select(AlternativeOfHands.Of)],
        })],
        Cautions);

    /// <summary>As a file; lines end in a line feed.</summary>
    public byte[] ToJson() => JsonSerializer.SerializeToUtf8Bytes(this, HandDataJson.Readable.HandData);
}

/// <summary>A part or a riff; costs in points of effort, rounded to hundredths.</summary>
public sealed record LineOfHands(string Name, string Difficulty, double Cost, IReadOnlyList<BarOfHands> Bars)
{
    /// <summary>Other ways to play a riff; null for a part.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<AlternativeOfHands>? Alternatives { get; init; }

    internal static LineOfHands Of(ValueList<Bar> bars, ValueList<PartBar> content, LineHands line, SongHands plan, SongPicking picking) =>
        new(line.Name, BarOfHands.Word(line.Whole.Difficulty), Math.Round(line.Whole.Cost, 2), [.. line.Bars.Select((load, i) => BarOfHands.Of(bars[i], content[i], load, plan, picking))]);
}

/// <summary>One written bar: its printed number, how hard it is and why, and each note's place and finger.</summary>
public sealed record BarOfHands(
    int Bar, string Difficulty, double Cost, double Seconds, IReadOnlyDictionary<string, double> Efforts, IReadOnlyList<string> Reasons, IReadOnlyList<NoteOfHands> Notes)
{
    /// <summary>For example <c>moderate</c>.</summary>
    public static string Word(Difficulty difficulty) => difficulty.ToString().ToLowerInvariant();

    internal static BarOfHands Of(Bar bar, PartBar content, HandLoad load, SongHands plan, SongPicking picking) => new(
        bar.Number, Word(load.Difficulty), Math.Round(load.Cost, 2), Math.Round(load.Seconds, 3), EffortsOf(load), load.Reasons,
        [.. content.Strands.SelectMany(strand => strand.Events).SelectMany(e => e.Graces.Concat(e.Notes).Select(note => NoteOfHands.Of(e, note, plan, picking)))]);

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

/// <summary>One note; <c>at</c> in quarter notes from the bar's start as a fraction, the finger 1 to 4, 0 for the thumb, null where none is needed; <c>picking</c> is down, up, or a picking finger (p, i, m, a, c), null where nothing is plucked.</summary>
public sealed record NoteOfHands(string At, int String, int Fret, int? Finger, int? Position, string? Picking)
{
    internal static NoteOfHands Of(Event item, Note note, SongHands plan, SongPicking picking)
    {
        var hand = plan.Of(note.Id);
        return new NoteOfHands(item.Start.ToString(), note.String.Value, note.Fret.Number, (int?)hand.Finger, hand.Finger is null ? null : hand.Position, PickingOf(picking.Of(note.Id)));
    }

    private static string? PickingOf(NotePicking picking) =>
        picking.Finger?.ToString() ?? picking.Stroke switch { Stroke.Down => "down", Stroke.Up => "up", _ => null };
}

/// <summary>Another way to play a riff: <c>other fingers</c> or <c>another place</c>, what it gains and what it costs, and all notes in written order.</summary>
public sealed record AlternativeOfHands(
    string Way, int LowestFret, double Cost, double CostAsWritten, IReadOnlyList<string> Gains, IReadOnlyList<string> Prices, IReadOnlyList<PlaceOfHands> Notes)
{
    internal static AlternativeOfHands Of(Alternative way) => new(
        way.Kind == AlternativeKind.OtherPlace ? "another place" : "other fingers", way.Position, Math.Round(way.Cost, 2), Math.Round(way.CostAsWritten, 2), way.Gains, way.Prices,
        [.. way.Notes.Select(note => new PlaceOfHands(note.String.Value, note.Fret.Number, (int?)note.Finger))]);

    /// <summary>For example <c>or from fret 7: no stretching, but more shifting</c>.</summary>
    public string Sentence()
    {
        var place = Way == "another place" ? LowestFret == 0 ? "on open strings" : string.Create(CultureInfo.InvariantCulture, $"from fret {LowestFret}") : "with other fingers";
        return $"or {place}: {string.Join(", ", Gains)}{(Prices.Count == 0 ? "" : ", but " + string.Join(", ", Prices))}";
    }

    /// <summary>String:fret of each note, or the fingers where the places are as written; a dash for none.</summary>
    public string Places() => string.Join(' ', Notes.Select(note =>
        Way == "another place" ? string.Create(CultureInfo.InvariantCulture, $"{note.String}:{note.Fret}") : note.Finger?.ToString(CultureInfo.InvariantCulture) ?? "-"));
}

/// <summary>String, fret and finger.</summary>
public sealed record PlaceOfHands(int String, int Fret, int? Finger);

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
