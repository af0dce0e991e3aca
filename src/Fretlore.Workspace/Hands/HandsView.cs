using System.Collections.Immutable;
using Fretlore.Hands.Plans;
using Fretlore.Syntax;

namespace Fretlore.Workspace.Hands;

/// <summary>The hand plan of a sheet's song and what was found in it.</summary>
/// <param name="Plan">Fingers, positions and loads.</param>
/// <param name="Findings">What no hand can do, in the order of the sheet's text, each place once.</param>
public sealed record HandsView(SongHands Plan, ImmutableArray<Finding> Findings)
{
    internal static Diagnostic Finding(HandProblem problem, TextSpan span) => problem.Kind switch
    {
        HandProblemKind.CantBeHeld => HandDiagnostics.CantBeHeld(span, problem.Facts),
        HandProblemKind.TooFast => HandDiagnostics.TooFast(span, problem.Facts),
        HandProblemKind.StatedFingersDontReach => HandDiagnostics.StatedFingersDontReach(span),
        HandProblemKind.HeldNoteLost => HandDiagnostics.HeldNoteLost(span),
        _ => throw new ArgumentOutOfRangeException(nameof(problem), problem.Kind, "No such problem."),
    };
}
