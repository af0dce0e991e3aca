using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Fretlore.Binding.Lessons;
using Fretlore.RoadMaps.Model;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Workspace.RoadMaps;

/// <summary>The phrase model as a JSON text, to be read and changed.</summary>
public static class PhraseModelText
{
    /// <summary>Every weight, with its usual value.</summary>
    public static string Write(PhraseModel model) => JsonSerializer.Serialize(model, PhraseModelJson.Readable.PhraseModel) + "\n";

    /// <summary>Reads a model; weights that are not there are as usual.</summary>
    /// <param name="text">JSON.</param>
    /// <returns>The model, or what is wrong and what to do.</returns>
    public static (PhraseModel? Model, string Wrong, string Remedy) Read(string text)
    {
        try
        {
            if (JsonNode.Parse(text, null, new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true }) is not JsonObject changes) return (null, "It is not a JSON object.", AsUsual);
            // What is not said is as usual.
            var whole = JsonNode.Parse(Write(new PhraseModel()))!.AsObject();
            foreach (var (name, value) in changes)
            {
                if (!whole.ContainsKey(name)) return (null, $"There is no weight \"{name}\".", Nearest.To(name, whole.Select(w => w.Key)) is { } near ? $"Perhaps \"{near}\" was meant. {AsUsual}" : AsUsual);
                whole[name] = value?.DeepClone();
            }
            var model = whole.Deserialize(PhraseModelJson.Readable.PhraseModel)!;
            return Wrong(model) is { } wrong ? (null, wrong, AsUsual) : (model, "", "");
        }
        catch (JsonException e)
        {
            var place = e.Path is { Length: > 1 } path ? $"\"{path.TrimStart('$', '.')}\" can't be read." : e.LineNumber is { } line ? FormattableString.Invariant($"Line {line + 1} is no JSON.") : "It is no JSON.";
            return (null, place, AsUsual);
        }
    }

    private const string AsUsual = "`fretlore roadmap --print-phrases` prints all weights as they usually are.";

    private static string? Wrong(PhraseModel model)
    {
        if (Row(model.Intervals, 13, "intervals") is { } intervals) return intervals;
        if (Row(model.QuestionLandings, 4, "questionLandings") is { } question) return question;
        if (Row(model.AnswerLandings, 4, "answerLandings") is { } answer) return answer;
        if (model.PhraseBars.IsDefaultOrEmpty || model.PhraseBars.Any(IsNoCost)) return "\"phraseBars\" needs a cost for each length from one bar up.";
        if (model.Cells.IsDefaultOrEmpty || model.Cells.Any(c => IsNoCost(c.Bits))) return "\"cells\" needs rhythm cells with their costs, from -20 to 50.";
        if (model.Cells.Select(c => c.Cell).Distinct().Count() < model.Cells.Length) return "\"cells\" has a cell twice.";
        foreach (var (name, share) in Shares(model))
        {
            if (share is < 0 or > 1 || double.IsNaN(share)) return FormattableString.Invariant($"\"{name}\" is {share}, and a share goes from 0 to 1.");
        }
        foreach (var (name, cost) in Costs(model))
        {
            if (cost is < 0 or > 50 || double.IsNaN(cost)) return FormattableString.Invariant($"\"{name}\" is {cost}, and it goes from 0 to 50.");
        }
        return model.HandSpeed is < 100 or > 5000 ? "\"handSpeed\" goes from 100 to 5000 millimetres a second." : model.MotifCells is < 1 or > 8 ? "\"motifCells\" goes from 1 to 8 cells." : model.Leap is < 2 or > 12 ? "\"leap\" goes from 2 to 12 semitones." : null;
    }

    private static string? Row(ImmutableArray<double> row, int count, string name) =>
        row.IsDefault || row.Length != count || row.Any(IsNoCost) ? FormattableString.Invariant($"\"{name}\" needs {count} costs, from -20 to 50.") : null;

    private static bool IsNoCost(double bits) => double.IsNaN(bits) || bits is < -20 or > 50;

    private static IEnumerable<(string, double)> Shares(PhraseModel model) =>
    [
        ("climax", model.Climax), ("answers", model.Answers), ("sequences", model.Sequences), ("motifAgain", model.MotifAgain), ("lateStart", model.LateStart), ("licks", model.Licks),
        ("variedLicks", model.VariedLicks), ("legato", model.Legato), ("slide", model.Slide), ("vibrato", model.Vibrato),
    ];

    private static IEnumerable<(string, double)> Costs(PhraseModel model) =>
    [
        ("widerLeap", model.WiderLeap), ("repeat", model.Repeat), ("turnAfterStep", model.TurnAfterStep), ("onAfterLeap", model.OnAfterLeap), ("leapAfterLeap", model.LeapAfterLeap),
        ("strongOutsideChord", model.StrongOutsideChord), ("weakOutsideChord", model.WeakOutsideChord), ("skippedString", model.SkippedString), ("farFret", model.FarFret),
        ("offHeight", model.OffHeight), ("otherThanEchoed", model.OtherThanEchoed), ("pastTarget", model.PastTarget), ("breath", model.Breath), ("landingNote", model.LandingNote),
        ("offDensity", model.OffDensity), ("cutCell", model.CutCell), ("otherCell", model.OtherCell), ("otherLength", model.OtherLength), ("bend", model.Bend), ("bendSeconds", model.BendSeconds), ("longSeconds", model.LongSeconds),
        ("easyDensity", model.EasyDensity), ("fullDensity", model.FullDensity),
    ];
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(PhraseModel))]
internal sealed partial class PhraseModelJson : JsonSerializerContext
{
    public static PhraseModelJson Readable { get; } = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new RhythmCellJson() },
    });
}

/// <summary>A rhythm cell as a sheet has it.</summary>
internal sealed class RhythmCellJson : JsonConverter<RhythmCell>
{
    public override RhythmCell Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.GetString() is { } text && RhythmCellText.Read(text) is { } cell ? cell : throw new JsonException("This is no rhythm cell.");

    public override void Write(Utf8JsonWriter writer, RhythmCell value, JsonSerializerOptions options) => writer.WriteStringValue(value.ToString());
}
