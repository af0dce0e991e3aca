using Fretlore.RoadMaps.Checking;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Search;

/// <summary>Fixes the landmarks of a contour so that they go its way, and lines lead from each to the next.</summary>
/// <remarks>Exact: landmarks are drawn among all rows of them that the contour and the lattice allow, likelier where notes cost less.</remarks>
internal sealed class LandmarkChooser(Lattice lattice, Dice dice)
{
    // Landmarks a bar apart that are not far from each other make a line, not a zigzag.
    private const double BitsPerSemitone = 0.15;

    /// <param name="contour">The way to go.</param>
    /// <param name="marks">The slots of the landmarks, in order. The lattice has been pruned.</param>
    /// <returns>False when no row of landmarks goes that way.</returns>
    public bool Choose(Contour contour, int[] marks)
    {
        if (marks.Length == 0) return true;
        var reach = marks.Zip(marks.Skip(1), Reach).ToArray();
        var known = new Dictionary<(int Mark, int Node, ContourState State), double>();
        var state = default(ContourState);
        var before = -1;
        var row = new int[marks.Length];
        for (var mark = 0; mark < marks.Length; mark++)
        {
            var nodes = lattice.Slots[marks[mark]].Nodes;
            var weights = new double[nodes.Length];
            var states = new ContourState?[nodes.Length];
            for (var n = 0; n < nodes.Length; n++)
            {
                if (mark > 0 && !reach[mark - 1][before, n]) continue;
                states[n] = mark == 0 ? ContourState.At(nodes[n].Height) : state.To(nodes[n].Height, contour);
                if (states[n] is { } next) weights[n] = Own(mark, n, mark == 0 ? null : before) * Ahead(mark, n, next);
            }
            var chosen = dice.ByWeight(weights);
            if (chosen < 0) return false;
            (before, state) = (chosen, states[chosen]!.Value);
            row[mark] = chosen;
        }
        for (var mark = 0; mark < marks.Length; mark++) lattice.Fix(marks[mark], row[mark]);
        return lattice.Prune();

        double Own(int mark, int node, int? from)
        {
            var slot = lattice.Slots[marks[mark]];
            var way = from is { } f ? Math.Abs(slot.Nodes[node].Height - lattice.Slots[marks[mark - 1]].Nodes[f].Final) * BitsPerSemitone : 0;
            return Bits.Weight(slot.Costs[node] + way);
        }

        double Ahead(int mark, int node, ContourState at)
        {
            if (mark == marks.Length - 1) return at.IsComplete(contour) ? 1 : 0;
            if (known.TryGetValue((mark, node, at), out var weight)) return weight;
            var nodes = lattice.Slots[marks[mark + 1]].Nodes;
            for (var n = 0; n < nodes.Length; n++)
            {
                if (reach[mark][node, n] && at.To(nodes[n].Height, contour) is { } next) weight += Own(mark + 1, n, node) * Ahead(mark + 1, n, next);
            }
            return known[(mark, node, at)] = weight;
        }
    }

    private bool[,] Reach(int from, int to)
    {
        var reach = new bool[lattice.Slots[from].Nodes.Length, lattice.Slots[to].Nodes.Length];
        for (var start = 0; start < reach.GetLength(0); start++)
        {
            var here = new bool[lattice.Slots[from].Nodes.Length];
            here[start] = true;
            for (var i = from + 1; i <= to; i++)
            {
                var next = new bool[lattice.Slots[i].Nodes.Length];
                for (var a = 0; a < here.Length; a++)
                {
                    if (!here[a]) continue;
                    for (var b = 0; b < next.Length; b++) next[b] |= lattice.Follows(i, a, b);
                }
                here = next;
            }
            for (var n = 0; n < here.Length; n++) reach[start, n] = here[n];
        }
        return reach;
    }
}
