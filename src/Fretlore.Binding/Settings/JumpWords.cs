using System.Collections.Immutable;
using Fretlore.Binding.Draft;
using Fretlore.Score;

namespace Fretlore.Binding.Settings;

/// <summary>The words for jumps and the places they lead to, as printed on pages.</summary>
internal static class JumpWords
{
    private static readonly ImmutableArray<(string Words, Change Change)> All =
    [
        ("segno", new SegnoMark()),
        ("coda", new CodaMark()),
        ("to coda", new JumpMark(Jump.ToCoda)),
        ("fine", new JumpMark(Jump.Fine)),
        ("D.C.", new JumpMark(Jump.DaCapo)),
        ("D.C. al fine", new JumpMark(Jump.DaCapoAlFine)),
        ("D.C. al coda", new JumpMark(Jump.DaCapoAlCoda)),
        ("D.S.", new JumpMark(Jump.DalSegno)),
        ("D.S. al fine", new JumpMark(Jump.DalSegnoAlFine)),
        ("D.S. al coda", new JumpMark(Jump.DalSegnoAlCoda)),
    ];

    /// <summary>All of them as they are written.</summary>
    public static IEnumerable<string> Written => All.Select(w => w.Words);

    /// <summary>True for a word that begins one.</summary>
    public static bool Begins(string word) => All.Any(w => w.Words.Split(' ')[0].Equals(word, StringComparison.OrdinalIgnoreCase));

    /// <summary>What the words say; null when they are none of these.</summary>
    public static Change? Read(string words)
    {
        foreach (var (known, change) in All)
        {
            if (known.Equals(words, StringComparison.OrdinalIgnoreCase)) return change;
        }
        return null;
    }
}
