using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Performance;

/// <summary>Plays a song: written bars to timed events.</summary>
/// <remarks>
/// The same song always gives the same events, and the work grows with the number of notes played. A bar played again has the tempo and
/// the feel that are in force there in written order, so that a repeat sounds as its page reads.
/// </remarks>
public static class Performer
{
    public static PerformedSong Play(Song song)
    {
        var order = PlayOrder.Of(song.Bars);
        var tempo = TempoMap.Of(TemposOf(song, order));
        var bars = order.Select(b => new PerformedBar(b.Bar, b.Pass, b.Start, tempo.SecondsAt(b.Start))).ToImmutableArray();
        var swings = Swing.AllOf(song);
        var parts = song.Parts.Select(part => PartPlayer.Play(song, part, bars, swings, tempo)).ToImmutableArray();
        return new PerformedSong(song, tempo, bars, parts);
    }

    private static IEnumerable<(Beats At, Tempo Tempo)> TemposOf(Song song, ImmutableArray<PlayedBar> order)
    {
        var inForce = new Tempo[song.Bars.Count];
        var last = Tempo.Default;
        for (var i = 0; i < inForce.Length; i++)
        {
            inForce[i] = last;
            foreach (var mark in song.Bars[i].Tempos) last = mark.Tempo;
        }
        var held = new IReadOnlyList<(Beats At, Tempo Tempo)>[song.Bars.Count];
        for (var i = 0; i < held.Length; i++) held[i] = Fermatas.TemposOf(song, i, inForce[i]);
        foreach (var played in order)
        {
            foreach (var (at, tempo) in held[played.Bar]) yield return (played.Start + at, tempo);
        }
    }
}
