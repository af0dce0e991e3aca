using System.Globalization;

namespace Fretlore.Syntax;

/// <content>Blocks, names and settings: FL1010 to FL1039.</content>
internal static partial class SyntaxDiagnostics
{
    public static Diagnostic UnknownBlock(TextSpan span, string word, string? suggestion) => Error("FL1010", span,
        $"`{Shown(word)}` begins no block of a sheet.",
        Suggest(suggestion, "A line at the margin begins with a setting such as `title` or `tuning`, or with "
            + $"{List(Vocabulary.Blocks)}; music is indented below its `riff` or `section`."));

    public static Diagnostic NoBlockWord(TextSpan span) => Error("FL1011", span,
        "This line stands at the margin but does not begin with a word.",
        "Indent it by two blanks if it belongs to the block above, or put two dashes and a blank before it to make it a comment.");

    public static Diagnostic IndentedWithoutBlock(TextSpan span) => Error("FL1012", span,
        "This line is indented, but no block stands above it.",
        "Take the blanks at its start away, or put the line its block begins with above it.");

    public static Diagnostic AfterBlock(TextSpan span) => Error("FL1013", span,
        "This belongs to nothing: the block it stands in is complete before it.",
        "Take it out, or begin a new line at the margin with the word of the block it should be in.");

    public static Diagnostic NameMissing(TextSpan span, string keyword) => Error("FL1014", span,
        $"This `{keyword}` has no name.",
        $"Write a name after it, such as `{keyword} {(keyword == "section" ? "Verse" : "furnace")}`.");

    public static Diagnostic NameMalformed(TextSpan span, string name) => Error("FL1015", span,
        $"`{Shown(name)}` can't be a name: capitals at the start, single letters and signs mean something else in music.",
        "Begin with a lowercase letter and go on with letters, digits, dots or dashes: `furnace`, `verse-2`, `furnace.turn`.");

    public static Diagnostic NameReadsAsEvent(TextSpan span, string name) => Error("FL1016", span,
        $"`{Shown(name)}` can't be a name: in music it would be read as a note.",
        "Choose a name that does not begin like a note; two letters more are enough, such as `riff-" + Shown(name) + "`.");

    public static Diagnostic NameIsKeyword(TextSpan span, string name) => Error("FL1017", span,
        $"`{Shown(name)}` can't be a name: it is a word of the sheet language.",
        $"Add something to it, such as `{Shown(name)}-riff`.");

    public static Diagnostic UnknownSetting(TextSpan span, string word, string where, IEnumerable<string> known, string? suggestion) => Error(
        "FL1018", span,
        $"`{Shown(word)}` is no setting of {where}.",
        Suggest(suggestion, $"A line here begins with one of {List(known)}."));

    public static Diagnostic ShapeNeedsBracket(TextSpan span) => Error("FL1019", span,
        "This shape has no frets.",
        "Write them in brackets, low string to high: `shape lift [7 7 7 9 . .]`.");

    public static Diagnostic RiffIsEmpty(TextSpan span) => Error("FL1020", span,
        "This riff has no music.",
        "Write its music on the lines below, indented by two blanks.");

    public static Diagnostic VariationNeedsBase(TextSpan span) => Error("FL1021", span,
        "This variation does not say which riff it varies.",
        "Write the riff's name after the `=`: `riff furnace.turn = furnace with bar 2: …`.");

    public static Diagnostic EditNeedsBars(TextSpan span, string word) => Error("FL1022", span,
        $"This `{word}` does not say which bars.",
        $"Write `{word} bar 2`, `{word} bars 2-3` or `{word} last bar`.");

    public static Diagnostic EditNeedsColon(TextSpan span) => Error("FL1023", span,
        "A colon is missing between the bars and their new music.",
        "Write `with bar 2: …`.");

    public static Diagnostic LikeNeedsName(TextSpan span) => Error("FL1024", span,
        "This `like` does not say which section.",
        "Write the other section's name after it: `section Verse 2 like Verse`; put a name that contains the word in quotes.");

    public static Diagnostic UnknownPart(TextSpan span, string word, IEnumerable<string> parts, string? suggestion) => Error("FL1025", span,
        $"`{Shown(word)}` is neither a part nor a riff of this sheet.",
        Suggest(suggestion, $"A section's line begins with a part: {List(parts.Order(StringComparer.Ordinal).Take(9))}."));

    public static Diagnostic LineNeedsPart(TextSpan span, IEnumerable<string> parts) => Error("FL1026", span,
        "This line does not say which part plays it.",
        $"Begin it with the part's name: {List(parts.Order(StringComparer.Ordinal).Take(9))}.");

    public static Diagnostic RecordingNeedsName(TextSpan span) => Error("FL1028", span,
        "This recording has no name.",
        "Write the file's name after it in double quotes: `recording \"band-take.wav\"`.");

    public static Diagnostic NumberTooLarge(TextSpan span) => Error("FL1027", span,
        "This number is too large to mean anything here.",
        string.Create(CultureInfo.InvariantCulture, $"Write a number up to {9999}, and a blank between frets that are notes of their own."));
}
