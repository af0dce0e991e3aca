using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Fretlore.Sound.Strings;

namespace Fretlore.Sound.Pieces;

/// <summary>Goes through what a track remembers, always in the same order: to take it down, or to put back what was taken down.</summary>
/// <remarks>
/// What is taken down is rounded a little, and the track goes on with the rounded values: two tracks that have come to sound alike, up to
/// what nobody hears, then are alike to the last bit. Waves are rounded to 2⁻²⁴ of full scale (144 dB down), memories of filters, which
/// may answer a small step with a larger one, to 2⁻³⁰ (180 dB down).
/// </remarks>
internal sealed class MemoryVisitor
{
    private const double WaveSteps = 1 << 24;
    private const double FilterSteps = 1 << 30;

    private readonly TrackMemory? from;
    private readonly ImmutableArray<double>.Builder numbers = ImmutableArray.CreateBuilder<double>();
    private readonly ImmutableArray<StringNote>.Builder notes = ImmutableArray.CreateBuilder<StringNote>();
    private int number;
    private int note;

    /// <param name="from">What is put back; null to take down.</param>
    public MemoryVisitor(TrackMemory? from = null) => this.from = from;

    /// <summary>False while what was taken down is put back.</summary>
    public bool TakesDown => from is null;

    /// <summary>What was taken down.</summary>
    public TrackMemory Taken() => new(numbers.ToImmutable(), notes.ToImmutable());

    /// <summary>A wave on its way.</summary>
    public void Wave(Span<double> values) => Numbers(values, WaveSteps);

    /// <inheritdoc cref="Wave(Span{double})"/>
    public void Wave(ref double value) => Wave(new Span<double>(ref value));

    /// <summary>Memories of a filter.</summary>
    /// <typeparam name="T">Doubles, one or several.</typeparam>
    public void Filter<T>(ref T value)
        where T : struct => Numbers(MemoryMarshal.Cast<T, double>(new Span<T>(ref value)), FilterSteps);

    /// <summary>What follows from notes alone and is the same where they are.</summary>
    public void Exact(ref double value)
    {
        if (TakesDown) numbers.Add(value);
        else value = from!.Numbers[number++];
    }

    /// <inheritdoc cref="Exact(ref double)"/>
    public void Exact(Span<double> values)
    {
        foreach (ref var value in values) Exact(ref value);
    }

    /// <inheritdoc cref="Exact(ref double)"/>
    public void Exact(ref int value)
    {
        double wide = value;
        Exact(ref wide);
        value = (int)wide;
    }

    /// <inheritdoc cref="Exact(ref double)"/>
    public void Exact(ref bool value)
    {
        double wide = value ? 1 : 0;
        Exact(ref wide);
        value = wide != 0;
    }

    /// <summary>A note that sounds.</summary>
    public void Note(ref StringNote value)
    {
        if (TakesDown) notes.Add(value);
        else value = from!.Notes[note++];
    }

    private void Numbers(Span<double> values, double steps)
    {
        if (!TakesDown)
        {
            from!.Numbers.AsSpan(number, values.Length).CopyTo(values);
            number += values.Length;
            return;
        }
        // Minus zero becomes zero.
        foreach (ref var value in values) value = Math.Round(value * steps) / steps + 0.0;
        numbers.AddRange(values);
    }
}
