using Fretlore.Lesson.Fingers;

namespace Fretlore.Cli.Json;

/// <summary>What <c>hands --json</c> prints.</summary>
internal sealed record HandsAnswer(
    string Hand, IReadOnlyList<LineOfHands> Parts, IReadOnlyList<LineOfHands> Riffs, IReadOnlyList<DiagnosticLine> Diagnostics, string Caution);
