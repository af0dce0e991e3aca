using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Subjects;

/// <summary>Says why a subject matters: how often and where it comes, what it opens, and what only it has.</summary>
internal sealed class Importance(Song song, SongClock clock)
{
    private const int MostSectionsNamed = 4;

    // From the largest share of the song down.
    private static readonly (double From, string Words)[] Shares =
        [(0.9, "nearly the whole song"), (0.6, "more than half of the song"), (0.45, "half of the song"), (0.3, "a third of the song"), (0.22, "a quarter of the song")];

    private static readonly (string Words, Func<Event, Note, bool> Uses)[] Techniques =
    [
        ("bends", (_, n) => n.Bend is { PeakCents: > 0 }),
        ("taps", (_, n) => n.Attack == Attack.Tap),
        ("harmonics", (_, n) => n.Harmonic is not null),
        ("slides", (_, n) => n.Attack is Attack.Glide or Attack.PickedGlide),
        ("tremolo picking", (e, n) => n.Tremolo is not null || e.Spans.HasFlag(Spans.TremoloPicking)),
        ("palm mutes", (_, n) => n.IsPalmMuted),
        ("triplets", (e, _) => e.Tuplet is { Count: 3 }),
    ];

    /// <summary>The subject with its reasons.</summary>
    public Subject Told(Subject subject)
    {
        var only = OnlyHere(subject);
        var said = new List<string> { HowOften(subject) };
        if (Shares.FirstOrDefault(s => subject.Share >= s.From).Words is { } share && subject.Kind != SubjectKind.Section && !subject.IsSilent) said.Add($"That is {share}.");
        var opens = subject.Kind == SubjectKind.Riff && subject.Places.Any(p => p.FirstBar == FirstSounding());
        if (opens) said.Add("The song opens with it.");
        if (only is not null) said.Add($"It is the only place with {only}.");
        return subject with { Why = new Speech(said.ToValueList()), HasOwnTechnique = only is not null, OpensSong = opens };
    }

    private string HowOften(Subject subject)
    {
        if (subject.Places.Count == 0)
        {
            var draws = song.RoadMaps.FirstOrDefault(map => map.RulesOf<LickRule>().Any(rule => rule.Riffs.Contains(subject.What.Name)));
            return draws is not null ? $"The solo by rules {SpokenName.Of(draws.Name)} may draw on it." : "The song as it stands does not play it, so it is here to practise.";
        }
        if (subject.Kind == SubjectKind.Section) return "This is where the pieces come together.";
        return $"It comes {NumberWords.Times(clock.TimesOf(subject.Places))}{Where(subject.Places)}.";
    }

    // ", in the intro, verse one and the outro"; nothing where there is but one section.
    private string Where(ValueList<Place> places)
    {
        var sections = places.Select(place => song.Sections.LastOrDefault(s => s.FirstBar <= place.FirstBar && place.FirstBar < s.FirstBar + s.BarCount)?.Name)
            .OfType<string>().Distinct().ToArray();
        if (sections.Length == 0 || song.Sections.Count < 2) return "";
        if (sections.Length > MostSectionsNamed) return $", in {NumberWords.Of(sections.Length)} sections of the song";
        return ", in " + SectionWords.Listed(sections);
    }

    private int FirstSounding()
    {
        for (var bar = 0; bar < song.Bars.Count; bar++)
        {
            if (song.Parts.Any(part => part.Bars[bar].Notes.Any())) return bar;
        }
        return -1;
    }

    private string? OnlyHere(Subject subject)
    {
        if (subject.Places.Count == 0 || subject.Kind == SubjectKind.Section) return null;
        var here = subject.Places.SelectMany(p => Enumerable.Range(p.FirstBar, p.BarCount).Select(bar => (p.Part, bar))).ToHashSet();
        foreach (var (words, uses) in Techniques)
        {
            var (inside, outside) = (false, false);
            for (var part = 0; part < song.Parts.Count && !outside; part++)
            {
                for (var bar = 0; bar < song.Bars.Count && !outside; bar++)
                {
                    if (!Uses(song.Parts[part].Bars[bar], uses)) continue;
                    if (here.Contains((part, bar))) inside = true;
                    else outside = true;
                }
            }
            if (inside && !outside) return words;
        }
        return null;
    }

    private static bool Uses(PartBar bar, Func<Event, Note, bool> uses) => bar.Strands.Any(s => s.Events.Any(e => e.Notes.Any(n => uses(e, n))));
}
