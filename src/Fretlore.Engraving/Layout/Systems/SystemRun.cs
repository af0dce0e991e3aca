using System.Collections.Immutable;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Reuse;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>Draws all systems of a song, those of a long one in several stretches at once: no system needs to know what another looks like.</summary>
/// <param name="music">The music font.</param>
/// <param name="texts">The text fonts.</param>
/// <param name="sources">What systems are drawn from.</param>
/// <param name="names">Names left of the staves.</param>
/// <param name="unchanged">What an earlier layout has that can be taken over; null for nothing.</param>
/// <param name="cores">How many stretches may be drawn at once.</param>
internal sealed class SystemRun(IMusicFont music, ITextMetrics texts, SystemSources sources, PartNames names, UnchangedMeasures? unchanged, int cores)
{
    // Fewer are drawn sooner than another thread is at work on them.
    private const int ShortestStretch = 64;

    /// <param name="geometries">Where the measures of each system stand.</param>
    /// <param name="pageWidth">In staff spaces.</param>
    /// <returns>The systems, in order; the same however many were drawn at once.</returns>
    public ImmutableArray<DrawnSystem> Draw(ImmutableArray<SystemGeometry> geometries, double pageWidth)
    {
        var drawn = new DrawnSystem[geometries.Length];
        var stretches = Math.Clamp(geometries.Length / ShortestStretch, 1, cores);
        if (stretches == 1) DrawStretch(0, geometries.Length);
        else Parallel.For(0, stretches, n => DrawStretch(geometries.Length * n / stretches, geometries.Length * (n + 1) / stretches));
        return ImmutableArray.Create(drawn);

        // Each with measures and rows of its own, which remember what they were asked.
        void DrawStretch(int from, int to)
        {
            var ink = new Ink(music, texts);
            var degrees = new DegreeLabels(sources.Reading, ink, sources.Options.Degrees);
            var engraver = new SystemEngraver(ink, sources.Model, sources.Reading, sources.Chords, degrees, names, pageWidth);
            for (var i = from; i < to; i++)
            {
                drawn[i] = unchanged?.Find(geometries[i], pageWidth) ?? new DrawnSystem(geometries[i], pageWidth, engraver.Draw(geometries[i]));
            }
        }
    }
}
