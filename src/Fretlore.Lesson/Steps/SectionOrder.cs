using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Lesson.Subjects;
using Fretlore.Score;

namespace Fretlore.Lesson.Steps;

/// <summary>What each part plays in a section, riff by riff: "Rhythm guitar: furnace three times, then furnace turn."</summary>
internal sealed class SectionOrder(Song song)
{
    public IEnumerable<string> Of(Subject section)
    {
        foreach (var place in section.Places)
        {
            var runs = Runs(place).Select(run => run.Times == 1 ? run.Name : $"{run.Name} {NumberWords.Times(run.Times)}").ToArray();
            if (runs.Length == 0) continue;
            var said = runs.Length == 1 ? runs[0] : string.Join(", ", runs[..^1]) + ", then " + runs[^1];
            var whose = section.Places.Count > 1 ? Spoken(song.Parts[place.Part].Title) + ": " : "";
            var sentence = whose + said;
            yield return char.ToUpperInvariant(sentence[0]) + sentence[1..] + ".";
        }
    }

    private List<(string Name, int Times)> Runs(Place place)
    {
        var end = place.FirstBar + place.BarCount;
        var runs = new List<(string Name, int Times)>();
        var uses = song.RiffUses.Where(u => u.Part == place.Part && u.FirstBar >= place.FirstBar && u.FirstBar < end).OrderBy(u => u.FirstBar).ToArray();
        for (var bar = place.FirstBar; bar < end;)
        {
            if (Array.Find(uses, u => u.FirstBar <= bar && bar < u.FirstBar + u.BarCount) is { } use)
            {
                var passes = Enumerable.Range(use.FirstBar, use.BarCount).Where(b => b < end).Select(b => song.Bars[b].RepeatCount).Append(1).Max();
                Add(SpokenName.Of(use.Riff), passes);
                bar = use.FirstBar + use.BarCount;
                continue;
            }
            var next = bar + 1;
            while (next < end && !Array.Exists(uses, u => u.FirstBar == next)) next++;
            var rests = Enumerable.Range(bar, next - bar).All(b => !song.Parts[place.Part].Bars[b].Notes.Any());
            Add($"{NumberWords.Of(next - bar)} {(next - bar == 1 ? "bar" : "bars")} {(rests ? "of rest" : "of its own")}", 1);
            bar = next;
        }
        return runs;

        void Add(string name, int times)
        {
            if (runs.Count > 0 && runs[^1].Name == name) runs[^1] = (name, runs[^1].Times + times);
            else runs.Add((name, times));
        }
    }

    private static string Spoken(string title) => SpokenName.Of(title);
}
