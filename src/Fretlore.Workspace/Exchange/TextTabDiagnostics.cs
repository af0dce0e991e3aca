using Fretlore.Exchange.Reports;
using Fretlore.Syntax;

namespace Fretlore.Workspace.Exchange;

/// <summary>What was guessed in a plain-text tab, or could not be read: codes FL6001 to FL6099.</summary>
internal static class TextTabDiagnostics
{
    public static Diagnostic TuningTaken(TextSpan span, string tuning) => Hint(
        "FL6001", span, $"The tab does not say how the strings are tuned, or not in which octave: {tuning} is taken.", "Write a line such as `Tuning: D2 A2 D3 G3 B3 E4` above it, or mend `tuning` in the sheet.");

    public static Diagnostic MetreTaken(TextSpan span, string meter) => Hint(
        "FL6002", span, $"The tab does not say its metre: {meter} is taken.", "Write a line such as `Metre: 3/4` above it, or mend `meter` in the sheet.");

    public static Diagnostic TempoTaken(TextSpan span) => Hint(
        "FL6003", span, "The tab does not say its tempo: 120 quarters a minute are taken.", "Write a line such as `Tempo: 96` above it, or mend `tempo` in the sheet.");

    public static Diagnostic RhythmFromSpacing(TextSpan span, string bars) => Hint(
        "FL6004", span, $"No note values are written over these strings: the rhythm of {bars} is worked out from how far apart the notes stand.",
        "Play it and mend the sheet, or write values above the strings: `Q E E S S S S`.");

    public static Diagnostic RhythmUneven(TextSpan span) => Warning(
        "FL6005", span, "The notes of this bar stand too unevenly to show a rhythm: the one taken is little more than their order.", "Write its values above it, such as `Q E E`, or mend the bar in the sheet.");

    public static Diagnostic LinesUneven(TextSpan span) => Warning(
        "FL6006", span, "The lines of these strings have their bar lines or their ends at different places: each bar is lined up at its left.", "Look whether notes that belong together stand below each other, and mend what does not.");

    public static Diagnostic BarLinesTaken(TextSpan span) => Warning(
        "FL6007", span, "There are no bar lines to go by here: the usual distance is taken for an eighth, and as many as fill the metre for a bar.", "Write bar lines `|` where they belong.");

    public static Diagnostic BarLengthOdd(TextSpan span, string meter) => Warning(
        "FL6008", span, $"The values over this bar don't fill {meter}: the bar has a metre of its own.", "Mend the values, or write the metre above the bar: `(7/8)`.");

    public static Diagnostic UnknownSign(TextSpan span, string sign) => Warning(
        "FL6009", span, $"The sign `{sign}` is not known and is left out.", "Write what it means into the sheet; the signs that are read are in docs/import-export.md.");

    public static Diagnostic DigitsParted(TextSpan span, string digits) => Warning(
        "FL6010", span, $"No neck has a fret {digits}: it is read as frets one after another.", "Put a dash between the frets.");

    public static Diagnostic BendTaken(TextSpan span) => Hint(
        "FL6011", span, "This bend does not say how far: a whole step is taken.", "Write the fret whose pitch it reaches, such as `7b9`, or mend it in the sheet.");

    public static Diagnostic LinesMissing(TextSpan span, string lines) => Warning(
        "FL6012", span, $"There are {lines} lines here, which is not as many as the part has strings: they are taken from the highest string on.", "Write a line for each string, or the strings' names before the lines.");

    public static Diagnostic RepeatTaken(TextSpan span, string count) => Hint(
        "FL6013", span, $"The bars of these lines are taken to be played {count} times.", "Write `|:` and `:|` around what is repeated.");

    public static Diagnostic NoSuchFret(TextSpan span, string fret) => Warning(
        "FL6014", span, $"No neck has a fret {fret}: the note is left out.", "Put a dash between the frets if these are two, or mend the number.");

    public static Diagnostic LetterTakenForZero(TextSpan span) => Hint(
        "FL6015", span, "A letter O stands here: it is read as the open string, 0.", "Write a zero.");

    public static Diagnostic UpsideDown(TextSpan span) => Hint(
        "FL6016", span, "The lowest string stands at the top here: the lines are turned round.", "Write the highest string at the top, as is usual.");

    public static Diagnostic EncodingTaken(TextSpan span) => Hint(
        "FL6017", span, "The text is not UTF-8: it is read as Western European (ISO 8859-1).", "Save it as UTF-8 if names look wrong.");

    public static Diagnostic FretBehindCapo(TextSpan span, string fret) => Warning(
        "FL6018", span, $"The capo covers this string at fret {fret} or above it: the note is left out.", "Under a capo over some strings frets count from the nut: write 0 for the string as the capo stops it.");

    public static Diagnostic CapoMisplaced(TextSpan span, string strings) => Warning(
        "FL6019", span, $"The capo can't lie on strings {strings} here: it is left out.", "Name strings that the part has, next to each other; for all of them write its fret alone.");

    /// <summary>A finding of a text that was imported, at its place there.</summary>
    public static Finding Of(TextFinding found)
    {
        var made = Make(found.Kind, found.What);
        return new Finding(made.Code, made.Severity, found.Line, found.Column, found.Length, made.Message, made.Remedy, found.SourceLine);
    }

    private static Diagnostic Make(TextFindingKind kind, string what) => kind switch
    {
        TextFindingKind.TuningTaken => TuningTaken(default, what),
        TextFindingKind.MetreTaken => MetreTaken(default, what),
        TextFindingKind.TempoTaken => TempoTaken(default),
        TextFindingKind.RhythmFromSpacing => RhythmFromSpacing(default, what),
        TextFindingKind.RhythmUneven => RhythmUneven(default),
        TextFindingKind.LinesUneven => LinesUneven(default),
        TextFindingKind.BarLinesTaken => BarLinesTaken(default),
        TextFindingKind.BarLengthOdd => BarLengthOdd(default, what),
        TextFindingKind.UnknownSign => UnknownSign(default, what),
        TextFindingKind.DigitsParted => DigitsParted(default, what),
        TextFindingKind.BendTaken => BendTaken(default),
        TextFindingKind.LinesMissing => LinesMissing(default, what),
        TextFindingKind.RepeatTaken => RepeatTaken(default, what),
        TextFindingKind.NoSuchFret => NoSuchFret(default, what),
        TextFindingKind.FretBehindCapo => FretBehindCapo(default, what),
        TextFindingKind.CapoMisplaced => CapoMisplaced(default, what),
        TextFindingKind.LetterTakenForZero => LetterTakenForZero(default),
        TextFindingKind.UpsideDown => UpsideDown(default),
        _ => EncodingTaken(default),
    };

    private static Diagnostic Hint(string code, TextSpan span, string message, string remedy) => new(code, Severity.Hint, span, message, remedy);

    private static Diagnostic Warning(string code, TextSpan span, string message, string remedy) => new(code, Severity.Warning, span, message, remedy);
}
