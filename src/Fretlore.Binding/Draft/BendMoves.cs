using System.Collections.Immutable;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Draft;

/// <summary>The raises, releases and vibrato written after a note or a hold, in order.</summary>
/// <param name="From">Cents of a bend before the note is picked; 0 for none.</param>
/// <param name="To">Heights reached one after another, in cents above the fretted pitch.</param>
/// <param name="Vibrato">Vibrato and its place among the moves.</param>
/// <param name="Span">From the first raise to the last.</param>
internal sealed record BendMoves(int From, ImmutableArray<int> To, Vibrato Vibrato, TextSpan Span)
{
    public static BendMoves None { get; } = new(0, [], default, default);

    public bool HasBend => From != 0 || To.Length > 0;

    public Bend? ToBend(int from) => from == 0 && To.Length == 0 ? null : new Bend(from, new(To));
}
