using Fretlore.Syntax;
using static Fretlore.Binding.Problems.Finding;

namespace Fretlore.Binding.Problems;

/// <summary>What can be wrong with lessons: FL2320 to FL2339.</summary>
internal static class LessonProblems
{
    public static Diagnostic NoBudget(TextSpan span) => Error("FL2320", span,
        "This is no length of a film.",
        "Write minutes and seconds, such as `budget 6:00`.");

    public static Diagnostic StepNeedsTitle(TextSpan span) => Error("FL2321", span,
        "This step has no title.",
        "Write it in double quotes: `step \"Main riff\" teach furnace at 60% 100%`.");

    public static Diagnostic StepTeachesNothing(TextSpan span) => Error("FL2322", span,
        "This step teaches nothing and says nothing.",
        "Write `teach` and the name of a riff, section or road map, or `say` and words in double quotes.");

    public static Diagnostic UnknownToTeach(TextSpan span, string name, IEnumerable<string> known) => Error("FL2323", span,
        $"`{Shown(name)}` is no riff, section or road map of this sheet.",
        Suggest(name, known, "Write a name as it is defined."));

    public static Diagnostic NoSpeed(TextSpan span, string text) => Error("FL2324", span,
        text.Length == 0 ? "This `at` names no speed." : $"`{Shown(text)}` is no teaching speed.",
        "Write percentages of the song's tempo from 1% to 400%, such as `at 60% 80% 100%`.");

    public static Diagnostic SayNeedsQuotes(TextSpan span) => Error("FL2325", span,
        "This `say` needs one text in double quotes.",
        "Write `say \"Watch the little finger.\"`.");

    public static Diagnostic UnknownStepWord(TextSpan span, string word, IEnumerable<string> known) => Error("FL2326", span,
        $"`{Shown(word)}` is no part of a step.",
        Suggest(word, known, $"After the title stand {List(known)}."));

    public static Diagnostic NoSpeakingRate(TextSpan span, int least, int most) => Error("FL2327", span,
        "This is no speaking rate.",
        $"Write the words you speak in a minute, from {least} to {most}: `speaking-rate 140`. To measure it, read a page of the script aloud and divide its words by the minutes.");

    public static Diagnostic NoExcerpt(TextSpan span) => Error("FL2328", span,
        "This is no excerpt.",
        "Write one section or bars of the song, such as `excerpt Intro`, `excerpt Verse 1 bars 1-4` or `excerpt bars 1-8`.");

    public static Diagnostic NoBars(TextSpan span) => Error("FL2329", span,
        "This names no bars.",
        "Write them from the first to the last, such as `bars 3-4` or `bar 7`.");

    public static Diagnostic BarsNotThere(TextSpan span, string whose, int last) => Error("FL2330", span,
        $"{whose} has no such bars: its last one is bar {last}.",
        "A riff's and a section's bars are counted from their own first one, the song's as they are printed.");

    public static Diagnostic NoPart(TextSpan span, string name, IEnumerable<string> known) => Error("FL2331", span,
        $"`{Shown(name)}` is no part of this sheet.",
        Suggest(name, known, $"After `of` stands {List(known)}."));

    public static Diagnostic PartOfNoSection(TextSpan span, string name, string part) => Error("FL2332", span,
        $"`{Shown(name)}` is no section, so it has no line of `{Shown(part)}`.",
        "Write `of` and a part after a section's name only.");

    public static Diagnostic RoadMapHasNoBars(TextSpan span, string name) => Error("FL2333", span,
        $"`{Shown(name)}` is a road map: it has rules and no bars.",
        "Leave the bars out.");

    public static Diagnostic NoStepLength(TextSpan span, IEnumerable<string> known) => Error("FL2334", span,
        "This `as` names no length of a step.",
        $"After it stands one of {List(known)}; without it, the step is as long as the time allows.");
}
