using Fretlore.Lesson.CallOuts.Telling;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.RoadMaps;

/// <summary>What a free stretch is in a breath or two: how much of it is free, which notes and where, what to land on and how it ends.</summary>
internal sealed class RoadMapHeadline(RoadMap map, RoadMapUse? use, Song song)
{
    // More targets than these are counted, not named.
    private const int TargetsNamed = 2;

    private readonly int count = use?.BarCount ?? Math.Max(map.LastNamedBar, 1);

    public Speech Tell()
    {
        var said = new Breaths();
        said.Say(HowFree());
        if (Notes() is { Length: > 0 } notes) said.Say(notes);
        if (Landings() is { Length: > 0 } landings) said.Say(landings);
        return new Speech(said.Sentences);
    }

    // "one bar is fixed, seven are free: no set notes, but rules"
    private string HowFree()
    {
        const string Free = "no set notes, but rules";
        if (use is null) return "a free stretch: " + Free;
        var isFixed = Enumerable.Range(1, count).Count(IsFixed);
        if (isFixed == 0) return $"{Bars(count)} {(count == 1 ? "is" : "are")} free: {Free}";
        return isFixed == count ? $"{Bars(count)}, all fixed" : $"{Bars(isFixed)} {(isFixed == 1 ? "is" : "are")} fixed, {NumberWords.Of(count - isFixed)} {(count - isFixed == 1 ? "is" : "are")} free: {Free}";
    }

    // A fixed phrase fills the bars it is given, or as many as it has from the one it begins in.
    private bool IsFixed(int bar) => map.RulesOf<FixedRule>().Any(rule =>
    {
        if (rule.Bars is not { } bars) return false;
        if (bars.Contains(bar, count)) return true;
        var first = RoadMapTeller.FirstBar(rule, count);
        return bars.In(count).Count() == 1 && bar > first && bar < first + (song.Riffs.FirstOrDefault(r => r.Name == rule.Riff)?.Bars.Count ?? 1);
    });

    // "D minor pentatonic, from fret fifteen to fret five"
    private string Notes()
    {
        var (scales, frets, strings) = (map.RulesOf<ScaleRule>().ToArray(), map.RulesOf<FretsRule>().ToArray(), map.RulesOf<StringsRule>().ToArray());
        var notes = scales.Length > 0 ? string.Join(", then ", scales.Take(2).Select(RuleWords.Scale)) : map.RulesOf<RolesRule>().Any() ? "the notes of the chords" : "";
        var place = frets.Length > 0 ? string.Join(", then ", frets.Take(2).Select(Place)) : strings.Length > 0 ? "on " + RuleWords.Strings(strings[0]) : "";
        return notes.Length > 0 && place.Length > 0 ? $"{notes}, {place}" : notes + place;
    }

    private static string Place(FretsRule frets)
    {
        var (from, to) = (NumberWords.Of(frets.From.Number), NumberWords.Of(frets.To.Number));
        if (frets.Moves) return $"from fret {from} to fret {to}";
        return frets.From == frets.To ? $"at fret {from}" : frets.From.IsOpen ? $"from the open strings to fret {to}" : $"frets {from} to {to}";
    }

    // "land on A in bar four and on D in bar eight, and end on D"
    private string Landings()
    {
        var aims = map.RulesOf<AimRule>().OrderBy(rule => RoadMapTeller.FirstBar(rule, count)).ToArray();
        var targets = aims.Length > TargetsNamed ? $"there are {NumberWords.Of(aims.Length)} notes to land on"
            : aims.Length > 0 ? "land " + SpokenList.Joined(aims.Select(aim => $"on {PitchWords.Of(aim.Target)}{RuleWords.Ending(aim.Bars)}"), "and") : "";
        var end = map.RulesOf<EndRule>().FirstOrDefault() is { } rule ? "end on " + PitchWords.Of(rule.Target) : "";
        return targets.Length > 0 && end.Length > 0 ? $"{targets}, and {end}" : targets + end;
    }

    private static string Bars(int bars) => bars == 1 ? "one bar" : NumberWords.Of(bars) + " bars";
}
