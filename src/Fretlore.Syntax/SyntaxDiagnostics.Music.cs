using System.Globalization;

namespace Fretlore.Syntax;

/// <content>Music: groups from FL1040, phrases from FL1060, stray text from FL1080.</content>
internal static partial class SyntaxDiagnostics
{
    public static Diagnostic UnclosedGroup(TextSpan span) => Error("FL1040", span,
        "This group is not closed.",
        "Write `}` where it ends; until then it reaches to the end of its riff or line.");

    public static Diagnostic UnclosedBracket(TextSpan span) => Error("FL1041", span,
        "This bracket is not closed.",
        "Write `]` after its last fret.");

    public static Diagnostic UnclosedParenthesis(TextSpan span) => Error("FL1042", span,
        "This parenthesis is not closed.",
        "Write `)` after the change, on the same line: `(meter 7/8)`.");

    public static Diagnostic UnclosedQuote(TextSpan span) => Error("FL1043", span,
        "This text is not closed.",
        "Write a second double quote on the same line.");

    public static Diagnostic GroupWithoutWord(TextSpan span) => Error("FL1044", span,
        "This brace has no word in front that says what it does.",
        "Write the word directly before it, such as `pm{`, `let{`, `du{` or `times 2{`.");

    public static Diagnostic UnknownGroup(TextSpan span, string word, string? suggestion) => Error("FL1045", span,
        $"`{Shown(word)}` is no word that can stand before a brace.",
        Suggest(suggestion, $"These can: {List(Vocabulary.Groups)}, and strokes such as `du`."));

    public static Diagnostic BraceMissing(TextSpan span) => Error("FL1046", span,
        "A `{` is missing after this.",
        "Put what belongs to it between `{` and `}`.");

    public static Diagnostic ByNeedsFingers(TextSpan span) => Error("FL1047", span,
        "This `by` needs the picking fingers and a group.",
        "Write their letters and a brace: `by pima{ … }`.");

    public static Diagnostic TimesNeedsCount(TextSpan span) => Error("FL1048", span,
        "This `times` does not say how often.",
        "Write a number after it: `times 2{ … }` around music, `furnace times 3` after a riff's name.");

    public static Diagnostic EndingNeedsPasses(TextSpan span) => Error("FL1049", span,
        "This ending does not say on which pass it is played.",
        "Write the number of the pass: `on 1{ … }`, `on 1,3{ … }` or `on 1-3{ … }`.");

    public static Diagnostic EndingOutsideRepeat(TextSpan span) => Error("FL1050", span,
        "This ending stands outside a repeat.",
        "Put it at the end of a repeat's group: `times 2{ … on 1{ … } on 2{ … } }`.");

    public static Diagnostic MusicAfterEndings(TextSpan span) => Error("FL1051", span,
        "Music stands after an ending within the same repeat.",
        "Close the repeat with `}` before it, or move it before the endings.");

    public static Diagnostic PickNeedsShape(TextSpan span) => Error("FL1052", span,
        "This `pick` needs a shape to hold.",
        "Write a named shape or a bracket, then the strings: `pick #c{ E 52 3 2 1 }`.");

    public static Diagnostic PickFretMissing(TextSpan span) => Error("FL1053", span,
        "A fret is missing after this colon.",
        "Write the string and its new fret together: `5:7` is string 5 at fret 7 from here on.");

    public static Diagnostic StrayInPick(TextSpan span, string text) => Error("FL1054", span,
        $"`{Shown(text)}` means nothing within a pick group.",
        text.StartsWith('|')
            ? "Close the group before the bar line and begin another one after it."
            : "Write times, strings to pluck such as `52`, changes such as `5:7`, `=` and `R` here; the shape already says the frets.");

    public static Diagnostic TooDeep(TextSpan span, int deepest) => Error("FL1055", span,
        string.Create(CultureInfo.InvariantCulture, $"Groups are nested more than {deepest} deep here."),
        "Take groups apart; music seldom needs more than three within each other.");

    public static Diagnostic AsNeedsMode(TextSpan span) => Error("FL1056", span,
        "This `as` does not say how the riff is carried over.",
        "Write `as fretted` to keep its frets, or `as sounded` to keep its pitches.");

    public static Diagnostic RoadMapUseIncomplete(TextSpan span) => Error("FL1057", span,
        "This `roadmap` needs a name and a number of bars.",
        "Write `roadmap descent 6 bars`.");

    public static Diagnostic KeywordAlone(TextSpan span, string word) => Error("FL1058", span,
        $"`{word}` means nothing by itself here.",
        UseOf(word));

    public static Diagnostic JointNeedsNote(TextSpan span, string sign) => Error("FL1060", span,
        sign == "," ? "A comma joins two notes, and here one of them is missing." : "A semicolon glides between two notes, and here one is missing.",
        sign == "," ? "Write the next note right after it, without a blank: `4,6,4`." : "Write `5;9`, or `5; 9` to pick the second note too.");

    public static Diagnostic EdgeOutOfPlace(TextSpan span, string word) => Error("FL1061", span,
        $"`{word}` stands only at the beginning or end of a glide.",
        $"Write `{word};15` to glide in from no fixed fret, or `15;{word}` to glide off.");

    public static Diagnostic FretMissing(TextSpan span) => Error("FL1062", span,
        "A fret is missing after this.",
        "Write the fret right after it: `t17` is tapped, `+15` is bent before it is picked.");

    public static Diagnostic HashNeedsName(TextSpan span) => Error("FL1063", span,
        "This `#` has no shape's name after it.",
        "Write the name right after it, such as `#lift`, or the frets in brackets.");

    public static Diagnostic TremoloNeedsValue(TextSpan span) => Error("FL1064", span,
        "This colon needs the value the note is tremolo-picked in.",
        "Write `17:Y` for 32nds or `17:S` for 16ths.");

    public static Diagnostic TrillNeedsFret(TextSpan span) => Error("FL1073", span,
        "This trill does not say its other fret.",
        "Write the fret right after it: `5~7` trills between frets 5 and 7.");

    public static Diagnostic PlaceNeedsStrings(TextSpan span) => Error("FL1065", span,
        "This `@` has no string after it.",
        "Write the string's number right after it, 1 for the highest: `@2`, `@654`, `@6-4`.");

    public static Diagnostic PlaceAfterBracket(TextSpan span) => Error("FL1066", span,
        "A place can't be joined to a bracket, a shape, a hold or a rest.",
        "Write the place and a blank before it: `@654 [7 7 9]`.");

    public static Diagnostic PlaceInBracket(TextSpan span) => Error("FL1067", span,
        "A slot of a bracket can't have a place of its own.",
        "Select the strings before the bracket, `@31 [7 5]`, or write a slot for each string with `.` for silent ones.");

    public static Diagnostic TupletNeedsCount(TextSpan span) => Error("FL1068", span,
        "A number is missing after this.",
        "Write `E:3` for three in the time of two, or `S:5/4` for five in the time of four.");

    public static Diagnostic TooManyDots(TextSpan span) => Error("FL1069", span,
        "A value has at most two dots.",
        "Take dots away, or hold the note with `=` for another value.");

    public static Diagnostic EmptyChange(TextSpan span) => Error("FL1070", span,
        "There is nothing between these parentheses.",
        "Write the change, such as `(meter 7/8)`, `(Q = 96)` or `(f)`, or take them out.");

    public static Diagnostic MissingBlank(TextSpan span, string item) => Warning("FL1071", span,
        $"A blank is missing after `{Shown(item)}`.",
        "Write one: what stands together is read together.");

    public static Diagnostic SignNeedsNote(TextSpan span, string sign) => Error("FL1072", span,
        $"`{sign}` needs a note right after it.",
        sign switch
        {
            "g" => "Write the grace note without a blank: `g5`.",
            "t" => "Write the tapped fret without a blank: `t17`.",
            _ => $"Write the stroke and the note without a blank: `{sign}5`, `{sign}[5 7]`, `{sign}R`.",
        });

    public static Diagnostic BraceNotOpened(TextSpan span) => Error("FL1080", span,
        "This `}` closes nothing.",
        "Take it out, or write the `{` it should close.");

    public static Diagnostic BracketNotOpened(TextSpan span) => Error("FL1081", span,
        "This `]` closes nothing.",
        "Take it out, or write the `[` it should close.");

    public static Diagnostic ParenthesisNotOpened(TextSpan span) => Error("FL1082", span,
        "This `)` closes nothing.",
        "Take it out, or write the `(` it should close.");

    public static Diagnostic UnknownMark(TextSpan span, string text) => Error("FL1083", span,
        $"`{Shown(text)}` is no mark of a note.",
        "Marks are `+` `-` `v` `vv` `*` `!` `?` `'` `m`, a finger such as `f3` and a tremolo such as `:Y`; put a blank before what is no mark.");

    public static Diagnostic StrayText(TextSpan span, string text) => Error("FL1084", span,
        $"`{Shown(text)}` means nothing in music.",
        "Take it out; to say something to the reader put it in double quotes, to yourself after two dashes and a blank.");

    private static string UseOf(string word) => word switch
    {
        "as" => "Write `as fretted` or `as sounded` right after a riff's name, before `times`.",
        "on" or "off" => "Write it after the word it switches: `pm on`, `pm off`.",
        "lo" or "hi" => $"Write it at the end of a glide: `{word};15` or `15;{word}`.",
        "roll" or "roll-down" or "rake" => $"Write it right before a bracket or shape: `{word}[5 7 7]`.",
        "with" or "without" => "Write it in a variation: `riff furnace.turn = furnace with bar 2: …`.",
        "meter" or "key" or "tempo" or "feel" => $"Within music write a change in parentheses, such as `(meter 7/8)` or `(Q = 96)`; "
            + "a setting stands on a line of its own, before a riff's music or in a section.",
        _ when Vocabulary.Spans.Contains(word) => $"Write `{word}{{ … }}` around the music, or `{word} on` before and `{word} off` after it.",
        _ => $"Write `{word}{{ … }}` around the music.",
    };
}
