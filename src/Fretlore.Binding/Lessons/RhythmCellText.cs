using Fretlore.Binding.Lines;
using Fretlore.Binding.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Binding.Lessons;

/// <summary>Rhythm cells as a sheet has them: <c>ESS</c>, <c>Q.E</c>, <c>E:3</c>, <c>S:5/4</c>.</summary>
public static class RhythmCellText
{
    /// <summary>The cell; null when the text is none.</summary>
    public static RhythmCell? Read(string text)
    {
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        var values = TimeCell.ReadValues(colon < 0 ? text : text[..colon]);
        if (values.IsEmpty) return null;
        if (colon < 0) return new RhythmCell(values.ToValueList());
        var ratio = text[(colon + 1)..].Split('/').Select(n => Numerals.Of(n) ?? 0).ToArray();
        if (values.Length > 1 || ratio.Length > 2 || ratio[0] is < 2 or > 16) return null;
        var time = ratio.Length == 2 ? ratio[1] : Tuplet.UsualTimeOf(ratio[0]);
        return time is < 1 or > 16 || time == ratio[0] ? null
            : new RhythmCell(Enumerable.Repeat(values[0], ratio[0]).ToValueList(), new Tuplet(ratio[0], time, values[0].Base));
    }
}
