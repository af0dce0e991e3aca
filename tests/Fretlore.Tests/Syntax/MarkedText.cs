using Fretlore.Syntax;

namespace Fretlore.Tests.Syntax;

/// <summary>A sheet with the place of an expected finding between ⟦ and ⟧; a place between two characters is ⟦⟧.</summary>
internal sealed record MarkedText(string Text, TextSpan Span)
{
    public static MarkedText From(string marked)
    {
        var start = marked.IndexOf('⟦');
        var end = marked.IndexOf('⟧') - 1;
        return new MarkedText(marked.Replace("⟦", "").Replace("⟧", ""), TextSpan.FromBounds(start, end));
    }
}
