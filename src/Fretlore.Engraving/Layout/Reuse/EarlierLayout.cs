using System.Collections.Immutable;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Systems;
using Fretlore.Reading;

namespace Fretlore.Engraving.Layout.Reuse;

/// <summary>What a layout leaves for the next one of the same song, changed here and there: its systems, and all they were drawn from.</summary>
/// <remarks>
/// Immutable. A system is taken over only where everything it is drawn from is equal, so pages are the same with it as without it. It holds for one
/// set of fonts.
/// </remarks>
public sealed class EarlierLayout
{
    internal EarlierLayout(SystemSources? sources, ImmutableArray<DrawnSystem> systems)
    {
        Sources = sources;
        Systems = systems;
    }

    /// <summary>Before the first layout: nothing to take over.</summary>
    public static EarlierLayout Empty { get; } = new(null, []);

    internal SystemSources? Sources { get; }

    /// <summary>Of each size that was tried.</summary>
    internal ImmutableArray<DrawnSystem> Systems { get; }

    /// <summary>The system that was drawn over the same measures in the same places; null when there was none.</summary>
    internal DrawnSystem? Over(SystemGeometry geometry, double pageWidth)
    {
        foreach (var drawn in Systems)
        {
            if (drawn.PageWidth == pageWidth && drawn.Geometry.HasPlacesOf(geometry)) return drawn;
        }
        return null;
    }
}

/// <summary>A system as it was drawn.</summary>
/// <param name="Geometry">Where its measures stand.</param>
/// <param name="PageWidth">The page's width, in staff spaces.</param>
/// <param name="System">What was drawn.</param>
internal sealed record DrawnSystem(SystemGeometry Geometry, double PageWidth, EngravedSystem System);

/// <summary>What systems are drawn from, their places apart.</summary>
/// <param name="Options">How the song is put on pages.</param>
/// <param name="Model">The song in measures.</param>
/// <param name="Reading">Its reading: spellings and degrees.</param>
/// <param name="Chords">Chord symbols.</param>
internal sealed record SystemSources(PageOptions Options, ScoreModel Model, SongReading Reading, ChordRows Chords);
