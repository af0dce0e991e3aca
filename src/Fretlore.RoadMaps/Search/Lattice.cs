namespace Fretlore.RoadMaps.Search;

/// <summary>All lines that keep the rules from note to note: slots in a row, the places of each, and which of them may follow which.</summary>
internal sealed class Lattice
{
    private readonly bool[][] follows;

    public Lattice(Slot[] slots, StepRules rules)
    {
        Slots = slots;
        Rules = rules;
        follows = new bool[slots.Length][];
        for (var i = 1; i < slots.Length; i++)
        {
            var (rows, columns) = (slots[i - 1].Nodes.Length, slots[i].Nodes.Length);
            follows[i] = new bool[rows * columns];
            for (var a = 0; a < rows; a++)
            {
                for (var b = 0; b < columns; b++) follows[i][a * columns + b] = rules.MayFollow(slots[i - 1], slots[i - 1].Nodes[a], slots[i], slots[i].Nodes[b]);
            }
        }
    }

    public Slot[] Slots { get; }

    public StepRules Rules { get; }

    /// <summary>True when the second node may come after the first.</summary>
    public bool Follows(int slot, int before, int node) => follows[slot][before * Slots[slot].Nodes.Length + node];

    /// <summary>Takes away every node that lies on no whole line; false when none is left somewhere.</summary>
    public bool Prune()
    {
        var keep = Slots.Select(s => new bool[s.Nodes.Length]).ToArray();
        for (var i = 0; i < Slots.Length; i++)
        {
            for (var n = 0; n < keep[i].Length; n++) keep[i][n] = i == 0 || Any(keep[i - 1], before => Follows(i, before, n));
        }
        for (var i = Slots.Length - 2; i >= 0; i--)
        {
            for (var n = 0; n < keep[i].Length; n++) keep[i][n] &= Any(keep[i + 1], next => Follows(i + 1, n, next));
        }
        for (var i = 0; i < Slots.Length; i++)
        {
            if (!keep[i].Contains(true)) return false;
        }
        for (var i = Slots.Length - 1; i >= 0; i--) Keep(i, keep[i]);
        return true;

        static bool Any(bool[] kept, Func<int, bool> joins)
        {
            for (var k = 0; k < kept.Length; k++)
            {
                if (kept[k] && joins(k)) return true;
            }
            return false;
        }
    }

    /// <summary>Leaves a slot one node.</summary>
    public void Fix(int slot, int node)
    {
        var keep = new bool[Slots[slot].Nodes.Length];
        keep[node] = true;
        Keep(slot, keep);
    }

    private void Keep(int slot, bool[] keep)
    {
        var count = keep.Length;
        var left = Enumerable.Range(0, count).Where(n => keep[n]).ToArray();
        if (left.Length == count) return;
        if (slot > 0)
        {
            var rows = Slots[slot - 1].Nodes.Length;
            var kept = new bool[rows * left.Length];
            for (var a = 0; a < rows; a++)
            {
                for (var b = 0; b < left.Length; b++) kept[a * left.Length + b] = follows[slot][a * count + left[b]];
            }
            follows[slot] = kept;
        }
        if (slot + 1 < Slots.Length)
        {
            var columns = Slots[slot + 1].Nodes.Length;
            var kept = new bool[left.Length * columns];
            for (var a = 0; a < left.Length; a++) Array.Copy(follows[slot + 1], left[a] * columns, kept, a * columns, columns);
            follows[slot + 1] = kept;
        }
        (Slots[slot].Nodes, Slots[slot].Costs) = ([.. left.Select(n => Slots[slot].Nodes[n])], [.. left.Select(n => Slots[slot].Costs[n])]);
    }
}
