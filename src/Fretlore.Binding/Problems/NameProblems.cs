using Fretlore.Syntax;
using static Fretlore.Binding.Problems.Finding;

namespace Fretlore.Binding.Problems;

/// <summary>Names that nothing has, or two things: FL2050 to FL2099.</summary>
internal static class NameProblems
{
    public static Diagnostic UnknownRiff(SyntaxToken name, IEnumerable<string> known) => UnknownRiff(name.Span, name.Text, known);

    public static Diagnostic UnknownRiff(TextSpan span, string name, IEnumerable<string> known) => Error("FL2050", span,
        $"There is no riff called `{Shown(name)}`.",
        Suggest(name, known, "Write its music under `riff " + Shown(name) + "` at the margin, or play a riff that is there."));

    public static Diagnostic UnknownShape(SyntaxToken name, IEnumerable<string> known) => Error("FL2051", name.Span,
        $"There is no shape called `{Shown(name.Text)}`.",
        Suggest(name.Text, known, $"Define it at the margin: `shape {Shown(name.Text)} [7 7 7 9 . .]`."));

    public static Diagnostic UnknownRoadMap(SyntaxToken name, IEnumerable<string> known) => Error("FL2052", name.Span,
        $"There is no road map called `{Shown(name.Text)}`.",
        Suggest(name.Text, known, $"Write its rules under `roadmap {Shown(name.Text)}` at the margin."));

    public static Diagnostic UnknownSection(TextSpan span, string name, IEnumerable<string> known) => Error("FL2053", span,
        $"There is no section called `{Shown(name)}`.",
        Suggest(name, known, "Write the name of a section after `like` as it stands after `section`."));

    public static Diagnostic DeclaredTwice(SyntaxToken name, string kind) => Error("FL2054", name.Span,
        kind == "lesson" ? "There is a second lesson." : $"There is a {kind} called `{Shown(name.Text)}` already.",
        kind == "lesson" ? "Put all steps under one `lesson`." : "Give one of the two another name.");

    public static Diagnostic SectionTwice(TextSpan span, string name) => Warning("FL2055", span,
        $"There is a section called `{Shown(name)}` already.",
        $"Give it a name of its own; `section {Shown(name)} 2 like {Shown(name)}` plays the same again.");
}
