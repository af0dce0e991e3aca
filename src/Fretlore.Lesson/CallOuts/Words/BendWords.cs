using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Words;

/// <summary>Bends as spoken, one phrase a move: "bend it up a whole step", "let it down".</summary>
internal static class BendWords
{
    /// <summary>The bend goes back, all the way if no size follows.</summary>
    public const string Fall = "let it down";

    private static readonly (int Cents, string Words)[] Sizes =
    [
        (400, "two whole steps"), (300, "a step and a half"), (200, "a whole step"), (100, "a half step"), (50, "a quarter step"),
    ];

    /// <summary>The phrases in the order played, vibrato in its place.</summary>
    /// <param name="held">True when the note goes on from before, so that its first height needs no words.</param>
    public static IEnumerable<string> Of(Bend? bend, Vibrato vibrato, bool held)
    {
        if (bend is null)
        {
            if (VibratoWords(vibrato) is { } only) yield return only;
            yield break;
        }
        if (bend.FromCents != 0) yield return held ? "still bent up " + Size(bend.FromCents) : "pre-bent " + Size(bend.FromCents);
        var at = bend.FromCents;
        for (var move = 0; move <= bend.ToCents.Count; move++)
        {
            if (vibrato.AfterMoves == move && VibratoWords(vibrato) is { } words) yield return words;
            if (move == bend.ToCents.Count) break;
            var to = bend.ToCents[move];
            yield return Move(at, to);
            at = to;
        }
    }

    /// <summary>A size in cents: "a whole step", "a half step plus twenty cents".</summary>
    public static string Size(int cents)
    {
        foreach (var (size, words) in Sizes)
        {
            if (cents == size) return words;
            if (cents > size) return $"{words} plus {NumberWords.Of(cents - size)} cents";
        }
        return NumberWords.Of(Math.Max(0, cents)) + " cents";
    }

    /// <summary>Reads a size, articles and "and" taken out.</summary>
    public static bool TryReadSize(IReadOnlyList<string> words, ref int at, out int cents)
    {
        foreach (var (size, text) in Sizes)
        {
            var parts = text.Split(' ').Where(w => w is not ("a" or "and")).ToArray();
            if (!parts.SequenceEqual(words.Skip(at).Take(parts.Length))) continue;
            var place = at + parts.Length;
            cents = size;
            if (place < words.Count && words[place] == "plus")
            {
                place++;
                if (!NumberWords.TryRead(words, ref place, out var over) || place >= words.Count || words[place++] != "cents") return false;
                cents += over;
            }
            at = place;
            return true;
        }
        var from = at;
        if (!NumberWords.TryRead(words, ref from, out cents) || from >= words.Count || words[from++] != "cents") return false;
        at = from;
        return true;
    }

    private static string Move(int from, int to) => (from, to) switch
    {
        (0, > 0) => "bend it up " + Size(to),
        _ when to == from => "keep it there",
        _ when to > from => "push it on up to " + Size(to),
        (_, 0) => Fall,
        _ => $"{Fall} to {Size(to)}",
    };

    private static string? VibratoWords(Vibrato vibrato) => vibrato.Width switch
    {
        VibratoWidth.Normal => "with vibrato",
        VibratoWidth.Wide => "with wide vibrato",
        _ => null,
    };
}
