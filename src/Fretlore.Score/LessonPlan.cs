using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>What the sheet says about the lesson.</summary>
/// <param name="Budget">Time for the whole film, or null.</param>
/// <param name="Steps">In teaching order.</param>
public sealed record LessonPlan(TimeSpan? Budget, ValueList<LessonStep> Steps)
{
    /// <summary>Words a minute the teacher speaks on film, breaths included, 60 to 300; null for the usual rate.</summary>
    public int? SpeakingRate { get; init; }

    /// <summary>What may be given away for nothing: a section, or bars of it or of the song; null when the sheet does not say.</summary>
    public Taught? Excerpt { get; init; }
}

/// <summary>How long a step is told.</summary>
public enum StepLength
{
    /// <summary>What it is, in a breath or two.</summary>
    Headline,

    /// <summary>Every string and fret, repeats merged.</summary>
    WalkThrough,

    /// <summary>Every note with its value.</summary>
    NoteByNote,
}

/// <summary>One step of the lesson.</summary>
/// <param name="Title">As shown.</param>
/// <param name="Teaches">Riffs, sections or road maps, whole or in part.</param>
/// <param name="SpeedPercents">Teaching speeds in percent of the song's tempo, 1 to 400.</param>
/// <param name="Say">Words the teacher wants said, or null.</param>
public sealed record LessonStep(string Title, ValueList<Taught> Teaches, ValueList<int> SpeedPercents, string? Say)
{
    /// <summary>True when it may be shortened but not left out.</summary>
    public bool IsKept { get; init; }

    /// <summary>The only length it may be told at, or null for any.</summary>
    public StepLength? Length { get; init; }
}

/// <summary>What is taught: a riff, section or road map by name, or some of its bars, or one part's line of it.</summary>
/// <param name="Name">As in the sheet; empty for the song itself.</param>
/// <param name="Bars">Only these bars: of a riff or section counted from its own first one, of the song by the printed numbers; null for all.</param>
/// <param name="Part">Only this part, by its short name; null for all.</param>
public sealed record Taught(string Name, BarRange? Bars = null, string? Part = null)
{
    /// <summary>As written after <c>teach</c>: <c>Rise bars 1-2 of lead</c>.</summary>
    public override string ToString() => string.Join(' ', new[] { Name, Bars?.ToString() ?? "", Part is null ? "" : "of " + Part }.Where(s => s.Length > 0));
}

/// <summary>Bars from one to another, both included, counted from 1 (0 is a pickup).</summary>
public readonly record struct BarRange(int First, int Last)
{
    public override string ToString() => First == Last
        ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"bar {First}")
        : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"bars {First}-{Last}");
}
