using System.Collections.Immutable;
using System.Numerics;
using Fretlore.Music;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Conflicts;

/// <summary>Finds the smallest set of rules that no solo can keep together.</summary>
/// <remarks>
/// By what any conflict must hit: a set of rules that can be kept, made as large as it goes, leaves out at least one rule of every conflict. The fewest rules
/// that hit all that was left out so far are the next guess; when they can't be kept, no fewer rules conflict (Ignatiev, Previti, Liffiton and Marques-Silva,
/// "Smallest MUS extraction with minimal hitting set dualization", 2015). A lick only adds to what may be played, so it is in no conflict.
/// </remarks>
public static class ConflictFinder
{
    /// <summary>The rules in conflict, as few as there are, in the order written; empty when a solo can keep all.</summary>
    public static ImmutableArray<RoadMapRule> Find(SoloStretch stretch)
    {
        if (Feasibility.IsPossible(stretch)) return [];
        var search = new Search(stretch);
        return search.Smallest();
    }

    private sealed class Search(SoloStretch stretch)
    {
        private readonly ImmutableArray<RoadMapRule> rules = [.. stretch.Map.Rules.Where(r => r is not LickRule)];
        private readonly Dictionary<ulong, bool> known = [];

        public ImmutableArray<RoadMapRule> Smallest()
        {
            if (rules.Length > 64) return rules;
            var leftOut = new List<ulong>();
            var all = rules.Length == 64 ? ulong.MaxValue : (1UL << rules.Length) - 1;
            while (FewestHitting(leftOut, all) is var guess)
            {
                if (!IsPossible(guess)) return Named(Needed(guess));
                var largest = guess;
                for (var left = all & ~guess; left != 0; left &= left - 1)
                {
                    var more = largest | (left & ~(left - 1));
                    if (IsPossible(more)) largest = more;
                }
                leftOut.Add(all & ~largest);
            }
            return rules;
        }

        // Where a rule takes the place of another, fewer rules can allow less: what the conflict does without is taken out at last.
        private ulong Needed(ulong conflict)
        {
            for (var left = conflict; left != 0; left &= left - 1)
            {
                var without = conflict & ~(left & ~(left - 1));
                if (without != 0 && !IsPossible(without)) conflict = without;
            }
            return conflict;
        }

        private ImmutableArray<RoadMapRule> Named(ulong some) => [.. rules.Where((_, i) => (some >> i & 1) == 1)];

        private bool IsPossible(ulong some)
        {
            if (known.TryGetValue(some, out var possible)) return possible;
            var kept = stretch.Map.Rules.Where(r => r is LickRule || (some >> rules.IndexOf(r) & 1) == 1).ToValueList();
            return known[some] = Feasibility.IsPossible(stretch.With(stretch.Map with { Rules = kept }));
        }

        private static ulong FewestHitting(List<ulong> sets, ulong all)
        {
            for (var size = 0; size <= BitOperations.PopCount(all); size++)
            {
                if (Hit(sets, 0, 0, size) is { } hit) return hit;
            }
            return all;
        }

        private static ulong? Hit(List<ulong> sets, int from, ulong chosen, int left)
        {
            while (from < sets.Count && (sets[from] & chosen) != 0) from++;
            if (from == sets.Count) return chosen;
            if (left == 0) return null;
            for (var open = sets[from]; open != 0; open &= open - 1)
            {
                if (Hit(sets, from + 1, chosen | (open & ~(open - 1)), left - 1) is { } hit) return hit;
            }
            return null;
        }
    }
}
