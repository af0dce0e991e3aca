using Fretlore.Music;

namespace Fretlore.Reading.Moments;

/// <summary>Where the beats of a metre fall in its bar.</summary>
internal sealed class BeatGrid
{
    private readonly Meter meter;
    private readonly Beats[] beats;

    internal BeatGrid(Meter meter)
    {
        this.meter = meter;
        var at = Beats.Zero;
        var unit = Beats.Of(4, meter.Unit);
        var groups = meter.Groups;
        beats = new Beats[groups.Count];
        for (var beat = 0; beat < beats.Length; beat++)
        {
            beats[beat] = at;
            at += unit * groups[beat];
        }
    }

    public int Count => beats.Length;

    public bool IsOnBeat(Beats at) => Array.IndexOf(beats, at) >= 0;

    /// <summary>The grid of the next bar: this one again while the metre stays.</summary>
    internal BeatGrid For(Meter next) => next == meter ? this : new BeatGrid(next);
}
