using Fretlore.Guitar;
using Fretlore.Syntax;
using static Fretlore.Binding.Problems.Finding;

namespace Fretlore.Binding.Problems;

/// <summary>Writings the hands can't follow: FL2200 to FL2249.</summary>
internal static class TechniqueProblems
{
    public static Diagnostic HammerOnToLowerFret(TextSpan span, int fret, int held) => Error("FL2200", span,
        $"A tap at fret {fret} can't sound while fret {held} of the same string is held: a finger hammers on to a higher fret.",
        $"Tap above fret {held}, or write `{held},{fret}` without the `t` for a pull-off.");

    public static Diagnostic LegatoToSameFret(TextSpan span, int fret) => Error("FL2201", span,
        $"A comma leads from fret {fret} to fret {fret}, and a string can't be hammered or pulled to where it is.",
        "Put a blank between them to pick it twice, or write `=` to hold it.");

    public static Diagnostic LegatoNeedsOneString(TextSpan span) => Error("FL2202", span,
        "A comma leads to an open string that was not sounding, and legato needs one string.",
        "Put a blank before it to pick it, or stay on the string.");

    public static Diagnostic OpenStringFromNowhere(TextSpan span) => Error("FL2203", span,
        "An open string can't be hammered from nowhere.",
        "Take the comma out to pick it.");

    public static Diagnostic GlideFromNothing(TextSpan span) => Error("FL2204", span,
        "Nothing sounds here that could glide.",
        "Write where the glide starts, such as `5;9`, or `lo;9` for a glide from no fixed fret.");

    public static Diagnostic GlideNeedsOneString(TextSpan span) => Error("FL2205", span,
        "A glide can't change strings.",
        "Stay on the string, or pick the second note: a blank instead of the semicolon.");

    public static Diagnostic GlideToSameFret(TextSpan span, int fret) => Error("FL2206", span,
        $"A glide from fret {fret} to fret {fret} goes nowhere.",
        "Glide to another fret, or write `=` to hold the note.");

    public static Diagnostic GlideOnOpenString(TextSpan span) => Error("FL2207", span,
        "A finger can't glide from or to an open string.",
        "Write `lo;` before or `;lo` after the fretted note for a glide from or to no fixed fret.");

    public static Diagnostic GlideToTap(TextSpan span) => Error("FL2208", span,
        "This note is both glided to and tapped.",
        "Take out the semicolon or the `t`.");

    public static Diagnostic TapOnOpenString(TextSpan span) => Error("FL2209", span,
        "There is no fret 0 to tap on.",
        "Write the fret that is tapped, or pull off to the open string: `t12,0`.");

    public static Diagnostic EdgeNeedsGlide(TextSpan span) => Error("FL2210", span,
        "`lo` and `hi` stand at the end of a glide, and a comma is no glide.",
        "Write a semicolon: `lo;15`, `15;lo`.");

    public static Diagnostic JointToNothing(TextSpan span) => Error("FL2211", span,
        "A comma or semicolon leads to nothing that sounds here.",
        "Join it to a note, or take it out.");

    public static Diagnostic JointToHold(TextSpan span) => Error("FL2212", span,
        "A held note is reached by no comma or semicolon.",
        "Put a blank before the `=`.");

    public static Diagnostic NothingToHold(TextSpan span) => Error("FL2213", span,
        "Nothing sounds here that could be held.",
        "Write the note, or a rest `R`; `=` goes on with what the event before it in the same strand sounds.");

    public static Diagnostic HeldNoteIsNotStruck(TextSpan span) => Error("FL2214", span,
        "A held note is not struck again, so only bends and vibrato can be written on it.",
        "Put the mark on the note that is picked, or pick the note again.");

    public static Diagnostic GraceWithoutNote(TextSpan span) => Error("FL2215", span,
        "This grace note has no note to lead to.",
        "Join it to a note: `g5,7`.");

    public static Diagnostic NothingToRelease(TextSpan span) => Error("FL2220", span,
        "Nothing is bent here that could be released.",
        "Bend first: `15+-`, or `+15-` for a bend before the note is picked.");

    public static Diagnostic NoTrill(TextSpan span) => Error("FL2216", span,
        "A trill goes back and forth between two frets of a sounding string, and this names one fret, or a string that is dead or a harmonic.",
        "Write another fret after the `~`: `5~7`; or take the trill out.");

    public static Diagnostic TrillBeyondNeck(TextSpan span, int fret, int highest) => Error("FL2217", span,
        $"Fret {fret} is not on this neck, whose highest is {highest}.",
        "Trill with a fret that is there, or raise the `frets` of the song or part.");

    public static Diagnostic DipOfDeadNote(TextSpan span) => Error("FL2218", span,
        "A dead note has no pitch to dip.",
        "Take the `_` out, or write a fret.");

    public static Diagnostic RakeOfOneString(TextSpan span) => Error("FL2219", span,
        "A rake sweeps over several strings, and this sounds one.",
        "Write the dead strings into the bracket: `rake[. x x 9 . .]`.");

    public static Diagnostic BendTooWide(TextSpan span) => Warning("FL2221", span,
        "This bend is wider than two whole steps, which few strings bear.",
        "Check its amount: `+h` is a half step, `+` a whole one, `+ww` two.");

    public static Diagnostic BendOfOpenString(TextSpan span) => Error("FL2222", span,
        "An open string can't be bent by a finger.",
        "Fret the same pitch on a lower string and bend it there.");

    public static Diagnostic BendOfDeadNote(TextSpan span) => Error("FL2223", span,
        "A dead note has no pitch to bend.",
        "Take the bend out, or write the fret without the `x`.");

    public static Diagnostic NoNodeAtFret(TextSpan span, int fret, int open) => Error("FL2230", span,
        $"No natural harmonic sounds clearly over fret {fret}.",
        $"Harmonics lie over frets {string.Join(", ", HarmonicSeries.Nodes.Select(n => n.Number).Where(n => n <= 24).Select(n => n + open))}{(open > 0 ? " of a string under this capo" : "")}; "
            + $"`{fret}*{fret + 12}` touches an octave above a stopped fret {fret}.");

    public static Diagnostic NoNodeAbove(TextSpan span, int fret, int octave) => Error("FL2231", span,
        $"No harmonic sounds clearly there above fret {fret}.",
        $"Touch 12 frets above the stopped fret for the octave, `{fret}*{octave}`; 3, 4, 5, 7, 9, 16, 19 and 24 above work too.");

    public static Diagnostic HarmonicOfDeadNote(TextSpan span) => Error("FL2232", span,
        "A dead note has no harmonic.",
        "Take the `*` or the `x` out.");

    public static Diagnostic NoSuchFinger(TextSpan span) => Error("FL2240", span,
        "The fretting hand has no such finger.",
        "Write `f1` (index) to `f4` (little), or `f0` for the thumb.");

    public static Diagnostic NoSuchPickingFinger(TextSpan span) => Error("FL2241", span,
        "The picking hand has no such finger.",
        "Write `p` for the thumb, then `i`, `m`, `a`, and `c` for the little finger: `by pima{ … }`.");
}
