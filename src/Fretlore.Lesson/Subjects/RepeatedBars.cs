using Fretlore.Lesson.CallOuts.Telling;
using Fretlore.Score;

namespace Fretlore.Lesson.Subjects;

/// <summary>A stretch of bars that comes several times in a part.</summary>
/// <param name="Starts">Indexes of the written bars it starts at, in order; two or more.</param>
/// <param name="Length">In bars.</param>
internal sealed record RepeatedRun(IReadOnlyList<int> Starts, int Length);

/// <summary>Finds stretches of a part that come again, apart from those that are riffs already.</summary>
internal static class RepeatedBars
{
    /// <summary>A stretch is no longer than this.</summary>
    private const int MostBars = 16;

    /// <summary>A bar with fewer events says too little to be the same as another.</summary>
    private const int LeastEvents = 3;

    /// <param name="part">The part.</param>
    /// <param name="isFree">For each bar whether it may be looked at: it belongs to no riff, and the stretch may not cross from one section to the next.</param>
    /// <param name="startsSection">For each bar whether a section begins there.</param>
    /// <returns>The longest and most frequent first; none overlaps another.</returns>
    public static IReadOnlyList<RepeatedRun> Of(Part part, IReadOnlyList<bool> isFree, IReadOnlyList<bool> startsSection)
    {
        var forms = Number(part, isFree);
        var found = new List<RepeatedRun>();
        while (Best(forms, startsSection) is { } run)
        {
            found.Add(run);
            foreach (var start in run.Starts) Array.Fill(forms, -1, start, run.Length);
        }
        return found;
    }

    // Equal bars have equal numbers; -1 is a bar that can't be part of a stretch.
    private static int[] Number(Part part, IReadOnlyList<bool> isFree)
    {
        var numbers = new Dictionary<BarForm, int>();
        var forms = new int[part.Bars.Count];
        for (var bar = 0; bar < forms.Length; bar++)
        {
            forms[bar] = -1;
            if (!isFree[bar] || part.Bars[bar].Strands.Sum(s => s.Events.Count(e => !e.IsRest)) < LeastEvents) continue;
            var form = BarForm.Of(part.Bars[bar]);
            if (!numbers.TryGetValue(form, out var number)) numbers[form] = number = numbers.Count;
            forms[bar] = number;
        }
        return forms;
    }

    // The stretch that saves most when written once: its bars times its repeats.
    private static RepeatedRun? Best(int[] forms, IReadOnlyList<bool> startsSection)
    {
        RepeatedRun? best = null;
        for (var length = 1; length <= MostBars; length++)
        {
            foreach (var starts in Starts(forms, startsSection, length))
            {
                if (best is null || (starts.Count - 1) * length > (best.Starts.Count - 1) * best.Length) best = new RepeatedRun(starts, length);
            }
        }
        return best;
    }

    private static IEnumerable<List<int>> Starts(int[] forms, IReadOnlyList<bool> startsSection, int length)
    {
        var byBars = new Dictionary<string, List<int>>();
        for (var start = 0; start + length <= forms.Length; start++)
        {
            var isWhole = true;
            for (var i = 0; i < length && isWhole; i++) isWhole = forms[start + i] >= 0 && (i == 0 || !startsSection[start + i]);
            if (!isWhole) continue;
            var key = string.Join(',', forms.AsSpan(start, length).ToArray());
            if (!byBars.TryGetValue(key, out var starts)) byBars[key] = starts = [];
            if (starts.Count == 0 || starts[^1] + length <= start) starts.Add(start);
        }
        return byBars.Values.Where(starts => starts.Count > 1);
    }
}
