using System.Collections.Immutable;
using Fretlore.Music;

namespace Fretlore.Performance;

/// <summary>A tempo from a place in the unrolled song on.</summary>
/// <param name="At">Quarter notes from the song's start.</param>
/// <param name="Seconds">Seconds from the song's start.</param>
/// <param name="Tempo">The tempo as printed.</param>
public readonly record struct TempoChange(Beats At, double Seconds, Tempo Tempo);

/// <summary>Turns musical time of the unrolled song into seconds and back.</summary>
/// <remarks>Tempo is constant between changes. The first change is at zero, the map goes on past the last one and, at the first tempo, before zero.</remarks>
public sealed class TempoMap
{
    private readonly ImmutableArray<TempoChange> changes;

    private TempoMap(ImmutableArray<TempoChange> changes) => this.changes = changes;

    /// <summary>In order of time; neighbours differ in tempo.</summary>
    public ImmutableArray<TempoChange> Changes => changes;

    /// <summary>Makes a map from tempos in order of time; without one at zero the song starts at <see cref="Tempo.Default"/>.</summary>
    public static TempoMap Of(IEnumerable<(Beats At, Tempo Tempo)> tempos)
    {
        var made = ImmutableArray.CreateBuilder<TempoChange>();
        made.Add(new TempoChange(Beats.Zero, 0, Tempo.Default));
        foreach (var (at, tempo) in tempos)
        {
            var last = made[^1];
            if (at == last.At) made[^1] = last with { Tempo = tempo };
            else if (tempo != last.Tempo) made.Add(new TempoChange(at, last.Seconds + (at - last.At).ToDouble() * last.Tempo.SecondsPerQuarter, tempo));
        }
        return new TempoMap(made.ToImmutable());
    }

    /// <summary>Seconds from the song's start at a place in musical time.</summary>
    public double SecondsAt(Beats at) => SecondsAt(at.ToDouble());

    /// <inheritdoc cref="SecondsAt(Beats)"/>
    public double SecondsAt(double quarters)
    {
        var change = changes[LastWhere(c => c.At.ToDouble() <= quarters)];
        return change.Seconds + (quarters - change.At.ToDouble()) * change.Tempo.SecondsPerQuarter;
    }

    /// <summary>Quarter notes from the song's start at a time in seconds.</summary>
    public double QuartersAt(double seconds)
    {
        var change = changes[LastWhere(c => c.Seconds <= seconds)];
        return change.At.ToDouble() + (seconds - change.Seconds) / change.Tempo.SecondsPerQuarter;
    }

    private int LastWhere(Func<TempoChange, bool> isBefore)
    {
        var (low, high) = (0, changes.Length - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if (isBefore(changes[middle])) low = middle;
            else high = middle - 1;
        }
        return low;
    }
}
