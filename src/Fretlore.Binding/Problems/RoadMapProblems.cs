using Fretlore.Syntax;
using static Fretlore.Binding.Problems.Finding;

namespace Fretlore.Binding.Problems;

/// <summary>What can be wrong with road maps: FL2300 to FL2319, and FL2350.</summary>
internal static class RoadMapProblems
{
    public static Diagnostic NoScale(TextSpan span) => Error("FL2300", span,
        "This is no scale.",
        "Write a tonic and the scale's name, such as `scale A dorian` or `scale E minor pentatonic on strings 1-4`.");

    public static Diagnostic UnknownScale(TextSpan span, string name, IEnumerable<string> known) => Error("FL2301", span,
        $"There is no scale called `{Shown(name)}`.",
        Suggest(name, known, "Write a scale's usual name, such as `dorian`, `minor pentatonic` or `harmonic minor`."));

    public static Diagnostic NoStrings(TextSpan span, int most) => Error("FL2302", span,
        "This names no strings of the neck.",
        $"Write `strings 1-4`, with numbers from 1 (the highest) to {most}.");

    public static Diagnostic NoFretRange(TextSpan span, int most) => Error("FL2303", span,
        "This is no stretch of the neck.",
        $"Write `from fret 14 to fret 4` for a way along it or `frets 10-14` for a place, with frets up to {most}.");

    public static Diagnostic NoDensity(TextSpan span) => Error("FL2304", span,
        "This is no density.",
        "Write the slowest and the fastest usual value, such as `density E to S`.");

    public static Diagnostic NoAim(TextSpan span) => Error("FL2305", span,
        "This is no aim.",
        "Write the note to land on, how it is reached, and the bar of the stretch: `aim E by a half-step bend of D# on beat 3 in bar 6`.");

    public static Diagnostic NoRiffsToUse(TextSpan span) => Error("FL2306", span,
        "This names no riffs.",
        "Write `may use` and the names of riffs with commas between them, and the bars they fit into: `may use dive, climb in bars 3-6`.");

    public static Diagnostic NothingToAvoid(TextSpan span, string text) => Error("FL2307", span,
        text.Length == 0 ? "This names nothing to avoid." : $"`{Shown(text)}` is nothing that can be avoided.",
        "Write notes, `open strings`, `bends`, `slides`, `repeats` or `leaps over a fifth`, with commas between them: `avoid F, Bb, open strings`.");

    public static Diagnostic NoApproach(TextSpan span, string text) => Error("FL2308", span,
        $"`{Shown(text)}` is no way to a note.",
        "Write `by a half-step bend of G#`, `by a slide from below`, `by a hammer-on from C`, `by a pull-off`, `from a half step below`, `from a step above` or `from C`.");

    public static Diagnostic ApproachMissesTarget(TextSpan span, string from, string target, string way) => Error("FL2309", span,
        $"From {from} to {target} is not {way}.",
        "Write the note it really comes from, or leave the note or the size away.");

    public static Diagnostic NoBars(TextSpan span) => Error("FL2310", span,
        "This names no bars of the stretch.",
        "Write `in bar 4`, `in bars 1-2, 6`, `in last bar` or `in last 2 bars` at the end of the rule.");

    public static Diagnostic NoFixedPhrase(TextSpan span) => Error("FL2311", span,
        "This is no fixed phrase.",
        "Write the name of a riff and where it begins, or the bars it fills: `fixed dive in bar 1`, `fixed kestrel in bars 5-8`, `fixed dive in last bar`.");

    public static Diagnostic NoRoles(TextSpan span, string text) => Error("FL2312", span,
        text.Length == 0 ? "This names no roles." : $"`{Shown(text)}` is no role of a note in a chord.",
        "Write some of `root`, `third`, `fourth`, `fifth`, `sixth`, `seventh` and `ninth` with commas between them.");

    public static Diagnostic NoCell(TextSpan span, string text) => Error("FL2313", span,
        text.Length == 0 ? "This names no rhythm cells." : $"`{Shown(text)}` is no rhythm cell.",
        "Write values with commas between the cells, and a tuplet as a whole: `rhythm ESS, Q.E, E:3`.");

    public static Diagnostic NoContour(TextSpan span, string text, IEnumerable<string> known) => Error("FL2314", span,
        text.Length == 0 ? "This names no contour." : $"`{Shown(text)}` is no contour.",
        Suggest(text, known, $"Write one of {List(known)}."));

    public static Diagnostic NoEnd(TextSpan span) => Error("FL2315", span,
        "This is no ending.",
        "Write the last note, where and how: `end D`, `end D on string 3 by a slide from below, held`.");

    public static Diagnostic BeyondStretch(TextSpan span, string rule, int bars) => Error("FL2316", span,
        $"This stretch has {bars} bar{(bars == 1 ? "" : "s")}, and its road map says `{Shown(rule)}`.",
        "Give the stretch more bars, or change the bars in the rule.");

    public static Diagnostic FixedDoesNotFit(TextSpan span, string riff, int bars, int room) => Error("FL2317", span,
        $"`{Shown(riff)}` has {bars} bar{(bars == 1 ? "" : "s")}, and there is room for {room}.",
        "Let it begin earlier, give it as many bars as it has or twice as many, or make the stretch longer.");

    public static Diagnostic FixedOverlap(TextSpan span, string riff, string other, int bar) => Error("FL2318", span,
        $"`{Shown(riff)}` and `{Shown(other)}` are both fixed in bar {bar} of this stretch.",
        "Move one of them to other bars, or take it out.");

    public static Diagnostic FixedOfOtherTuning(TextSpan span, string riff, string own, string here) => Error("FL2350", span,
        $"The fixed phrase `{Shown(riff)}` is written for {own}, and this part is tuned {here}.",
        "Write the phrase as a riff for this tuning.");

    public static Diagnostic RuleSaidTwice(TextSpan span, string word) => Warning("FL2319", span,
        $"This `{Shown(word)}` takes the place of an earlier one for the same bars.",
        "Take one of them out, or say in which bars each holds: `in bars 1-4`.");
}
