using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Performance;

/// <summary>Splits tremolo-picked notes into strokes.</summary>
/// <remarks>Strokes of a span that names no value are 32nds (common practice). What is left at the end belongs to the last stroke.</remarks>
internal static class TremoloPicking
{
    public static List<(Beats Start, Beats End)> StrokesOf(Sounding note)
    {
        var strokes = new List<(Beats Start, Beats End)>();
        foreach (var value in note.Values)
        {
            var (start, end) = (value.Start, Beats.Min(value.End, note.Release));
            if (end <= start) continue;
            if (StrokeOf(value) is not { } stroke)
            {
                if (strokes.Count == 0) strokes.Add((start, end));
                continue;
            }
            var length = Beats.Of(4, (int)stroke);
            var count = Math.Max(1, (end - start).WholeCount(length));
            for (var i = 0; i < count; i++) strokes.Add((start + length * i, start + length * (i + 1)));
        }
        if (strokes.Count == 0) return [(note.Onset, note.Release)];
        for (var i = 0; i < strokes.Count; i++)
            strokes[i] = (strokes[i].Start, i + 1 < strokes.Count ? strokes[i + 1].Start : note.Release);
        return strokes;
    }

    private static ValueBase? StrokeOf(SoundingValue value) => value.Note.Tremolo
        ?? (value.Spans.HasFlag(Spans.TremoloPicking) ? ValueBase.ThirtySecond : null);
}
