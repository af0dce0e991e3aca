using Fretlore.Binding.Words;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;
using static Fretlore.Binding.Problems.Finding;

namespace Fretlore.Binding.Problems;

/// <summary>What can be wrong with time: FL2100 to FL2149.</summary>
internal static class TimeProblems
{
    public static Diagnostic BarTooShort(TextSpan span, string name, Beats missing, Meter meter) => Error("FL2100", span,
        $"{name} is {LengthWords.Of(missing)} short of {meter}.",
        "Lengthen its last note, add notes or a rest `R`, or change the metre before it: `(meter 7/8)`.");

    public static Diagnostic BarTooLong(TextSpan span, string name, Beats over, Meter meter) => Error("FL2101", span,
        $"{name} is {LengthWords.Of(over)} too long for {meter}.",
        "Shorten or take out notes, put a bar line `|` where the bar ends, or change the metre before it: `(meter 5/4)`.");

    public static Diagnostic StrandPastBar(TextSpan span, string name, StrandKind strand, Beats over) => Error("FL2102", span,
        $"The {strand.ToString().ToLowerInvariant()} strand of {Lower(name)} runs {LengthWords.Of(over)} past the bar line.",
        "Shorten its last note; in the next bar a new group goes on, and `=` at its start ties the note over.");

    public static Diagnostic EmptyBar(TextSpan span) => Error("FL2103", span,
        "There is nothing between this bar line and the one before.",
        "Write `rest` for a bar of silence, or take one of the bar lines out.");

    public static Diagnostic EmptyUpbeat(TextSpan span) => Error("FL2104", span,
        "This upbeat has no notes.",
        "Write what is played before the first full bar, such as `upbeat{ @2 E 10 13 }`.");

    public static Diagnostic UpbeatTooLong(TextSpan span, Meter meter) => Error("FL2105", span,
        $"This upbeat fills a bar of {meter} or more.",
        "Write it as a bar of its own, without `upbeat{ }`.");

    public static Diagnostic UpbeatWithBrokenTuplet(TextSpan span) => Error("FL2106", span,
        "A tuplet is not complete in this upbeat.",
        "Fill its group, if need be with a rest `R`.");

    public static Diagnostic NoTimeYet(TextSpan span) => Error("FL2107", span,
        "No time has been set for this note.",
        "Write a value before it, such as `E` for eighths: each riff, line and strand sets its time at its start.");

    public static Diagnostic NoSuchTuplet(TextSpan span) => Error("FL2108", span,
        "This tuplet can't be counted.",
        "Write how many notes in the time of how many, such as `E:3` or `S:5/4`; both up to 32, and neither more than four times the other.");

    public static Diagnostic TupletsNeverMeet(TextSpan span) => Error("FL2109", span,
        "The tuplets of this bar never come together again.",
        "Complete each tuplet before another kind begins.");

    public static Diagnostic StrandsOverlap(TextSpan span, string word) => Error("FL2110", span,
        $"Another `{word}` strand is still sounding here.",
        "Begin this one where the first ends, or put its notes in the first.");

    private static string Lower(string name) => name.Length == 0 ? name : char.ToLowerInvariant(name[0]) + name[1..];
}
