using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Performance;

/// <summary>Holds all parts where one of them has a fermata: time goes at half the tempo there.</summary>
/// <remarks>Common practice leaves the length to the players, about twice the written value; half the tempo is a choice of this project.</remarks>
internal static class Fermatas
{
    private const decimal Share = 0.5m;

    /// <summary>The tempos of one bar from its start on, fermatas included.</summary>
    /// <param name="song">The song.</param>
    /// <param name="bar">Index of a written bar.</param>
    /// <param name="inForce">The tempo it begins with, unless a mark says otherwise.</param>
    public static IReadOnlyList<(Beats At, Tempo Tempo)> TemposOf(Song song, int bar, Tempo inForce)
    {
        List<(Beats At, Tempo Tempo)> marks = [(Beats.Zero, inForce), .. song.Bars[bar].Tempos.Select(m => (m.At, m.Tempo))];
        var held = song.Parts.SelectMany(p => p.Bars[bar].Strands).SelectMany(s => s.Events).Where(e => e.HasFermata).Select(e => (e.Start, e.End)).ToList();
        if (held.Count == 0) return marks;
        var places = new SortedSet<Beats>(marks.Select(m => m.At));
        foreach (var (start, end) in held) places.UnionWith([start, end]);
        return [.. places.Select(at => (at, held.Exists(h => h.Start <= at && at < h.End) ? Slowed(TempoAt(at)) : TempoAt(at)))];

        Tempo TempoAt(Beats at) => marks.FindLast(m => m.At <= at).Tempo;
    }

    private static Tempo Slowed(Tempo tempo) => tempo with { PerMinute = tempo.PerMinute * Share };
}
