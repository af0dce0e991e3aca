using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Stretches;

/// <summary>Bars of a solo as the moments that are heard, ties joined; grace notes and dead notes alone are ornament and no moment.</summary>
public static class SoloLine
{
    // Less than this is a colour of the note, not another one.
    private const int LeastBendCents = 75;

    private sealed class Open
    {
        public required int Bar { get; init; }

        public required Beats At { get; init; }

        public required Beats Start { get; init; }

        public required ImmutableArray<Note> Notes { get; init; }

        public required List<int> Heard { get; init; }

        public Beats End { get; set; }
    }

    /// <param name="bars">What is played.</param>
    /// <param name="lengths">The length of each bar in quarter notes.</param>
    public static ImmutableArray<LineMoment> Of(IReadOnlyList<PartBar> bars, IReadOnlyList<Beats> lengths)
    {
        var open = new List<Open>();
        var barStart = Beats.Zero;
        for (var i = 0; i < bars.Count; i++)
        {
            foreach (var item in bars[i].Strands.SelectMany(s => s.Events).OrderBy(e => e.Start)) Add(item, i + 1, barStart, open);
            barStart += lengths[i];
        }
        var moments = ImmutableArray.CreateBuilder<LineMoment>(open.Count);
        var soundsUntil = Beats.Of(-1);
        for (var i = 0; i < open.Count; i++)
        {
            var it = open[i];
            // A later note on top of a ringing one ends it for the line.
            var end = i + 1 < open.Count ? Beats.Min(it.End, Beats.Max(open[i + 1].Start, it.Start)) : it.End;
            moments.Add(new LineMoment
            {
                Bar = it.Bar,
                At = it.At,
                Start = it.Start,
                Length = end - it.Start,
                Notes = it.Notes,
                Heard = [.. it.Heard],
                FollowsRest = it.Start > soundsUntil,
                ComesToRest = i + 1 == open.Count || open[i + 1].Start > it.End,
            });
            soundsUntil = Beats.Max(soundsUntil, it.End);
        }
        return moments.MoveToImmutable();
    }

    private static void Add(Event item, int bar, Beats barStart, List<Open> open)
    {
        if (item.IsRest) return;
        var fresh = item.Notes.Where(n => !n.IsTiedFromBefore && !n.IsDead).ToImmutableArray();
        var held = item.Notes.Where(n => n.IsTiedFromBefore).ToArray();
        if (held.Length > 0 && open.Count > 0)
        {
            var it = open[^1];
            it.End = Beats.Max(it.End, barStart + item.End);
            var top = held.MaxBy(n => n.Sounding.Midi)!;
            if (it.Notes.Any(n => n.String == top.String)) Hear(top, it.Heard);
        }
        if (fresh.IsEmpty) return;
        var heard = new List<int>();
        Hear(fresh.MaxBy(n => n.Sounding.Midi)!, heard);
        open.Add(new Open { Bar = bar, At = item.Start, Start = barStart + item.Start, Notes = fresh, Heard = heard, End = barStart + item.End });
    }

    // The fretted note of a bend upwards is only where it starts from.
    private static void Hear(Note note, List<int> heard)
    {
        var fretted = note.Sounding.Midi;
        if (note.Bend is not { } bend)
        {
            if (heard.Count == 0) heard.Add(fretted);
            return;
        }
        if (bend.FromCents >= LeastBendCents && heard.Count == 0) heard.Add(fretted + Semitones(bend.FromCents));
        foreach (var cents in bend.ToCents)
        {
            var height = fretted + (cents < LeastBendCents ? 0 : Semitones(cents));
            if (heard.Count == 0 || heard[^1] != height) heard.Add(height);
        }
        if (heard.Count == 0) heard.Add(fretted);
    }

    private static int Semitones(int cents) => (cents + 50) / 100;
}
