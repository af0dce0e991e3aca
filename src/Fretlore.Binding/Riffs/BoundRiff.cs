using System.Collections.Immutable;
using Fretlore.Binding.Draft;
using Fretlore.Binding.Lines;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Syntax;

namespace Fretlore.Binding.Riffs;

/// <summary>A riff on the neck it was written for, holds at its borders still open.</summary>
/// <param name="Syntax">Where it is written.</param>
/// <param name="VariationOf">The riff it varies, or null.</param>
/// <param name="Neck">The neck it was written for.</param>
/// <param name="Key">Its own key when it says one.</param>
/// <param name="Flow">Its bars.</param>
/// <param name="Entries">For each written bar the time and place in force at its start.</param>
/// <param name="IsIncomplete">True when bars are missing because something in it could not be found.</param>
internal sealed record BoundRiff(
    RiffSyntax Syntax, string? VariationOf, Neck Neck, Key? Key, Flow Flow, ImmutableArray<EntryState> Entries, bool IsIncomplete)
{
    public string Name => Syntax.Name.Text;
}
