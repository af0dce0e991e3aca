using System.Collections.Immutable;
using Fretlore.Performance;

namespace Fretlore.Listening.Alignment;

/// <summary>When a take plays what the sheet has at a time: exactly where an attack is heard, and in equal tempo between attacks.</summary>
internal sealed class AttackTimes
{
    private const double Reach = 0.06; // Seconds around where an attack is expected.
    private const double Together = 0.015; // Strings struck within so many seconds are one attack.
    private const double EndSeconds = 4; // What the tempo before the first and after the last attack is taken from.

    private readonly ImmutableArray<(double At, double Heard)> met;

    private AttackTimes(ImmutableArray<(double At, double Heard)> met) => this.met = met;

    /// <param name="song">The performance, as written.</param>
    /// <param name="parts">Indexes of the parts that are heard.</param>
    /// <param name="expected">About when the take plays what the sheet has at a time.</param>
    /// <param name="attacks">What is heard.</param>
    public static AttackTimes Of(PerformedSong song, IReadOnlyCollection<int> parts, Func<double, double> expected, Attacks attacks)
    {
        var met = ImmutableArray.CreateBuilder<(double At, double Heard)>();
        var last = double.NegativeInfinity;
        foreach (var at in parts.SelectMany(part => song.Parts[part].Notes).Select(note => note.OnsetSeconds).Order())
        {
            if (at - last < Together) continue;
            last = at;
            if (attacks.Near(expected(at), Reach) is { } heard && (met.Count == 0 || heard > met[^1].Heard)) met.Add((at, heard));
        }
        if (met.Count == 0) met.Add((0, expected(0)));
        return new AttackTimes(met.DrainToImmutable());
    }

    /// <summary>Seconds in the take at a time of the sheet.</summary>
    public double TimeOf(double seconds)
    {
        var next = 0;
        while (next < met.Length && met[next].At <= seconds - Together) next++;
        if (next < met.Length && met[next].At < seconds + Together) return met[next].Heard;
        if (next == 0) return met[0].Heard + (seconds - met[0].At) * TempoOver(at => at < met[0].At + EndSeconds);
        if (next == met.Length) return met[^1].Heard + (seconds - met[^1].At) * TempoOver(at => at > met[^1].At - EndSeconds);
        var (before, after) = (met[next - 1], met[next]);
        return before.Heard + (seconds - before.At) * (after.Heard - before.Heard) / (after.At - before.At);
    }

    // Seconds of the take for one of the sheet.
    private double TempoOver(Func<double, bool> isNear)
    {
        var near = met.Where(attack => isNear(attack.At)).ToArray();
        return near.Length < 2 ? 1 : Math.Clamp((near[^1].Heard - near[0].Heard) / (near[^1].At - near[0].At), 0.5, 2);
    }
}
