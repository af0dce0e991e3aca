using System.Collections.Immutable;
using Fretlore.Hands.Grips;

namespace Fretlore.Hands.Plans;

/// <summary>How much more than usual each kind of effort counts, for a hand that would rather avoid it.</summary>
/// <param name="ByEffort">Factors, by <see cref="Effort"/>.</param>
internal sealed record EffortWeights(ImmutableArray<double> ByEffort)
{
    /// <summary>One kind of effort counts so many times as much.</summary>
    public static EffortWeights Against(double times, params ReadOnlySpan<Effort> efforts)
    {
        var factors = new double[GripCost.EffortCount];
        Array.Fill(factors, 1);
        foreach (var effort in efforts) factors[(int)effort] = times;
        return new EffortWeights([.. factors]);
    }

    public double Of(ReadOnlySpan<double> parts)
    {
        var sum = 0.0;
        for (var effort = 0; effort < parts.Length; effort++) sum += ByEffort[effort] * parts[effort];
        return sum;
    }
}
