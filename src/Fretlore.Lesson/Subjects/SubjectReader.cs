using System.Collections.Immutable;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.CallOuts;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;

namespace Fretlore.Lesson.Subjects;

/// <summary>Finds what a lesson points at: its music, where it comes, how hard it is, what it needs first and why it matters.</summary>
public sealed class SubjectReader
{
    private readonly Song song;
    private readonly SongHands hands;
    private readonly SongClock clock;
    private readonly Importance importance;

    /// <param name="played">The song as it sounds.</param>
    /// <param name="hands">Its hand plan.</param>
    public SubjectReader(PerformedSong played, SongHands hands)
    {
        (song, this.hands, clock) = (played.Song, hands, new SongClock(played));
        importance = new Importance(song, clock);
    }

    /// <summary>The subject that a step points at. There must be one: the binder has checked it.</summary>
    public Subject Of(Taught what)
    {
        var riff = song.Riffs.FirstOrDefault(r => r.Name == what.Name);
        var subject = riff is not null ? OfRiff(what, riff)
            : song.Sections.FirstOrDefault(s => s.Name == what.Name) is { } section ? OfSection(what, section)
            : OfRoadMap(what, song.RoadMaps.First(m => m.Name == what.Name));
        subject = subject with { SecondsHeard = clock.SecondsOf(subject.Places) };
        subject = subject with { Share = clock.Seconds > 0 ? Math.Min(1, subject.SecondsHeard / clock.Seconds) : 0 };
        return importance.Told(subject);
    }

    private Subject OfRiff(Taught what, Riff riff)
    {
        var index = song.Riffs.Items.IndexOf(riff);
        var uses = song.RiffUses.Where(u => u.Riff == riff.Name).OrderBy(u => u.FirstBar).ThenBy(u => u.Part).ToArray();
        var (loads, whole) = (hands.Riffs[index].Bars, hands.Riffs[index].Whole.Difficulty);
        if (what.Bars is not { } range)
        {
            ValueList<string> needs = riff.VariationOf is { } model ? [model] : [];
            return New(what, SubjectKind.Riff, [new SubjectLine(riff, loads, whole)], uses.Select(u => new Place(u.Part, u.FirstBar, u.BarCount)), needs);
        }
        var (first, count) = Passage.Indexes(riff, range);
        var cut = loads.Slice(first, count);
        // Where the song has other written bars than the riff, such as a repeat of it, the whole use is meant.
        var places = uses.Select(u => u.BarCount == riff.Bars.Count ? new Place(u.Part, u.FirstBar + first, count) : new Place(u.Part, u.FirstBar, u.BarCount));
        return New(what, SubjectKind.Passage, [new SubjectLine(Passage.Of(riff, first, count, what.ToString()), cut, Hardest(cut))], places, []);
    }

    private Subject OfSection(Taught what, Section section)
    {
        var (first, count) = (section.FirstBar, section.BarCount);
        if (what.Bars is { } range) (first, count) = (section.FirstBar + range.First - 1, range.Last - range.First + 1);
        int[] parts = [.. Enumerable.Range(0, song.Parts.Count).Where(p => (what.Part is null || song.Parts[p].Name == what.Part) && Plays(p, first, count))];
        var lines = what.Bars is null
            ? parts.SelectMany(part => LinesOf(part, section, parts.Length > 1)).DistinctBy(line => line.Riff.Name)
            : parts.Select(part => Line(new Place(part, first, count), parts.Length > 1 ? $"{what} of {song.Parts[part].Name}" : what.ToString()));
        var riffs = song.RiffUses.Where(u => parts.Contains(u.Part) && u.FirstBar >= first && u.FirstBar < first + count).Select(u => u.Riff).Distinct();
        return New(what, what.Bars is null ? SubjectKind.Section : SubjectKind.Passage, lines.ToValueList(),
            parts.Select(part => new Place(part, first, count)), what.Bars is null ? riffs.ToValueList() : []);
    }

    private Subject OfRoadMap(Taught what, RoadMap map)
    {
        var places = song.RoadMapUses.Where(u => u.RoadMap == map.Name).Select(u => new Place(u.Part, u.FirstBar, u.BarCount));
        var riffs = map.RulesOf<FixedRule>().Select(f => f.Riff).Concat(map.RulesOf<LickRule>().SelectMany(l => l.Riffs.Items)).Distinct();
        return New(what, SubjectKind.RoadMap, [], places, riffs.ToValueList()) with { RoadMap = map };
    }

    // A section's riffs by name, and what lies between them as passages.
    private IEnumerable<SubjectLine> LinesOf(int part, Section section, bool namesPart)
    {
        var end = section.FirstBar + section.BarCount;
        var uses = song.RiffUses.Where(u => u.Part == part && u.FirstBar >= section.FirstBar && u.FirstBar < end).OrderBy(u => u.FirstBar).ToArray();
        for (var bar = section.FirstBar; bar < end;)
        {
            if (Array.Find(uses, u => u.FirstBar <= bar && bar < u.FirstBar + u.BarCount) is { } use)
            {
                var index = IndexOf(use.Riff);
                yield return new SubjectLine(song.Riffs[index], hands.Riffs[index].Bars, hands.Riffs[index].Whole.Difficulty);
                bar = use.FirstBar + use.BarCount;
                continue;
            }
            var next = bar + 1;
            while (next < end && !Array.Exists(uses, u => u.FirstBar == next)) next++;
            var (from, to) = (bar, next);
            while (from < to && song.Parts[part].Bars[from].IsRest) from++;
            while (to > from && song.Parts[part].Bars[to - 1].IsRest) to--;
            var bars = new BarRange(from - section.FirstBar + 1, to - section.FirstBar);
            if (to > from) yield return Line(new Place(part, from, to - from), new Taught(section.Name, bars, namesPart ? song.Parts[part].Name : null).ToString());
            bar = next;
        }
    }

    private int IndexOf(string riff) => Enumerable.Range(0, song.Riffs.Count).First(i => song.Riffs[i].Name == riff);

    private SubjectLine Line(Place place, string name)
    {
        var loads = hands.Parts[place.Part].Bars.Slice(place.FirstBar, place.BarCount);
        return new SubjectLine(Passage.Of(song, place, name), loads, Hardest(loads));
    }

    private bool Plays(int part, int first, int count) =>
        Enumerable.Range(first, count).Any(bar => !song.Parts[part].Bars[bar].IsRest && song.Parts[part].Bars[bar].Notes.Any());

    private static Difficulty Hardest(ImmutableArray<HandLoad> loads) => loads.Select(l => l.Difficulty).DefaultIfEmpty(Difficulty.None).Max();

    private static Subject New(Taught what, SubjectKind kind, ValueList<SubjectLine> lines, IEnumerable<Place> places, ValueList<string> needs) =>
        new(what, kind, lines, null, places.ToValueList(), needs, Speech.Silence);
}
