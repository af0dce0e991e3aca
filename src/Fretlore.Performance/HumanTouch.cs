using System.Collections.Immutable;

namespace Fretlore.Performance;

/// <summary>Small differences from what is written, as a practised player makes them: the same each time, and others in each bar.</summary>
/// <remarks>
/// An event comes a few milliseconds early or late, at most 4, and its notes are a little louder or softer, at most by 6 steps of
/// velocity. Strings struck together sound one after another, 1.5 ms apart, the low one first, where the sheet doesn't say how they
/// are struck. Nothing is moved by more than a tenth of the time to what is before or after it on its string. All values are ours; ensembles differ
/// by more (tens of milliseconds), but what is practised with should not lead astray.
/// </remarks>
public static class HumanTouch
{
    private const double MostSeconds = 0.004;
    private const double SpreadSeconds = 0.0015;
    private const double MostSpread = 0.009;
    private const double MostVelocity = 6;
    private const double MostOfGap = 0.1;

    /// <summary>The part as a player plays it.</summary>
    /// <param name="part">As performed exactly.</param>
    /// <param name="take">0 for the first time it is recorded, 1 for the second: each differs by itself.</param>
    public static PerformedPart Play(PerformedPart part, int take)
    {
        var notes = part.Notes;
        var moved = new PerformedNote[notes.Length];
        for (var first = 0; first < notes.Length;)
        {
            var after = first + 1;
            while (after < notes.Length && notes[after].Onset == notes[first].Onset) after++;
            var together = Chance(notes[first], take, 0);
            for (var i = first; i < after; i++)
            {
                var spread = Math.Min(SpreadSeconds * (i - first), MostSpread);
                var seconds = MostSeconds * together + spread;
                var velocity = notes[i].Velocity + MostVelocity * (0.6 * Chance(notes[first], take, 1) + 0.4 * Chance(notes[i], take, 2));
                moved[i] = notes[i] with
                {
                    OnsetSeconds = notes[i].OnsetSeconds + seconds,
                    Velocity = Math.Clamp((int)Math.Round(velocity), 1, 127),
                };
            }
            first = after;
        }
        KeepOrder(notes, moved);
        return part with { Notes = [.. moved] };
    }

    // On each string: no onset wanders far into its neighbours, and what a note cut off it still cuts off.
    private static void KeepOrder(ImmutableArray<PerformedNote> exact, PerformedNote[] moved)
    {
        var last = new Dictionary<int, int>();
        for (var i = 0; i < moved.Length; i++)
        {
            var number = exact[i].String.Value;
            var room = MostOfGap * (exact[i].ReleaseSeconds - exact[i].OnsetSeconds);
            if (last.TryGetValue(number, out var before)) room = Math.Min(room, MostOfGap * (exact[i].OnsetSeconds - exact[before].OnsetSeconds));
            // Nothing begins before the song does.
            var shift = Math.Max(Math.Clamp(moved[i].OnsetSeconds - exact[i].OnsetSeconds, -room, room), -exact[i].OnsetSeconds);
            moved[i] = moved[i] with { OnsetSeconds = exact[i].OnsetSeconds + shift };
            var wasThere = last.TryGetValue(number, out before);
            if (wasThere && (exact[before].ReleaseSeconds >= exact[i].OnsetSeconds - 1e-9 || moved[before].ReleaseSeconds > moved[i].OnsetSeconds))
                moved[before] = moved[before] with { ReleaseSeconds = moved[i].OnsetSeconds };
            last[number] = i;
        }
    }

    // From -1 to 1, mostly near 0, and the same on every machine.
    private static double Chance(PerformedNote note, int take, int what)
    {
        var (seed, sum) = (NoteSeed.Of(note, take), 0.0);
        for (var draw = 0; draw < 3; draw++) sum += unchecked((long)NoteSeed.Mixed(seed ^ (uint)(what << 2 | draw))) / 9223372036854775808.0;
        return sum / 3;
    }
}
