using Fretlore.Syntax;
using static Fretlore.Binding.Problems.Finding;

namespace Fretlore.Binding.Problems;

/// <summary>What can be wrong with recordings: FL2340 to FL2349.</summary>
internal static class RecordingProblems
{
    public static Diagnostic NoBarTime(TextSpan span) => Error("FL2340", span,
        "This does not say when a bar begins in the recording.",
        "Write the bar's printed number and minutes and seconds from the file's start, such as `bar 9 at 0:18.94`; for the second time it is played `bar 9 time 2 at 0:52.31`.");

    public static Diagnostic BarNotPlayed(TextSpan span, int number, int time, int times) => Error("FL2341", span,
        times == 0 ? $"The song has no bar {number}." : $"Bar {number} is played {Times(times)}, not {time} times.",
        times == 0 ? "Bars are numbered as they are printed; 0 is the pickup at the start." : "Count the times it is played with all repeats.");

    public static Diagnostic BarOutOfOrder(TextSpan span, int number, int before) => Error("FL2342", span,
        $"Bar {number} is not played after bar {before}, which stands before it here.",
        "Write the bars in the order they are played.");

    public static Diagnostic TimeGoesBack(TextSpan span) => Error("FL2343", span,
        "This bar would begin no later than the one before it.",
        "Write the times from the file's start, each later than the one before.");

    public static Diagnostic NoBars(TextSpan span, string name) => Warning("FL2344", span,
        $"No bar of `{Shown(name)}` has a time, so nothing lines it up.",
        "Write when its first bar begins: `bar 1 at 0:01.20`. With the times of more bars, it need not keep the sheet's tempo.");

    private static string Times(int times) => times == 1 ? "once" : $"{times} times";
}
