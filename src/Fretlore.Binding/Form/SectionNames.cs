using Fretlore.Binding.Problems;
using Fretlore.Binding.Settings;
using Fretlore.Binding.Words;
using Fretlore.Syntax;

namespace Fretlore.Binding.Form;

/// <summary>The sections of a sheet by name, and the lines each has of its own or from the section it is like.</summary>
internal sealed class SectionNames
{
    private readonly Dictionary<string, SectionSyntax> sections = [];
    private readonly IReadOnlyList<DeclaredPart> parts;
    private readonly DiagnosticBag problems;

    public SectionNames(SheetSyntax sheet, IReadOnlyList<DeclaredPart> parts, DiagnosticBag problems)
    {
        this.parts = parts;
        this.problems = problems;
        foreach (var section in sheet.Blocks.OfType<SectionSyntax>())
        {
            All.Add(section);
            if (NameOf(section) is not { Length: > 0 } name) continue;
            if (!sections.TryAdd(name, section)) problems.Add(NameProblems.SectionTwice(Span(section.Name), name));
        }
    }

    /// <summary>In the order of the song.</summary>
    public List<SectionSyntax> All { get; } = [];

    public IEnumerable<string> Names => sections.Keys;

    public bool Has(string name) => sections.ContainsKey(name);

    public static string NameOf(SectionSyntax section) => SheetWord.Join(SheetWord.From(section.Name));

    /// <summary>The part and the music of each line, its own first; at most one line for each part.</summary>
    public IReadOnlyList<(int Part, PartLineSyntax Line)> LinesOf(SectionSyntax section)
    {
        var lines = new List<(int Part, PartLineSyntax Line)>();
        var seen = new HashSet<SectionSyntax>();
        for (var at = section; at is not null && seen.Add(at); at = Like(at))
        {
            var own = new HashSet<int>();
            foreach (var line in at.Lines)
            {
                if (PartOf(line) is not { } part) continue;
                if (!own.Add(part)) problems.Add(FormProblems.TwoLinesOfPart(line.PartName.IsMissing ? line.Span : line.PartName.Span, parts[part].Name));
                else if (!lines.Exists(l => l.Part == part)) lines.Add((part, line));
            }
        }
        return lines;
    }

    private SectionSyntax? Like(SectionSyntax section)
    {
        if (section.LikeName.Length == 0) return null;
        var name = SheetWord.Join(SheetWord.From(section.LikeName));
        if (!sections.TryGetValue(name, out var like)) problems.Add(NameProblems.UnknownSection(Span(section.LikeName), name, sections.Keys));
        else if (ReturnsTo(section, like)) problems.Add(FormProblems.SectionLikeItself(Span(section.LikeName), NameOf(section)));
        else return like;
        return null;
    }

    private bool ReturnsTo(SectionSyntax section, SectionSyntax like)
    {
        var seen = new HashSet<SectionSyntax>();
        for (var at = like; at is not null && seen.Add(at);)
        {
            if (ReferenceEquals(at, section)) return true;
            at = at.LikeName.Length == 0 ? null : sections.GetValueOrDefault(SheetWord.Join(SheetWord.From(at.LikeName)));
        }
        return false;
    }

    // A line without a name is the only part's.
    private int? PartOf(PartLineSyntax line)
    {
        if (line.PartName.IsMissing) return parts.Count == 1 ? 0 : null;
        for (var p = 0; p < parts.Count; p++)
        {
            if (parts[p].Name == line.PartName.Text) return p;
        }
        return null;
    }

    private static TextSpan Span(IReadOnlyList<SyntaxToken> tokens) => TextSpan.FromBounds(tokens[0].Span.Start, tokens[^1].Span.End);
}
