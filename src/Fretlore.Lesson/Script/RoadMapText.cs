using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Score;

namespace Fretlore.Lesson.Script;

/// <summary>The rules of a road map as a teacher gives them to a player, a sentence each.</summary>
internal static class RoadMapText
{
    public static IEnumerable<string> Of(RoadMap map) => map.Rules.Select(Of);

    /// <summary>One rule as a sentence.</summary>
    public static string Of(RoadMapRule rule) => rule switch
    {
        FixedRule phrase => $"{Opening(phrase.Bars)}play the phrase {SpokenName.Of(phrase.Riff)} as it stands.".Capitalised(),
        ScaleRule scale => $"{Opening(scale.Bars)}play from {PitchWords.Of(scale.Tonic)} {scale.Name}.".Capitalised(),
        RolesRule roles => $"{Opening(roles.Bars)}on the strong beats land on the {Listed(roles.Roles.Select(r => r.ToString().ToLowerInvariant()), "or")} of the chord.".Capitalised(),
        StringsRule strings => $"{Opening(strings.Bars)}stay on {Strings(strings)}.".Capitalised(),
        FretsRule frets => Opening(frets.Bars, Frets(frets)),
        ContourRule contour => Opening(contour.Bars, Contours(contour.Shape)),
        DensityRule density => Opening(density.Bars, density.Slowest == density.Fastest
            ? $"mostly {ValueWords.Plain(density.Slowest)}"
            : $"mostly {ValueWords.Plain(density.Slowest)} to {ValueWords.Plain(density.Fastest)}"),
        RhythmRule rhythm => Opening(rhythm.Bars, "build your bars from these cells: " + string.Join("; ", rhythm.Cells.Select(Cell))),
        LickRule licks => $"You may draw on {Listed(licks.Riffs.Select(SpokenName.Of), "or")}{Ending(licks.Bars)}.",
        AimRule aim => $"Aim for {PitchWords.Of(aim.Target)}{On(aim.String)}{Beat(aim.Beat)}{Ending(aim.Bars)}{How(aim.How)}.",
        AvoidRule avoid => $"Keep away from {Listed(avoid.What.Select(Thing), "and")}{Ending(avoid.Bars)}.",
        EndRule end => $"End on {PitchWords.Of(end.Target)}{On(end.String)}{How(end.How)}{(end.IsHeld ? ", and let it ring to the end" : "")}.",
        _ => rule + ".",
    };

    private static string Opening(StretchBars? bars, string rule) => $"{Opening(bars)}{rule}.".Capitalised();

    private static string Opening(StretchBars? bars) => bars is null ? "" : $"in {Bars(bars)} ";

    private static string Ending(StretchBars? bars) => bars is null ? "" : $" in {Bars(bars)}";

    private static string Bars(StretchBars bars)
    {
        if (bars.Ranges is [{ First: < 0 } final]) return final.First == -1 ? "the last bar" : $"the last {NumberWords.Of(-final.First)} bars";
        var ranges = bars.Ranges.Select(r => r.First == r.Last ? NumberWords.Of(r.First) : $"{NumberWords.Of(r.First)} to {NumberWords.Of(r.Last)}");
        var isOne = bars.Ranges is [{ } range] && range.First == range.Last;
        return (isOne ? "bar " : "bars ") + Listed(ranges, "and");
    }

    private static string Strings(StringsRule strings) => strings.Highest == strings.Lowest
        ? $"string {NumberWords.Of(strings.Lowest.Value)}"
        : $"strings {NumberWords.Of(strings.Lowest.Value)} to {NumberWords.Of(strings.Highest.Value)}";

    private static string Frets(FretsRule frets)
    {
        var (from, to) = (NumberWords.Of(frets.From.Number), NumberWords.Of(frets.To.Number));
        if (frets.Moves) return $"start around fret {from} and get to fret {to}";
        return frets.From == frets.To ? $"stay at fret {from}" : $"stay between frets {from} and {to}";
    }

    private static string Contours(Contour contour) => contour switch
    {
        Contour.Rising => "let the line climb",
        Contour.Falling => "let the line fall",
        Contour.Arch => "let the line climb to a top and come down again",
        Contour.Valley => "let the line go down to the bottom and climb again",
        Contour.Level => "keep the line at one height",
        _ => "let the line go up and down in turn",
    };

    private static string Cell(RhythmCell cell) => cell.Tuplet is not null
        ? ValueWords.Many(cell.Values[0], cell.Tuplet)
        : string.Join(", ", cell.Values.Select(v => ValueWords.One(v, null)));

    private static string On(Guitar.StringNumber? number) => number is { } on ? $" on string {NumberWords.Of(on.Value)}" : "";

    private static string Beat(int? beat) => beat is { } number ? $" on beat {NumberWords.Of(number)}" : "";

    private static string How(Approach? how) => how is null ? "" : ", reached " + PitchWords.InText(how.ToString());

    private static string Thing(Avoided thing) => thing is Avoided.Note note ? PitchWords.Of(note.Name) : thing.ToString();

    private static string Listed(IEnumerable<string> words, string joint)
    {
        var list = words.ToList();
        return list.Count < 2 ? string.Concat(list) : string.Join(", ", list[..^1]) + $" {joint} {list[^1]}";
    }

    private static string Capitalised(this string sentence) => char.ToUpperInvariant(sentence[0]) + sentence[1..];
}
