using Fretlore.Music;

namespace Fretlore.Reading.Moments;

/// <summary>Where the beats of a metre fall in its bar.</summary>
internal sealed class BeatGrid
{
    private readonly HashSet<Beats> beats = [];

    internal BeatGrid(Meter meter)
    {
        var at = Beats.Zero;
        var unit = Beats.Of(4, meter.Unit);
        foreach (var group in meter.Groups)
        {
            beats.Add(at);
            at += unit * group;
        }
    }

    public int Count => beats.Count;

    public bool IsOnBeat(Beats at) => beats.Contains(at);
}
