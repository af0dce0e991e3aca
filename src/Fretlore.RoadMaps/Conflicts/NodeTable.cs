using Fretlore.RoadMaps.Search;
using Fretlore.RoadMaps.Stretches;

namespace Fretlore.RoadMaps.Conflicts;

/// <summary>Every place a note of the solo can be at, by number.</summary>
internal sealed class NodeTable
{
    private readonly List<PlaceNode> nodes = [];
    private readonly Dictionary<PlaceNode, int> numbers = [];
    private readonly Dictionary<(int? WidestLeap, bool NoRepeats), NodeSet[]> following = [];

    private readonly Dictionary<int, NodeSet> byHeight = [];

    /// <summary>The places of each height that a note comes to.</summary>
    public IEnumerable<KeyValuePair<int, NodeSet>> ByHeight => byHeight;

    public PlaceNode this[int number] => nodes[number];

    /// <summary>The node that stands for nothing having been played.</summary>
    public int Nothing => NumberOf(new PlaceNode(0, 0, 0, int.MinValue / 2, int.MinValue / 2));

    public int NumberOf(PlaceNode node)
    {
        if (numbers.TryGetValue(node, out var number)) return number;
        if (nodes.Count == NodeSet.Most) throw new InvalidOperationException("A neck has fewer places than that.");
        nodes.Add(node);
        numbers[node] = nodes.Count - 1;
        byHeight[node.Height] = byHeight.GetValueOrDefault(node.Height) | NodeSet.Of(nodes.Count - 1);
        return nodes.Count - 1;
    }

    public NodeSet SetOf(IEnumerable<PlaceNode> places)
    {
        var set = new NodeSet();
        foreach (var place in places) set |= NodeSet.Of(NumberOf(place));
        return set;
    }

    /// <summary>For each node all that may follow it without a rest, as far as leaps and repeats are concerned; null where all may.</summary>
    public NodeSet[]? After(StretchBar bar)
    {
        var key = (bar.WidestLeap, bar.ForbidsRepeats);
        if (key is (null, false)) return null;
        if (following.TryGetValue(key, out var sets) && sets.Length == nodes.Count) return sets;
        sets = new NodeSet[nodes.Count];
        for (var from = 0; from < sets.Length; from++)
        {
            for (var n = 0; n < sets.Length; n++)
            {
                var away = Math.Abs(nodes[n].Height - nodes[from].Final);
                if ((key.WidestLeap is not { } widest || away <= widest) && !(key.Item2 && away == 0)) sets[from] |= NodeSet.Of(n);
            }
        }
        return following[key] = sets;
    }
}
