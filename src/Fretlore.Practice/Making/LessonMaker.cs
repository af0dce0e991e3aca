using Fretlore.Hands.Plans;
using Fretlore.Performance;
using Fretlore.Practice.Data;
using Fretlore.Score;

namespace Fretlore.Practice.Making;

/// <summary>The steps of the lesson with what the page shows beside each.</summary>
internal sealed class LessonMaker(PerformedSong performed, SongHands hands, TheoryMaker theory)
{
    /// <summary>Times through at each speed of a step in one sitting, by judgement.</summary>
    private const int Rounds = 8;

    private const int LeastMinutes = 2, MostMinutes = 20;

    private readonly Song song = performed.Song;

    public StepData Of(PracticeStep step)
    {
        var stretches = step.Teaches.SelectMany(StretchesOf).ToArray();
        var load = step.Teaches.Select(name => hands.Riffs.FirstOrDefault(riff => riff.Name == name)?.Whole).OfType<HandLoad>()
            .OrderByDescending(l => l.Difficulty).FirstOrDefault();
        return new StepData
        {
            Title = step.Title,
            Teaches = [.. step.Teaches],
            Speeds = [.. step.SpeedPercents],
            Say = step.Say,
            CallOuts = [.. step.CallOuts.Select(c => new CallOutData(c.Name, [.. c.Headline], [.. c.WalkThrough], [.. c.NoteByNote]))],
            Versions = [.. step.Versions.Select(v => new VersionData(v.Name, v.Title, v.Hand, v.Fingers.Length == 0 ? null : v.Fingers, v.Tab))],
            Shapes = [.. step.Teaches.SelectMany(ShapesOf).Distinct()],
            Chords = [.. stretches.SelectMany(s => theory.ChordsIn(s.Part, s.FirstBar, s.BarCount)).Distinct()],
            Scales = [.. stretches.SelectMany(s => theory.ScalesIn(s.Part, s.FirstBar, s.BarCount)).Distinct()],
            Difficulty = load?.Difficulty.ToString().ToLowerInvariant(),
            Hard = load is null ? [] : [.. load.Reasons],
            Minutes = MinutesOf(stretches, step.SpeedPercents.Count == 0 ? [100] : [.. step.SpeedPercents]),
        };
    }

    // Where it comes first; a section is all parts'.
    private IEnumerable<(int Part, int FirstBar, int BarCount)> StretchesOf(string name)
    {
        if (song.RiffUses.Where(u => u.Riff == name).MinBy(u => u.FirstBar) is { } use) return [(use.Part, use.FirstBar, use.BarCount)];
        if (song.RoadMapUses.Where(u => u.RoadMap == name).MinBy(u => u.FirstBar) is { } free) return [(free.Part, free.FirstBar, free.BarCount)];
        if (song.Sections.FirstOrDefault(s => s.Name == name) is { } section) return Enumerable.Range(0, song.Parts.Count).Select(part => (part, section.FirstBar, section.BarCount));
        return [];
    }

    private IEnumerable<string> ShapesOf(string name)
    {
        var content = song.Riffs.FirstOrDefault(r => r.Name == name)?.Content.Items
            ?? song.Sections.Where(s => s.Name == name).SelectMany(s => song.Parts.SelectMany(p => p.Bars.Skip(s.FirstBar).Take(s.BarCount)));
        return content.SelectMany(bar => bar.Strands).SelectMany(strand => strand.Events).Select(e => e.Shape).OfType<string>();
    }

    private int MinutesOf((int Part, int FirstBar, int BarCount)[] stretches, int[] speeds)
    {
        var seconds = stretches.Select(s => (s.FirstBar, s.BarCount)).Distinct().Sum(s => SecondsOf(s.FirstBar, s.BarCount));
        var minutes = speeds.Sum(speed => Rounds * seconds * 100 / speed) / 60;
        return Math.Clamp((int)Math.Ceiling(minutes), LeastMinutes, MostMinutes);
    }

    private double SecondsOf(int firstBar, int barCount)
    {
        double seconds = 0;
        for (var i = 0; i < performed.Bars.Length; i++)
        {
            var played = performed.Bars[i];
            if (played.Pass > 1 || played.Bar < firstBar || played.Bar >= firstBar + barCount) continue;
            seconds += (i + 1 < performed.Bars.Length ? performed.Bars[i + 1].StartSeconds : performed.Seconds) - played.StartSeconds;
        }
        return seconds;
    }
}
