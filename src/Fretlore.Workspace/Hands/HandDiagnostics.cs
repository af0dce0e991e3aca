using Fretlore.Syntax;

namespace Fretlore.Workspace.Hands;

/// <summary>What a hand can't do as the sheet has it: codes FL4001 to FL4999.</summary>
internal static class HandDiagnostics
{
    public static Diagnostic CantBeHeld(TextSpan span, string facts) => new(
        "FL4001", Severity.Warning, span, $"No hand of this size holds these notes together: {facts}.",
        "Move a note to another string or octave, leave one out, or tap it with the other hand (`t12`).");

    public static Diagnostic TooFast(TextSpan span, string time) => new(
        "FL4002", Severity.Warning, span, $"The hand would have to move faster than hands do: {time}.",
        "Place the notes nearer to each other on other strings, let an open string sound in between, or slow down.");

    public static Diagnostic StatedFingersDontReach(TextSpan span) => new(
        "FL4003", Severity.Warning, span, "The fingers written here don't reach these frets together.",
        "Write other fingers (`5f1`), or leave them out to have them chosen.");

    public static Diagnostic HeldNoteLost(TextSpan span) => new(
        "FL4004", Severity.Warning, span, "The finger of a note that is written to sound on is needed here.",
        "End the held note before this one, or place one of them on another string.");
}
