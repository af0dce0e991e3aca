using Fretlore.Binding.Draft;
using Fretlore.Guitar;
using Fretlore.Syntax;

namespace Fretlore.Binding.Riffs;

/// <summary>Where a line of music finds the riffs it plays.</summary>
internal interface IRiffSource
{
    /// <summary>The riff's bars on a neck; null, with a finding, when it can't be played there.</summary>
    Flow? Play(PlaySyntax play, Neck neck);

    /// <summary>The bars of a riff that a road map has as a fixed phrase; null, with a finding where it is not the riff's own, when it can't be played there.</summary>
    Flow? Fixed(string name, Neck neck, TextSpan at);
}
