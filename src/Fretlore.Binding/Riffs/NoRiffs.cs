using Fretlore.Binding.Draft;
using Fretlore.Guitar;
using Fretlore.Syntax;

namespace Fretlore.Binding.Riffs;

/// <summary>A sheet before its riffs are known.</summary>
internal sealed class NoRiffs : IRiffSource
{
    public static NoRiffs Instance { get; } = new();

    public Flow? Play(PlaySyntax play, Neck neck) => null;

    public Flow? Fixed(string name, Neck neck, TextSpan at) => null;
}
