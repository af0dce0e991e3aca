using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Pieces;
using Pair = System.Runtime.Intrinsics.Vector128<double>;

namespace Fretlore.Sound.Rigs;

/// <summary>A wah pedal: a sharp peak that the foot moves, closed on each beat and open between two.</summary>
/// <remarks>
/// The sheet says where the pedal is used, not how; rocking with the beat is the usual way (common practice). The peak goes from 450 to
/// 1,800 Hz. The filter is a state-variable one by trapezoidal integration (Simper 2011), which may be moved while it sounds.
/// </remarks>
internal sealed class WahPedal
{
    private const double Heel = 450;
    private const double Toe = 1800;
    private const double Sharpness = 4;
    private const double Boost = 2.2; // Of the peak, so that it is about as loud as without.
    private const double Dry = 0.12;
    private const int ControlLength = 32;
    private const double Step = 1.0 / 480; // 10 ms from off to on.

    private readonly ImmutableArray<(long From, long To)> uses;
    private readonly Func<long, double> beatAt;
    private Pair first;
    private Pair second;
    private double share;

    private WahPedal(ImmutableArray<(long From, long To)> uses, Func<long, double> beatAt, object beats) =>
        (this.uses, this.beatAt, Beats) = (uses, beatAt, beats);

    /// <summary>What the foot follows, to be compared by value: tempos, and where in the song it begins, for that is where beats are counted from.</summary>
    public object Beats { get; }

    /// <summary>When it is pressed between two samples, to be compared by value.</summary>
    public object UsesIn(long from, long to) => uses.Where(use => use.To > from && use.From < to).ToValueList();

    /// <summary>The pedal of a part; null when the part has none to press.</summary>
    public static WahPedal? Of(PerformedSong song, PerformedPart part, Stretch stretch)
    {
        var pressed = part.Notes.Where(n => n.Spans.HasFlag(Spans.Wah))
            .Select(n => (Start: n.OnsetSeconds, End: n.ReleaseSeconds)).Where(n => n.End > stretch.Start && n.Start < stretch.End).OrderBy(n => n.Start);
        var uses = new List<(double Start, double End)>();
        foreach (var note in pressed)
        {
            // The foot stays on it over a short rest.
            if (uses.Count > 0 && note.Start < uses[^1].End + 0.25) uses[^1] = (uses[^1].Start, Math.Max(uses[^1].End, note.End));
            else uses.Add(note);
        }
        if (uses.Count == 0) return null;
        double BeatAt(long sample)
        {
            var inside = sample - stretch.RunUp;
            if (stretch.IsLoop) inside = ((inside % stretch.Length) + stretch.Length) % stretch.Length;
            var seconds = inside / (double)SampleRate.Hertz - stretch.LeadIn + stretch.Start;
            var tempo = song.Tempo.Changes.Last(change => change.Seconds <= Math.Max(seconds, 0)).Tempo;
            return song.Tempo.QuartersAt(seconds) / tempo.Beat.Length.ToDouble();
        }
        return new WahPedal(
            [.. uses.SelectMany(use => stretch.Rounds().Select(by => (stretch.SampleAt(use.Start) + by, stretch.SampleAt(use.End) + by)))], BeatAt,
            (song.Tempo.Changes.ToValueList(), stretch.Start, stretch.LeadIn, stretch.RunUp, stretch.IsLoop ? stretch.Length : 0));
    }

    /// <summary>Goes through what it remembers.</summary>
    public void Visit(MemoryVisitor visitor)
    {
        if (visitor.TakesDown && share == 0) (first, second) = (Pair.Zero, Pair.Zero);
        visitor.Filter(ref first);
        visitor.Filter(ref second);
        visitor.Exact(ref share);
    }

    public void Run(Span<Pair> block, long from)
    {
        for (var at = 0; at < block.Length; at += ControlLength) Run(block[at..Math.Min(at + ControlLength, block.Length)], from + at, uses.Any(u => u.From <= from + at && u.To > from + at));
    }

    private void Run(Span<Pair> block, long at, bool isPressed)
    {
        if (!isPressed && share == 0) return;
        var open = 0.5 * (1 - Math.Cos(2 * Math.PI * beatAt(at)));
        var g = Math.Tan(Math.PI * Heel * Math.Pow(Toe / Heel, open) / SampleRate.Hertz);
        const double k = 1 / Sharpness;
        var a1 = 1 / (1 + g * (g + k));
        var a2 = g * a1;
        var a3 = g * a2;
        foreach (ref var value in block)
        {
            share = isPressed ? Math.Min(1, share + Step) : Math.Max(0, share - Step);
            var third = value - second;
            var band = first * a1 + third * a2;
            var low = second + first * a2 + third * a3;
            first = band * 2 - first;
            second = low * 2 - second;
            value += (band * (k * Boost) + value * Dry - value) * share;
        }
        (first, second) = (Denormal.Settle(first), Denormal.Settle(second));
    }
}
