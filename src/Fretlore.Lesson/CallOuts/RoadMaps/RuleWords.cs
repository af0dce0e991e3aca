using Fretlore.Lesson.CallOuts.Telling;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.RoadMaps;

/// <summary>The rules of a road map as a teacher gives them to a player.</summary>
internal static class RuleWords
{
    /// <summary>One rule in one line.</summary>
    public static string Of(RoadMapRule rule) => string.Join(' ', Sentences(rule));

    /// <summary>One rule as sentences, each short enough for a breath unless a single name is too long for it.</summary>
    public static IEnumerable<string> Sentences(RoadMapRule rule) => rule switch
    {
        FixedRule phrase => [$"{Opening(phrase.Bars)}play the phrase {SpokenName.Of(phrase.Riff)} as it stands.".Capitalised()],
        ScaleRule scale => [$"{Opening(scale.Bars)}play from {Scale(scale)}.".Capitalised()],
        RolesRule roles => SpokenList.Of(Opening(roles.Bars) + "land on the chord's", "Or on its", roles.Roles.Select(Role), "or", "on strong beats"),
        StringsRule strings => [$"{Opening(strings.Bars)}stay on {Strings(strings)}.".Capitalised()],
        FretsRule frets => [$"{Opening(frets.Bars)}{Frets(frets)}.".Capitalised()],
        ContourRule contour => [$"{Opening(contour.Bars)}{Contours(contour.Shape)}.".Capitalised()],
        DensityRule density => [$"{Opening(density.Bars)}{Density(density)}.".Capitalised()],
        RhythmRule rhythm => SpokenList.Of(Opening(rhythm.Bars) + "build the rhythm from", "Or from", rhythm.Cells.Select(CellWords.Of), "or", separator: ";"),
        LickRule licks => SpokenList.Of(Opening(licks.Bars) + "you may draw on", "Or on", licks.Riffs.Select(SpokenName.Of), "or"),
        AimRule aim => Reached($"Aim for {PitchWords.Of(aim.Target)}{On(aim.String)}{Beat(aim.Beat)}{Ending(aim.Bars)}", aim.How),
        AvoidRule avoid => SpokenList.Of(Opening(avoid.Bars) + "keep away from", "And from", avoid.What.Select(Thing), "and"),
        EndRule end => [.. Reached($"End on {PitchWords.Of(end.Target)}{On(end.String)}", end.How), .. end.IsHeld ? ["Let it ring to the end."] : Array.Empty<string>()],
        _ => [rule + "."],
    };

    /// <summary>"D minor pentatonic", with the tonic's sign as a word.</summary>
    public static string Scale(ScaleRule scale) => $"{PitchWords.Of(scale.Tonic)} {scale.Name}";

    /// <summary>"string two", "strings four to one".</summary>
    public static string Strings(StringsRule strings) => strings.Highest == strings.Lowest
        ? $"string {NumberWords.Of(strings.Lowest.Value)}"
        : $"strings {NumberWords.Of(strings.Lowest.Value)} {(strings.Lowest.Value == strings.Highest.Value + 1 ? "and" : "to")} {NumberWords.Of(strings.Highest.Value)}";

    /// <summary>" in bar four", or nothing for a rule for all bars.</summary>
    public static string Ending(StretchBars? bars) => bars is null ? "" : $" in {Bars(bars)}";

    private static string Role(ToneRole role) => role.ToString().ToLowerInvariant();

    private static string Opening(StretchBars? bars) => bars is null ? "" : $"in {Bars(bars)} ";

    private static string Bars(StretchBars bars)
    {
        if (bars.Ranges is [{ First: < 0 } final]) return final.First == -1 ? "the last bar" : $"the last {NumberWords.Of(-final.First)} bars";
        var ranges = bars.Ranges.Select(r => r.First == r.Last ? NumberWords.Of(r.First)
            : $"{NumberWords.Of(r.First)} {(r.Last == r.First + 1 && bars.Ranges.Count == 1 ? "and" : "to")} {NumberWords.Of(r.Last)}");
        var isOne = bars.Ranges is [{ } range] && range.First == range.Last;
        return (isOne ? "bar " : "bars ") + SpokenList.Joined(ranges, "and");
    }

    private static string Frets(FretsRule frets)
    {
        var (from, to) = (NumberWords.Of(frets.From.Number), NumberWords.Of(frets.To.Number));
        if (frets.Moves) return $"start around fret {from} and get to fret {to}";
        return frets.From == frets.To ? $"stay at fret {from}"
            : frets.From.IsOpen ? $"stay between the open strings and fret {to}" : $"stay between frets {from} and {to}";
    }

    private static string Density(DensityRule density) => density.Slowest == density.Fastest
        ? $"mostly {ValueWords.Plain(density.Slowest)}"
        : $"mostly {ValueWords.Plain(density.Slowest)} to {ValueWords.Plain(density.Fastest)}";

    private static string Contours(Contour contour) => contour switch
    {
        Contour.Rising => "let the line climb",
        Contour.Falling => "let the line fall",
        Contour.Arch => "let the line climb to a top and come down again",
        Contour.Valley => "let the line go down to the bottom and climb again",
        Contour.Level => "keep the line at one height",
        _ => "let the line go up and down in turn",
    };

    private static string On(Guitar.StringNumber? number) => number is { } on ? $" on string {NumberWords.Of(on.Value)}" : "";

    private static string Beat(int? beat) => beat is { } number ? $" on beat {NumberWords.Of(number)}" : "";

    private static IEnumerable<string> Reached(string target, Approach? how)
    {
        if (how is null) return [target + "."];
        var way = PitchWords.InText(how.ToString());
        var both = $"{target}, reached {way}.";
        return SpokenList.Words(both) <= Breaths.Limit ? [both] : [target + ".", $"Reach it {way}."];
    }

    private static string Thing(Avoided thing) => thing is Avoided.Note note ? PitchWords.Of(note.Name) : thing.ToString();

    private static string Capitalised(this string sentence) => char.ToUpperInvariant(sentence[0]) + sentence[1..];
}
