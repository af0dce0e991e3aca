using System.Collections.Immutable;
using Fretlore.Binding.Draft;
using Fretlore.Binding.Lines;
using Fretlore.Binding.Settings;
using Fretlore.Guitar;
using Fretlore.Syntax;

namespace Fretlore.Binding.Riffs;

/// <summary>A riff on the neck it was written for, holds at its borders still open.</summary>
/// <param name="Syntax">Where it is written.</param>
/// <param name="VariationOf">The riff it varies, or null.</param>
/// <param name="Neck">The neck it was written for.</param>
/// <param name="Alone">Metre, key, tempo and feel of the riff by itself: its own, or else the song's. In a song it follows the song's tempo, key and feel.</param>
/// <param name="Flow">Its bars.</param>
/// <param name="Entries">For each written bar the time and place in force at its start.</param>
/// <param name="IsIncomplete">True when bars are missing because something in it could not be found.</param>
internal sealed record BoundRiff(
    RiffSyntax Syntax, string? VariationOf, Neck Neck, SongSettings Alone, Flow Flow, ImmutableArray<EntryState> Entries, bool IsIncomplete)
{
    public string Name => Syntax.Name.Text;
}
