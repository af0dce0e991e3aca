using Fretlore.Guitar;
using Fretlore.Syntax;
using static Fretlore.Binding.Problems.Finding;

namespace Fretlore.Binding.Problems;

/// <summary>What can be wrong with strings, frets and shapes: FL2150 to FL2199.</summary>
internal static class PlaceProblems
{
    public static Diagnostic NoPlaceYet(TextSpan span) => Error("FL2150", span,
        "No string has been chosen for this note.",
        "Write the string before it, such as `@6`, or right after it: `7@6`. Each riff, line and strand chooses its strings at its start.");

    public static Diagnostic NoSuchString(TextSpan span, int number, Neck neck) => Error("FL2151", span,
        $"There is no string {number}: this neck has strings 1 (the highest) to {neck.StringCount} (the lowest).",
        $"Choose strings from 1 to {neck.StringCount}.");

    public static Diagnostic FretBeyondNeck(TextSpan span, int fret, Neck neck) => Error("FL2152", span,
        neck.Capo.CountedFrom > 0
            ? $"Fret {fret} is beyond the neck: counted from the capo at fret {neck.Capo.Fret} the highest is {neck.HighestFret}."
            : $"Fret {fret} is beyond the neck: the highest is {neck.HighestFret}.",
        "Play it on a higher string, put a blank between two frets that ran together, or say how many frets the neck has: `frets 27`.");

    public static Diagnostic TwoNotesOnOneString(TextSpan span, int number) => Error("FL2153", span,
        $"String {number} is chosen twice here, and a string sounds one note at a time.",
        "Name each string once.");

    public static Diagnostic StringTakenByStrand(TextSpan span, int number) => Error("FL2154", span,
        $"Two notes sound on string {number} at once: another strand holds it here.",
        "Move one of the notes to another string, or end the first before the second begins.");

    public static Diagnostic WrongSlotCount(TextSpan span, int slots, int selected, int strings) => Error("FL2155", span,
        $"This bracket has {Slots(slots)}, but {(selected > 0 ? $"{Strings(selected)} chosen and " : "")}the neck has {strings} strings.",
        "Write a slot for each chosen string, or one for each string of the neck, low to high, with `.` for silent ones.");

    public static Diagnostic ShapeOfOtherNeck(TextSpan span, string name, int slots, int strings) => Error("FL2156", span,
        $"Shape `{Shown(name)}` is for {slots} strings, and this neck has {strings}.",
        "Define a shape for this neck, or write the frets in brackets.");

    public static Diagnostic WrongShapeCount(TextSpan span, int slots, IEnumerable<int> strings) => Error("FL2157", span,
        $"This shape has {Slots(slots)}, but no neck of the sheet has as many strings: {string.Join(" or ", strings)}.",
        "Write a slot for each string, low to high, with `.` for silent ones.");

    public static Diagnostic SilentShape(TextSpan span) => Error("FL2158", span,
        "This shape sounds no string.",
        "Write at least one fret in it.");

    public static Diagnostic OnlyFretsInShape(TextSpan span) => Error("FL2159", span,
        "A shape holds frets only, and the fingers that hold them.",
        "Write a fret, with a finger (`7f3`) or without, or `.` for a silent string; marks go where the shape is played: `#lift!`.");

    public static Diagnostic StringNotInShape(TextSpan span, int number) => Error("FL2160", span,
        $"The held shape does not sound string {number}.",
        $"Pick another string, or put a finger there first: `{number}:7` is string {number} at fret 7 from here on.");

    public static Diagnostic RiffBeyondNeck(TextSpan span, string riff, int number, int fret) => Error("FL2161", span,
        $"Riff `{Shown(riff)}` uses string {number} at fret {fret}, which this part's neck does not have.",
        "Write a riff for this part, or play it `as sounded` to find the pitches elsewhere on the neck.");

    public static Diagnostic CannotSoundThere(TextSpan span, string riff, int fret, int number) => Error("FL2162", span,
        $"Riff `{Shown(riff)}` can't sound the same on this neck: the note at fret {fret} of string {number} has no place.",
        "Play it `as fretted`, or write a riff for this part.");

    public static Diagnostic FretBehindCapo(TextSpan span, StringNumber number, Fret fret, Capo capo) => Error("FL2163", span,
        $"Fret {fret} of string {number} is not above the {capo.Words}: no finger can stop the string there.",
        $"Under a partial capo frets count from the nut: write `0` for the string as the capo stops it, or a fret from {capo.Fret + 1} on.");

    public static Diagnostic NoNodeUnderCapo(TextSpan span, string riff, StringNumber number, Fret fret) => Error("FL2164", span,
        $"Riff `{Shown(riff)}` touches string {number} at fret {fret}, and under this capo no harmonic sounds there.",
        "Write a riff for this capo, or play it `as sounded`.");

    private static string Slots(int count) => count == 1 ? "1 slot" : $"{count} slots";

    private static string Strings(int count) => count == 1 ? "1 string is" : $"{count} strings are";
}
