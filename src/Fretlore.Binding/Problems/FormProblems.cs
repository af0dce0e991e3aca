using Fretlore.Music;
using Fretlore.Syntax;
using static Fretlore.Binding.Problems.Finding;

namespace Fretlore.Binding.Problems;

/// <summary>What can be wrong with riffs, repeats, sections and the parts beside each other: FL2250 to FL2299.</summary>
internal static class FormProblems
{
    public static Diagnostic RiffPlaysItself(TextSpan span, string riff, string name) => Error("FL2250", span,
        riff == name ? $"Riff `{Shown(riff)}` plays itself." : $"Riff `{Shown(riff)}` plays `{Shown(name)}`, which leads back to it.",
        "A riff can play only riffs that don't lead back to it; write the music out here.");

    public static Diagnostic RiffsNestTooDeep(TextSpan span, int deepest) => Error("FL2251", span,
        $"Riffs play riffs more than {deepest} deep here.",
        "Write the music of some of them out.");

    public static Diagnostic RiffOfOtherTuning(TextSpan span, string riff, string written, string played) => Error("FL2252", span,
        $"Riff `{Shown(riff)}` is written for {written}, and this part is tuned {played}.",
        "Say `as fretted` after its name to keep its frets, or `as sounded` to keep its pitches.");

    public static Diagnostic NoSuchBar(TextSpan span, string riff, int count) => Error("FL2253", span,
        $"Riff `{Shown(riff)}` has no such bar: it has {Bars(count)}.",
        count > 0 ? $"Name bars from 1 to {count}, or `last bar`." : "Write the riff's music first.");

    public static Diagnostic BarEditedTwice(TextSpan span) => Error("FL2254", span,
        "A bar named here is changed by this variation already.",
        "Change each bar once; numbers are those of the riff that is varied.");

    public static Diagnostic EditAcrossRepeat(TextSpan span) => Error("FL2255", span,
        "These bars reach over the border of a repeat.",
        "Change the bars within the repeat and those outside it by an edit each.");

    public static Diagnostic NoTimes(TextSpan span) => Error("FL2256", span,
        "Nothing can be played 0 times.",
        "Write 1 or more, or take the music out.");

    public static Diagnostic NothingToRepeat(TextSpan span) => Error("FL2257", span,
        "This repeat has no music in it.",
        "Write bars between its braces.");

    public static Diagnostic EndingOfNoPass(TextSpan span, int pass, int count) => Error("FL2258", span,
        $"There is no pass {pass}: the repeat is played {count} times.",
        $"Name passes from 1 to {count}.");

    public static Diagnostic TwoEndingsOfOnePass(TextSpan span, int pass) => Error("FL2259", span,
        $"Pass {pass} has an ending already.",
        "Give each pass one ending.");

    public static Diagnostic PassWithoutEnding(TextSpan span, int pass) => Warning("FL2260", span,
        $"Pass {pass} has no ending, so it goes straight on.",
        $"Write `on {pass}{{ … }}`, or name the pass in another ending: `on 1,{pass}{{ … }}`.");

    public static Diagnostic AgainCount(TextSpan span) => Error("FL2261", span,
        "Only the last bar or the last two bars can be played again this way.",
        "Write `again` or `again 2`; put longer stretches in `times 2{ … }` or in a riff.");

    public static Diagnostic NothingToPlayAgain(TextSpan span, int count) => Error("FL2262", span,
        $"{(count == 1 ? "No bar of music stands" : "No two bars of music stand")} before this to be played again.",
        "Write the bar out; `again` repeats music of the same line.");

    public static Diagnostic BarsWithinBar(TextSpan span, bool isStrand) => Error("FL2263", span,
        isStrand ? "A strand stays within its bar, and this reaches over bar lines." : "An upbeat is one short bar, and this takes whole bars.",
        isStrand ? "Close the strand before it, and begin it again in the next bar." : "Close the upbeat with `}` before it.");

    public static Diagnostic StrandWithinStrand(TextSpan span) => Error("FL2264", span,
        "A strand stands within a strand.",
        "Close the first with `}`; strands stand side by side.");

    public static Diagnostic NestedTooDeep(TextSpan span) => Error("FL2265", span,
        "Groups are nested too deep here.",
        "Take them apart; music seldom needs more than three within each other.");

    public static Diagnostic SwitchLeftOn(TextSpan span, string word) => Warning("FL2266", span,
        $"`{word} on` is never switched off, so it lasts to the end of its riff or line.",
        $"Write `{word} off` where it ends, or `{word}{{ … }}` around the music.");

    public static Diagnostic SwitchChangesNothing(TextSpan span, bool isOn) => Warning("FL2267", span,
        isOn ? "This is switched on already." : "This is not switched on.",
        "Take it out, or check where the span begins.");

    public static Diagnostic ChangeWithinBar(TextSpan span) => Error("FL2268", span,
        "Metre, key, feel and capo change at the start of a bar, and this stands within one.",
        "Write it right after a bar line; only the tempo changes within a bar.");

    public static Diagnostic CapoWithinRiff(TextSpan span) => Error("FL2269", span,
        "A capo can't move within a riff.",
        "Write the change in the part's line of a section, before the riff's name.");

    public static Diagnostic NothingAfter(TextSpan span) => Warning("FL2270", span,
        "Nothing is played after this that it could belong to.",
        "Write it before the note or bar it is for.");

    public static Diagnostic MetersDisagree(TextSpan span, string part, Meter meter, string other, Meter otherMeter) => Error("FL2271", span,
        part == other
            ? $"{Capital(part)} says {meter}, but the riff it plays here is in {otherMeter}."
            : $"{Capital(part)} is in {meter} here while {other} is in {otherMeter}.",
        "All parts share each bar's metre: write a riff in the same metre, or change the metre for all.");

    public static Diagnostic ChangesDisagree(TextSpan span, string part, string other) => Error("FL2272", span,
        $"{Capital(other)} says otherwise than {part} about the same moment.",
        "Metre, key, tempo and feel are the whole song's: say each change once, in one part's line.");

    public static Diagnostic PickupsDisagree(TextSpan span, string part, string other) => Error("FL2273", span,
        $"The upbeats of {part} and {other} are not equally long.",
        "Give both the same length, with a rest `R` at the start of the shorter one.");

    public static Diagnostic PartTooShort(TextSpan span, string part, string section, int missing) => Warning("FL2274", span,
        $"{Capital(part)} is {Bars(missing)} shorter than section {Shown(section)}, and rests there.",
        $"Write `rest {missing}` to say so, or write the missing music.");

    public static Diagnostic EmptySection(TextSpan span, string name) => Error("FL2275", span,
        $"Section {Shown(name)} has no music.",
        "Write a line for each part below it, indented, such as `rhythm furnace times 4`.");

    public static Diagnostic TwoLinesOfPart(TextSpan span, string part) => Error("FL2276", span,
        $"{Capital(part)} has a line in this section already.",
        "Put its music on one line; it may go on over several lines below the part's name.");

    public static Diagnostic SectionLikeItself(TextSpan span, string name) => Error("FL2277", span,
        $"Section {Shown(name)} is like a section that leads back to it.",
        "Write the music of one of them out.");

    public static Diagnostic SongTooLong(TextSpan span, long bars, long notes) => Error("FL2278", span,
        $"With this the song has more than {bars} bars or {notes} notes.",
        "Check the numbers after `times` and `rest`, and riffs that play riffs.");

    public static Diagnostic JumpWithinRiff(TextSpan span) => Error("FL2279", span,
        "A jump or a place to jump to stands within a riff, which may be played many times.",
        "Write it in a part's line of a section, before or after the riff's name.");

    public static Diagnostic NothingToJumpFrom(TextSpan span) => Error("FL2280", span,
        "A jump stands at the end of a bar, and no bar comes before this.",
        "Write it after the bar or the riff that is played last before the jump.");

    public static Diagnostic NowhereToJump(TextSpan span, string goal) => Error("FL2281", span,
        $"There is no {goal} for this to lead to.",
        goal switch
        {
            "segno" => "Write `(segno)` before the bar to go back to, or `(D.C.)` to go back to the start.",
            "coda" => "Write `(coda)` before the bar the coda begins with, after the jump.",
            "fine" => "Write `(fine)` at the end of the bar where the song ends.",
            _ => "Write `(to coda)` at the end of the bar from which it is gone to the coda.",
        });

    public static Diagnostic TwoOfOneKind(TextSpan span, string sign) => Error("FL2282", span,
        $"There is a {sign} already, and one jump is made.",
        $"Keep the {sign} the jump is meant for.");

    public static Diagnostic NeverJumpedTo(TextSpan span, string sign, string jump) => Warning("FL2283", span,
        $"No jump leads to this {sign}.",
        $"Write `({jump})` where it is gone back from, or take it out.");

    private static string Capital(string name) => name.Length == 0 ? name : char.ToUpperInvariant(name[0]) + name[1..];
}
