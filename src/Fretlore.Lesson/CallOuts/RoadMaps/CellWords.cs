using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.RoadMaps;

/// <summary>Rhythm cells as spoken: "an eighth and two sixteenths", "a dotted quarter and an eighth", "triplets".</summary>
internal static class CellWords
{
    public static string Of(RhythmCell cell)
    {
        if (cell.Tuplet is { } tuplet) return ValueWords.Many(cell.Values[0], tuplet);
        var runs = new List<(NoteValue Value, int Count)>();
        foreach (var value in cell.Values)
        {
            if (runs.Count > 0 && runs[^1].Value == value) runs[^1] = (value, runs[^1].Count + 1);
            else runs.Add((value, 1));
        }
        return SpokenList.Joined(runs.Select(run => run.Count == 1 ? ValueWords.One(run.Value, null) : $"{NumberWords.Of(run.Count)} {ValueWords.Many(run.Value, null)}"), "and");
    }
}
