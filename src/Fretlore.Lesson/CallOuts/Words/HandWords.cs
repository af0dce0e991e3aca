using Fretlore.Hands.Grips;
using Fretlore.Hands.Plans;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Words;

/// <summary>What a teacher says of the fretting hand, where it matters: the place that is hard.</summary>
internal static class HandWords
{
    /// <summary>For example <c>mind the stretch in bar two</c>; null for a riff that is not demanding.</summary>
    public static string? HardPlace(Riff riff, SongHands hands)
    {
        if (hands.Riffs.FirstOrDefault(line => line.Name == riff.Name) is not { Whole.Difficulty: >= Difficulty.Demanding } line) return null;
        var hardest = Enumerable.Range(0, line.Bars.Length).MaxBy(bar => line.Bars[bar].Cost);
        var what = Enum.GetValues<Effort>().Where(effort => WordOf(effort) is not null).MaxBy(effort => line.Bars[hardest].ByEffort[(int)effort]);
        if (line.Bars[hardest].ByEffort[(int)what] == 0) return null;
        return $"Mind {WordOf(what)}{(line.Bars.Length > 1 ? " in bar " + NumberWords.Of(riff.Bars[hardest].Number) : "")}";
    }

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
