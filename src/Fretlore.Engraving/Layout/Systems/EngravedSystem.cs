using System.Collections.Immutable;
using Fretlore.Engraving.Drawing;
using Fretlore.Music;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>A section that begins in a system.</summary>
internal readonly record struct SectionStart(string Name, double X);

/// <summary>A system with all its marks; y is 0 on the top line of its first staff.</summary>
/// <param name="First">Its first measure.</param>
/// <param name="End">The measure after its last.</param>
/// <param name="Marks">What it holds.</param>
/// <param name="Top">Its highest ink, negative.</param>
/// <param name="Bottom">Its lowest ink.</param>
/// <param name="Sections">Sections that begin in it.</param>
internal sealed record EngravedSystem(
    int First, int End, ValueList<Mark> Marks, double Top, double Bottom, ImmutableArray<SectionStart> Sections)
{
    public double Height => Bottom - Top;
}
