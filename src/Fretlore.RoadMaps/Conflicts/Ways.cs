using Fretlore.Music;
using Fretlore.RoadMaps.Checking;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Conflicts;

/// <summary>Where all beginnings of a solo that keep the rules can stand at a moment, told apart by what matters for what comes.</summary>
/// <param name="Hit">Bits of the targets hit: those of the bar, and those for no bar in particular.</param>
/// <param name="Owed">Index of the target that the next note must be, for this one to be allowed; -1 for none.</param>
/// <param name="Rests">True when silence has come since the last note.</param>
/// <param name="IsMark">True when the last note is a landmark of its contour.</param>
/// <param name="HasNote">True when the bar has a note.</param>
/// <param name="HasEnded">True when the last note is the end.</param>
/// <param name="Contours">How far the contours have come, by the number that <see cref="StateTable"/> gives.</param>
internal readonly record struct Standing(int Hit, int Owed, bool Rests, bool IsMark, bool HasNote, bool HasEnded, int Contours);

/// <summary>How far the contours of a road map have come, each null before its first landmark, by number.</summary>
internal sealed class StateTable
{
    private readonly List<ValueList<ContourState?>> rows = [];
    private readonly Dictionary<ValueList<ContourState?>, int> numbers = [];
    private readonly Dictionary<(int Number, int Contour, int Height), int?> after = [];

    public ValueList<ContourState?> this[int number] => rows[number];

    public int NumberOf(ValueList<ContourState?> row)
    {
        if (numbers.TryGetValue(row, out var number)) return number;
        rows.Add(row);
        return numbers[row] = rows.Count - 1;
    }

    /// <summary>The number after a landmark of one contour; null where the contour does not go there.</summary>
    /// <param name="number">The number before.</param>
    /// <param name="contour">The contour's place in the row.</param>
    /// <param name="shape">The way it goes.</param>
    /// <param name="height">The landmark, a MIDI number.</param>
    public int? After(int number, int contour, Contour shape, int height)
    {
        if (after.TryGetValue((number, contour, height), out var known)) return known;
        var state = rows[number][contour] is { } before ? before.To(height, shape) : ContourState.At(height);
        return after[(number, contour, height)] = state is { } now ? NumberOf(new(rows[number].Items.SetItem(contour, now.Ahead(shape)))) : null;
    }
}

/// <summary>All standings at a moment with the places the last note can be at.</summary>
internal sealed class Front
{
    private readonly Dictionary<Standing, NodeSet> sets = [];

    public IEnumerable<KeyValuePair<Standing, NodeSet>> All => sets;

    public bool IsEmpty => sets.Count == 0;

    public void Add(Standing standing, NodeSet nodes)
    {
        if (nodes.IsEmpty) return;
        sets[standing] = sets.TryGetValue(standing, out var known) ? known | nodes : nodes;
    }

    /// <summary>Without what is no better than something else here that can be at the same places and more.</summary>
    /// <param name="isBetter">Of two numbers of contours, true when the first can go wherever the second can.</param>
    public Front Best(Func<int, int, bool> isBetter)
    {
        var best = new Front();
        foreach (var group in sets.GroupBy(s => s.Key with { Contours = 0, IsMark = false }))
        {
            var kept = new List<KeyValuePair<Standing, NodeSet>>();
            foreach (var one in group)
            {
                if (kept.Exists(k => Covers(k, one))) continue;
                kept.RemoveAll(k => Covers(one, k));
                kept.Add(one);
            }
            foreach (var (standing, nodes) in kept) best.Add(standing, nodes);
        }
        return best;

        bool Covers(KeyValuePair<Standing, NodeSet> one, KeyValuePair<Standing, NodeSet> other) =>
            one.Key.IsMark == other.Key.IsMark && (one.Value | other.Value) == one.Value && isBetter(one.Key.Contours, other.Key.Contours);
    }

    public void Add(Front other)
    {
        foreach (var (standing, nodes) in other.sets) Add(standing, nodes);
    }
}

/// <summary>A note that the rules ask for: an aim or the end.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Target">The note.</param>
/// <param name="How">The way to it, or null.</param>
/// <param name="String">The string, or null.</param>
internal sealed record Wanted(RoadMapRule Rule, NoteName Target, Approach? How, Guitar.StringNumber? String)
{
    public static Wanted? Of(RoadMapRule rule) => rule switch
    {
        AimRule aim => new Wanted(rule, aim.Target, aim.How, aim.String),
        EndRule end => new Wanted(rule, end.Target, end.How, end.String),
        _ => null,
    };
}
