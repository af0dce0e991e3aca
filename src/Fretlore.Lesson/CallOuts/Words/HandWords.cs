using Fretlore.Hands.Grips;
using Fretlore.Hands.Plans;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Words;

/// <summary>What a teacher says of the fretting hand, where it matters: the positions it goes through, and the place that is hard.</summary>
internal static class HandWords
{
    // More positions than these are no help to hear.
    private const int MostPositions = 3;

    /// <summary>For example <c>the hand goes from fifth to eighth position</c>; null where no position is worth naming.</summary>
    public static string? Positions(Riff riff, SongHands hands)
    {
        var positions = new List<int>();
        foreach (var stay in HandStay.Of(riff.Content, hands))
        {
            if (stay.IsWorthNaming && (positions.Count == 0 || positions[^1] != stay.Position)) positions.Add(stay.Position);
        }
        return positions.Count switch
        {
            0 => null,
            1 => $"The hand stands in {NumberWords.Ordinal(positions[0])} position",
            MostPositions when positions[0] == positions[^1] => $"The hand goes from {NumberWords.Ordinal(positions[0])} to {NumberWords.Ordinal(positions[1])} position and back",
            <= MostPositions => $"The hand goes from {string.Join(" to ", positions.Select(NumberWords.Ordinal))} position",
            _ => $"The hand moves between {NumberWords.Ordinal(positions.Min())} and {NumberWords.Ordinal(positions.Max())} position",
        };
    }

    /// <summary>For example <c>mind the stretch in bar two</c>; null for a riff that is not demanding.</summary>
    public static string? HardPlace(Riff riff, SongHands hands)
    {
        if (hands.Riffs.FirstOrDefault(line => line.Name == riff.Name) is not { Whole.Difficulty: >= Difficulty.Demanding } line) return null;
        var hardest = Enumerable.Range(0, line.Bars.Length).MaxBy(bar => line.Bars[bar].Cost);
        var what = Enum.GetValues<Effort>().Where(effort => WordOf(effort) is not null).MaxBy(effort => line.Bars[hardest].ByEffort[(int)effort]);
        if (line.Bars[hardest].ByEffort[(int)what] == 0) return null;
        return $"Mind {WordOf(what)}{(line.Bars.Length > 1 ? " in bar " + NumberWords.Of(riff.Bars[hardest].Number) : "")}";
    }

    /// <summary>What may be minded.</summary>
    public static IEnumerable<string> Places => Enum.GetValues<Effort>().Select(WordOf).OfType<string>().Distinct();

    private static string? WordOf(Effort effort) => effort switch
    {
        Effort.Stretch => "the stretch",
        Effort.Cramp => "the crowded fingers",
        Effort.Barre => "the barre",
        Effort.Shift or Effort.Hurry => "the change of position",
        Effort.Hop => "the finger that is needed twice",
        Effort.Legato => "the slur",
        Effort.LostNote => "the note that has to sound on",
        _ => null,
    };
}
