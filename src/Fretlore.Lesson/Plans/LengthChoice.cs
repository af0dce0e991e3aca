using System.Collections.Immutable;

namespace Fretlore.Lesson.Plans;

/// <summary>One way to tell a step: what it takes and what it is worth.</summary>
/// <param name="Tenths">Tenths of a second.</param>
/// <param name="Worth">In points, more is better.</param>
internal readonly record struct StepOption(int Tenths, int Worth);

/// <summary>A step to choose a length for.</summary>
/// <param name="Options">The ways to tell it; leaving it out is always one more, unless it is kept.</param>
/// <param name="IsKept">True when it may not be left out.</param>
/// <param name="Needs">Steps that must be there if this one is, by index.</param>
/// <param name="Neck">Which neck it is played on; -1 when it is played on none.</param>
internal sealed record ChoiceStep(ImmutableArray<StepOption> Options, bool IsKept, ImmutableArray<int> Needs, int Neck);

/// <summary>What was chosen: for each step the index of its option, or -1 where it is left out.</summary>
internal sealed record Chosen(ImmutableArray<int> Options, int Tenths, int Worth);

/// <summary>
/// Chooses for each step of a lesson how long it is told, or that it is left out, so that the lesson is worth most within its time.
/// </summary>
/// <param name="steps">In teaching order, 64 at most.</param>
/// <param name="changeover">Tenths of a second it takes to get from one neck (-1 at the start) to another.</param>
/// <remarks>
/// A knapsack with classes and precedence, solved exactly by dynamic programming: after each step, for each neck in hand and each set of chosen
/// steps that still matter to others, the choices that no other one beats in both time and worth are kept. Of equal worth, the shorter one wins.
/// </remarks>
internal sealed class LengthChoice(ImmutableArray<ChoiceStep> steps, Func<int, int, int> changeover)
{
    /// <summary>More steps than this can't be planned.</summary>
    public const int MostSteps = 64;

    private sealed record Label(int Tenths, int Worth, int Option, Label? Before);

    private readonly record struct State(int Neck, ulong Chosen);

    /// <summary>The best choice within a time; null when the kept steps alone take longer.</summary>
    /// <param name="most">Tenths of a second.</param>
    /// <param name="atLeast">For each step the option it may not fall below, counted with -1 for out; null for any.</param>
    public Chosen? Within(int most, ImmutableArray<int>? atLeast = null) => Best(Search(most, atLeast), byTime: false);

    /// <summary>The shortest lesson there can be: the kept steps, with what they need, as short as they get.</summary>
    public Chosen Shortest() => Best(Search(int.MaxValue, null), byTime: true)!;

    private Dictionary<State, List<Label>> Search(int most, ImmutableArray<int>? atLeast)
    {
        var states = new Dictionary<State, List<Label>> { [new State(-1, 0)] = [new Label(0, 0, -1, null)] };
        for (var i = 0; i < steps.Length; i++)
        {
            var next = new Dictionary<State, List<Label>>();
            foreach (var (state, labels) in states)
            {
                var first = Math.Max(steps[i].IsKept ? 0 : -1, atLeast is { } floor ? floor[i] : -1);
                for (var option = first; option < steps[i].Options.Length; option++) Extend(next, state, labels, i, option, most);
            }
            foreach (var labels in next.Values) Prune(labels);
            states = next;
        }
        return states;
    }

    private void Extend(Dictionary<State, List<Label>> next, State state, List<Label> labels, int step, int option, int most)
    {
        var chosen = option < 0 ? state.Chosen : state.Chosen | (1UL << step);
        if (!IsSound(chosen, step)) return;
        var neck = option < 0 || steps[step].Neck < 0 ? state.Neck : steps[step].Neck;
        var (tenths, worth) = option < 0 ? default : (steps[step].Options[option].Tenths, steps[step].Options[option].Worth);
        if (option >= 0 && neck != state.Neck) tenths += changeover(state.Neck, neck);
        // What no later step asks about is forgotten, so that choices can be compared.
        var to = new State(neck, chosen & StillMatters(step));
        foreach (var label in labels)
        {
            if ((long)label.Tenths + tenths > most) continue;
            if (!next.TryGetValue(to, out var list)) next[to] = list = [];
            list.Add(new Label(label.Tenths + tenths, label.Worth + worth, option, label));
        }
    }

    // Holds for each pair of a step and one it needs as soon as both are decided.
    private bool IsSound(ulong chosen, int step)
    {
        for (var i = 0; i <= step; i++)
        {
            foreach (var need in steps[i].Needs)
            {
                if (Math.Max(i, need) == step && Has(chosen, i) && !Has(chosen, need)) return false;
            }
        }
        return true;
    }

    private ulong StillMatters(int step)
    {
        var matters = 0UL;
        for (var i = 0; i < steps.Length; i++)
        {
            foreach (var need in steps[i].Needs)
            {
                if (Math.Max(i, need) > step) matters |= (1UL << i) | (1UL << need);
            }
        }
        return matters;
    }

    private static bool Has(ulong set, int step) => (set >> step & 1) == 1;

    // Shortest first, each worth more than the one before.
    private static void Prune(List<Label> labels)
    {
        labels.Sort((a, b) => a.Tenths != b.Tenths ? a.Tenths.CompareTo(b.Tenths) : b.Worth.CompareTo(a.Worth));
        var kept = 0;
        for (var i = 0; i < labels.Count; i++)
        {
            if (kept == 0 || labels[i].Worth > labels[kept - 1].Worth) labels[kept++] = labels[i];
        }
        labels.RemoveRange(kept, labels.Count - kept);
    }

    private Chosen? Best(Dictionary<State, List<Label>> states, bool byTime)
    {
        var all = states.Values.SelectMany(labels => labels);
        var best = byTime ? all.OrderBy(l => l.Tenths).ThenByDescending(l => l.Worth).FirstOrDefault()
            : all.OrderByDescending(l => l.Worth).ThenBy(l => l.Tenths).FirstOrDefault();
        if (best is null) return null;
        var options = new int[steps.Length];
        var label = best;
        for (var i = steps.Length - 1; i >= 0; i--, label = label.Before!) options[i] = label.Option;
        return new Chosen([.. options], best.Tenths, best.Worth);
    }
}
