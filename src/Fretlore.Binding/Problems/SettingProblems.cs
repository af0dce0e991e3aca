using Fretlore.Guitar;
using Fretlore.Syntax;
using static Fretlore.Binding.Problems.Finding;

namespace Fretlore.Binding.Problems;

/// <summary>What can be wrong with settings and changes: FL2001 to FL2049.</summary>
internal static class SettingProblems
{
    public static Diagnostic NoTitle(TextSpan span) => Warning("FL2001", span,
        "The song has no title.",
        "Write `title` and its name on a line at the top.");

    public static Diagnostic NoTuning(TextSpan span) => Error("FL2002", span,
        "Nothing says how the strings are tuned.",
        "Write `tuning` and the open strings from low to high, such as `tuning E2 A2 D3 G3 B3 E4`.");

    public static Diagnostic TempoTaken(TextSpan span) => Hint("FL2003", span,
        "The sheet names no tempo, so 120 quarters a minute are taken.",
        "Write `tempo Q = 104` at the top to say another.");

    public static Diagnostic SaidTwice(TextSpan span, string word) => Warning("FL2004", span,
        $"`{word}` stands twice at the top, and the second one counts.",
        "Keep one of the two lines.");

    public static Diagnostic NothingSaid(TextSpan span, string word) => Error("FL2005", span,
        $"Nothing stands after `{word}`.",
        "Write its value on the same line, or take the line out.");

    public static Diagnostic NoMeter(TextSpan span, string text) => Error("FL2006", span,
        $"`{Shown(text)}` is no metre.",
        "Write beats over their value, such as `7/8`, and groups that add up to the beats if you want to say them: `7/8 2+2+3`.");

    public static Diagnostic NoTempo(TextSpan span, string text) => Error("FL2007", span,
        $"`{Shown(text)}` is no tempo.",
        "Write a value, an equals sign and beats a minute from 5 to 1000, such as `Q = 96` or `Q. = 54`.");

    public static Diagnostic NoKey(TextSpan span, string text) => Error("FL2008", span,
        $"`{Shown(text)}` is no key that can be written with up to seven sharps or flats.",
        "Write a note, and major, minor or a mode after it, such as `D dorian` or `Bb major`.");

    public static Diagnostic NoCapo(TextSpan span, string text, int highest) => Error("FL2009", span,
        $"`{Shown(text)}` is no place for a capo.",
        $"Write its fret, 0 to {highest}, and the strings it covers when these are not all, such as `2 on 5-3`; 0 takes it off.");

    public static Diagnostic NoFeel(TextSpan span, string text) => Error("FL2010", span,
        $"`{Shown(text)}` is no feel.",
        "Write `swing` for swung eighths, `swing S` for swung 16ths, or `straight`.");

    public static Diagnostic NoPitch(TextSpan span, string text) => Error("FL2011", span,
        $"`{Shown(text)}` is no pitch an open string can have.",
        "Write a letter, a sharp or flat if it has one, and its octave, such as `E2` or `F#3`; middle C is `C4`.");

    public static Diagnostic StringCount(TextSpan span, int count, int fewest, int most) => Error("FL2012", span,
        count == 1 ? "This tuning has 1 string." : $"This tuning has {count} strings.",
        $"Write {fewest} to {most} open strings, from low to high.");

    public static Diagnostic TuningFromHighToLow(TextSpan span) => Warning("FL2013", span,
        "This tuning begins with its highest string.",
        "Write open strings from low to high: the lowest-sounding one first.");

    public static Diagnostic FretCount(TextSpan span, int fewest, int most) => Error("FL2014", span,
        "This is no number of frets a neck has.",
        $"Write a number from {fewest} to {most}.");

    public static Diagnostic NoScaleLength(TextSpan span, string text) => Error("FL2015", span,
        $"`{Shown(text)}` is no scale length.",
        "Write inches or millimetres with their unit, such as `26.5 in` or `648 mm`; for fanned frets both lengths, such as `25.5-27 in`.");

    public static Diagnostic NoGauge(TextSpan span, string text, string? nearest) => Error("FL2019", span,
        $"There is no string of gauge `{Shown(text)}`.",
        (nearest is null ? "" : $"The nearest there is is `{nearest}`. ") + "Write thousandths of an inch, low string first, `w` for wound: `46w 36w 26w 17 13 10`.");

    public static Diagnostic GaugeCount(TextSpan span, int gauges, int strings) => Error("FL2020", span,
        $"These are {gauges} gauges for {strings} strings.",
        "Write one for each open string of the tuning, low string first.");

    public static Diagnostic CapoNeedsNeighbours(TextSpan span, string strings) => Error("FL2021", span,
        $"A capo can't cover `{Shown(strings)}`: it lies across strings that are next to each other.",
        "Write the first and the last of them, such as `on 5-3`, or one string, such as `on 4`.");

    public static Diagnostic CapoOnMissingString(TextSpan span, Capo capo, int strings) => Error("FL2022", span,
        $"The capo lies on {(capo.Lowest == capo.Highest ? "string" : "strings")} {capo.Strings}, and this neck has strings 1 (the highest) to {strings} (the lowest).",
        $"Choose strings from 1 to {strings}, or give a part with other strings a `capo` of its own; `capo off` is none.");

    public static Diagnostic CapoOnAllStrings(TextSpan span, Capo capo) => Error("FL2023", span,
        $"This capo covers all strings: strings {capo.Strings} are all this neck has.",
        $"Write `capo {capo.Fret}`; frets are counted from it then.");

    public static Diagnostic NoLanguage(TextSpan span, string text) => Error("FL2024", span,
        $"`{Shown(text)}` is no language tag.",
        "Write two or three letters, and a country after them if you like, such as `fr` or `pt-BR`.");

    public static Diagnostic UnknownChange(TextSpan span, string word, IEnumerable<string> known) => Error("FL2016", span,
        $"`{Shown(word)}` is no change.",
        Suggest(word, known, "Between parentheses stand changes such as `(meter 7/8)`, `(Q = 96)`, `(key D dorian)`, `(capo 3)`, `(swing)`, "
            + "`(chord Am7)` and dynamics such as `(f)`; words for the reader go in double quotes."));

    public static Diagnostic NoJump(TextSpan span, string words, IEnumerable<string> known) => Error("FL2018", span,
        $"`{Shown(words)}` leads nowhere.",
        Suggest(words, known, "Jumps are `(D.C.)` and `(D.S.)`, alone or with `al fine` or `al coda`, `(to coda)` and `(fine)`; they lead to `(segno)` and `(coda)`."));

    public static Diagnostic NoChordSymbol(TextSpan span) => Error("FL2017", span,
        "This `chord` needs one chord symbol.",
        "Write it without blanks, such as `(chord F#m7)`.");
}
