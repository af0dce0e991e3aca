using Fretlore.Hands.Plans;
using Fretlore.Syntax;

namespace Fretlore.Workspace.Hands;

/// <summary>What a hand can't do as the sheet has it: codes FL4001 to FL4999.</summary>
internal static class HandDiagnostics
{
    public static Diagnostic Of(HandProblem problem, TextSpan span) => problem.Kind switch
    {
        HandProblemKind.CantBeHeld => CantBeHeld(span, problem.Text),
        HandProblemKind.TooFast => TooFast(span, problem.Text),
        HandProblemKind.StatedFingersDontReach => StatedFingersDontReach(span, problem.Text),
        HandProblemKind.HeldNoteLost => HeldNoteLost(span, problem.Text),
        _ => throw new ArgumentOutOfRangeException(nameof(problem), problem.Kind, "No such problem."),
    };

    private static Diagnostic CantBeHeld(TextSpan span, string text) => new(
        "FL4001", Severity.Warning, span, text, "Move a note to another string or octave, leave one out, or tap it with the other hand (`t12`).");

    private static Diagnostic TooFast(TextSpan span, string text) => new(
        "FL4002", Severity.Warning, span, text, "Place the notes nearer to each other on other strings, let an open string sound in between, or slow down.");

    private static Diagnostic StatedFingersDontReach(TextSpan span, string text) => new(
        "FL4003", Severity.Warning, span, text, "Write other fingers (`5f1`), or leave them out to have them chosen.");

    private static Diagnostic HeldNoteLost(TextSpan span, string text) => new(
        "FL4004", Severity.Warning, span, text, "End the held note before this one, or place one of them on another string.");
}
