using System.Collections.Immutable;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Model;

/// <summary>Which written bars are drawn as one measure: rests of all shown parts with no sign inside are joined.</summary>
internal static class MeasurePlan
{
    public static List<(int First, int Count)> Of(Song song, ImmutableArray<StaffPlan> staves)
    {
        var sections = song.Sections.Select(s => s.FirstBar).ToHashSet();
        var plan = new List<(int, int)>();
        for (var first = 0; first < song.Bars.Count;)
        {
            var count = 1;
            if (Rests(first))
            {
                while (first + count < song.Bars.Count && Rests(first + count)
                    && !HasSignAtEnd(song.Bars[first + count - 1]) && !HasSignAtStart(first + count))
                {
                    count++;
                }
            }
            plan.Add((first, count));
            first += count;
        }
        return plan;

        bool Rests(int bar) => !song.Bars[bar].IsPickup && !song.Bars[bar].Tempos.Any(t => !t.At.IsZero)
            && staves.All(s => MeasureParts.Rests(s.Part.Bars[bar]));

        bool HasSignAtStart(int bar) => sections.Contains(bar) || song.Bars[bar].Tempos.Count > 0 || song.Bars[bar].FeelChange is not null
            || song.Bars[bar].StartsRepeat || song.Bars[bar].StartsEnding || song.Bars[bar].IsSegno || song.Bars[bar].IsCoda
            || song.Bars[bar].Meter != song.Bars[bar - 1].Meter || song.Bars[bar].Key?.Signature != song.Bars[bar - 1].Key?.Signature
            || staves.Any(s => s.Part.Bars[bar].Neck.Capo != s.Part.Bars[bar - 1].Neck.Capo);
    }

    private static bool HasSignAtEnd(Bar bar) => bar.EndLine != BarLine.Single || bar.RepeatCount > 0 || bar.EndsEnding || bar.Jump != Jump.None;
}
