using Fretlore.Hands.Plans;
using Fretlore.Lesson.CallOuts.ReadingBack;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Words;

/// <summary>The positions that the hand goes through in a riff, to say and to understand.</summary>
/// <param name="InOrder">Up to three, in order; or the lowest and the highest of more.</param>
/// <param name="IsBetween">True for the lowest and the highest of more.</param>
internal sealed record HandPositions(ValueList<int> InOrder, bool IsBetween)
{
    // More positions than these are no help to hear.
    private const int Most = 3;

    /// <summary>The positions of a riff that are worth naming; null where there are none.</summary>
    public static HandPositions? Of(Riff riff, SongHands hands)
    {
        var positions = new List<int>();
        foreach (var stay in HandStay.Of(riff.Content, hands))
        {
            if (stay.IsWorthNaming && (positions.Count == 0 || positions[^1] != stay.Position)) positions.Add(stay.Position);
        }
        if (positions.Count == 0) return null;
        return positions.Count > Most ? new HandPositions([positions.Min(), positions.Max()], true) : new HandPositions(positions.ToValueList(), false);
    }

    /// <summary>For example <c>the hand goes from fifth to eighth position</c>.</summary>
    public string Words
    {
        get
        {
            string[] words = [.. InOrder.Select(NumberWords.Ordinal)];
            if (IsBetween) return $"The hand moves between {words[0]} and {words[1]} position";
            if (words.Length == 1) return $"The hand stands in {words[0]} position";
            return words.Length == Most && InOrder[0] == InOrder[^1] ? $"The hand goes from {words[0]} to {words[1]} position and back" : $"The hand goes from {string.Join(" to ", words)} position";
        }
    }

    /// <summary>Reads such a sentence, articles and "and" taken out.</summary>
    public static bool TryRead(WordRow row, out HandPositions? read)
    {
        read = null;
        if (!row.Take("hand")) return false;
        var isBetween = row.Take("moves between");
        if (!isBetween && !row.Take("stands in") && !row.Take("goes from")) return false;
        var positions = new List<int>();
        while (NumberWords.OrdinalValue(row.Current) is > 0 and var position)
        {
            positions.Add(position);
            row.Place++;
            row.Take("to");
        }
        if (positions.Count == 0 || !row.Take("position")) return false;
        if (row.Take("back")) positions.Add(positions[0]);
        read = new HandPositions(positions.ToValueList(), isBetween);
        return true;
    }
}
