using Fretlore.Lesson.Licks;
using Fretlore.Lesson.Subjects;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Overlays;

/// <summary>A riff as it is played, so many times through: repeats written out, each note with an id of its own, so that a tab can pass by without going back.</summary>
internal static class UnrolledRiff
{
    public static Riff Of(Riff riff, int times)
    {
        var order = Enumerable.Repeat(PlayOrder.Of(riff.Bars), times).SelectMany(pass => pass).Select(played => played.Bar).ToArray();
        var bars = order.Select((bar, i) => riff.Bars[bar] with
        {
            Number = i + 1,
            StartsRepeat = false,
            RepeatCount = 0,
            EndingPasses = [],
            StartsEnding = false,
            EndsEnding = false,
            Tempos = i == 0 || bar > 0 ? riff.Bars[bar].Tempos : [],
            EndLine = i + 1 == order.Length ? BarLine.Final : BarLine.Single,
        });
        var unrolled = riff with { Bars = bars.ToValueList(), Content = CutBars.Of(order.Select(bar => riff.Content[bar] with { Repeats = 0 })), VariationOf = null };
        return LickCard.Numbered(unrolled);
    }
}
