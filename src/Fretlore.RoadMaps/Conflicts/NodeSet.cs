using System.Numerics;

namespace Fretlore.RoadMaps.Conflicts;

/// <summary>A set of up to 512 places: nine strings, bends and all, are fewer.</summary>
internal readonly record struct NodeSet(ulong A, ulong B, ulong C, ulong D, ulong E, ulong F, ulong G, ulong H)
{
    public const int Most = 512;

    public bool IsEmpty => (A | B | C | D | E | F | G | H) == 0;

    public static NodeSet Of(int node)
    {
        var bit = 1UL << (node & 63);
        return (node >> 6) switch
        {
            0 => default(NodeSet) with { A = bit },
            1 => default(NodeSet) with { B = bit },
            2 => default(NodeSet) with { C = bit },
            3 => default(NodeSet) with { D = bit },
            4 => default(NodeSet) with { E = bit },
            5 => default(NodeSet) with { F = bit },
            6 => default(NodeSet) with { G = bit },
            _ => default(NodeSet) with { H = bit },
        };
    }

    public static NodeSet operator |(NodeSet a, NodeSet b) => new(a.A | b.A, a.B | b.B, a.C | b.C, a.D | b.D, a.E | b.E, a.F | b.F, a.G | b.G, a.H | b.H);

    public static NodeSet operator &(NodeSet a, NodeSet b) => new(a.A & b.A, a.B & b.B, a.C & b.C, a.D & b.D, a.E & b.E, a.F & b.F, a.G & b.G, a.H & b.H);

    public IEnumerable<int> Items
    {
        get
        {
            for (var word = 0; word < Most / 64; word++)
            {
                for (var bits = Word(word); bits != 0; bits &= bits - 1) yield return word * 64 + BitOperations.TrailingZeroCount(bits);
            }
        }
    }

    private ulong Word(int word) => word switch { 0 => A, 1 => B, 2 => C, 3 => D, 4 => E, 5 => F, 6 => G, _ => H };
}
