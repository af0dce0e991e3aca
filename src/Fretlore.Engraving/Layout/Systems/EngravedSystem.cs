using System.Collections.Immutable;
using Fretlore.Engraving.Drawing;
using Fretlore.Music;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>A section that begins in a system.</summary>
internal readonly record struct SectionStart(string Name, double X);

/// <summary>A system with all its marks; its own y is 0 on the top line of its first staff.</summary>
/// <param name="First">Its first measure.</param>
/// <param name="End">The measure after its last.</param>
/// <param name="PartGaps">How many gaps between its parts may be widened.</param>
/// <param name="MarksAt">
/// What it holds, when its y of 0 is at a place on the page and each of its gaps is wider by so much: its rows as they were drawn, each set down there.
/// </param>
/// <param name="Top">Its highest ink, negative.</param>
/// <param name="Bottom">Its lowest ink.</param>
/// <param name="Sections">Sections that begin in it.</param>
internal sealed record EngravedSystem(
    int First, int End, int PartGaps, Func<double, double, ValueList<Mark>> MarksAt, double Top, double Bottom, ImmutableArray<SectionStart> Sections)
{
    public double Height => Bottom - Top;
}
