using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Fretlore.Workspace.Explanation;

namespace Fretlore.Cli.Json;

/// <summary>What <c>check --json</c> prints.</summary>
internal sealed record CheckAnswer(IReadOnlyList<DiagnosticLine> Diagnostics);

/// <summary>One finding; lines and columns from 1.</summary>
internal sealed record DiagnosticLine(string Code, string Severity, int Line, int Column, int Length, string Message, string Remedy);

/// <summary>What <c>name --json</c> prints, best first.</summary>
internal sealed record NameAnswer(IReadOnlyList<ChordLine> Candidates);

/// <summary>One name for a shape.</summary>
internal sealed record ChordLine(string Symbol, string Root, string Kind, string Bass, IReadOnlyList<string> Notes, string Reason);

/// <summary>What <c>scale --json</c> prints, best first.</summary>
internal sealed record ScaleAnswer(IReadOnlyList<ScaleLine> Candidates);

/// <summary>One scale for a set of notes.</summary>
internal sealed record ScaleLine(string Name, string Root, IReadOnlyList<string> Missing, IReadOnlyList<string> Outside, string Reason);

/// <summary>Writers for the answers, made at build time so that starting stays fast.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, GenerationMode = JsonSourceGenerationMode.Default)]
[JsonSerializable(typeof(CheckAnswer))]
[JsonSerializable(typeof(NameAnswer))]
[JsonSerializable(typeof(ScaleAnswer))]
[JsonSerializable(typeof(StringsAnswer))]
[JsonSerializable(typeof(SongExplanation))]
[JsonSerializable(typeof(HandsAnswer))]
[JsonSerializable(typeof(LessonAnswer))]
[JsonSerializable(typeof(ShapesAnswer))]
[JsonSerializable(typeof(RetuneJson))]
[JsonSerializable(typeof(RoadMapTakesJson))]
[JsonSerializable(typeof(SoloCheckJson))]
[JsonSerializable(typeof(ProposalJson))]
[JsonSerializable(typeof(AlignedTakeJson))]
internal sealed partial class AnswerJson : JsonSerializerContext
{
    /// <summary>Writes names such as <c>Cmaj7#11</c> and <c>C+</c> as they are read.</summary>
    public static AnswerJson Readable { get; } = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });
}
