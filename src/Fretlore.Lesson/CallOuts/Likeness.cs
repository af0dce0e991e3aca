using Fretlore.Lesson.CallOuts.Telling;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts;

/// <summary>How a riff differs from another of as many bars with the same repeats.</summary>
/// <param name="Changed">The bars that differ in anything that is said of notes, by index.</param>
/// <param name="IsWhole">True when all bars differ.</param>
internal sealed record Likeness(ValueList<int> Changed, bool IsWhole)
{
    /// <summary>Compares two riffs bar by bar; null when their bars are not the same in number, metre and repeats.</summary>
    public static Likeness? Of(Riff riff, Riff basis)
    {
        if (basis.Content.Count != riff.Content.Count || !basis.Bars.Select(Shown).SequenceEqual(riff.Bars.Select(Shown))) return null;
        var changed = Enumerable.Range(0, riff.Content.Count).Where(i => BarForm.Of(riff.Content[i]) != BarForm.Of(basis.Content[i])).ToValueList();
        return new Likeness(changed, changed.Count == riff.Content.Count);
    }

    private static Bar Shown(Bar bar) => bar with { Number = 0, Tempos = default, Key = null, FeelChange = null };
}
