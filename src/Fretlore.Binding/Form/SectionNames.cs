using Fretlore.Binding.Problems;
using Fretlore.Binding.Settings;
using Fretlore.Binding.Words;
using Fretlore.Syntax;

namespace Fretlore.Binding.Form;

/// <summary>The sections of a sheet by name, and the lines each has of its own or from the section it is like.</summary>
internal sealed class SectionNames
{
    private readonly Dictionary<string, SectionSyntax> sections = [];
    private readonly Dictionary<SectionSyntax, SectionSyntax> likes = [];
    private readonly Dictionary<SectionSyntax, List<(int Part, PartLineSyntax Line)>> lines = [];
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
        // Sections that are like others that are like others: from the last of them back, each looked at once.
        var chain = new List<SectionSyntax>();
        var onChain = new HashSet<SectionSyntax>();
        for (var at = section; at is not null && !lines.ContainsKey(at); at = Like(at, onChain))
        {
            chain.Add(at);
            onChain.Add(at);
        }
        for (var i = chain.Count - 1; i >= 0; i--)
        {
            var like = i + 1 < chain.Count ? chain[i + 1] : likes.GetValueOrDefault(chain[i]);
            lines[chain[i]] = Lines(chain[i], like is null ? [] : lines.GetValueOrDefault(like) ?? []);
        }
        return lines[section];
    }

    private List<(int Part, PartLineSyntax Line)> Lines(SectionSyntax section, List<(int Part, PartLineSyntax Line)> otherwise)
    {
        var own = new List<(int Part, PartLineSyntax Line)>();
        foreach (var line in section.Lines)
        {
            if (PartOf(line) is not { } part) continue;
            if (!own.Exists(l => l.Part == part)) own.Add((part, line));
            else problems.Add(FormProblems.TwoLinesOfPart(line.PartName.IsMissing ? line.Span : line.PartName.Span, parts[part].Name));
        }
        return [.. own, .. otherwise.Where(l => !own.Exists(o => o.Part == l.Part))];
    }

    private SectionSyntax? Like(SectionSyntax section, HashSet<SectionSyntax> onChain)
    {
        if (section.LikeName.Length == 0) return null;
        var name = SheetWord.Join(SheetWord.From(section.LikeName));
        if (!sections.TryGetValue(name, out var like)) problems.Add(NameProblems.UnknownSection(Span(section.LikeName), name, sections.Keys));
        else if (onChain.Contains(like)) problems.Add(FormProblems.SectionLikeItself(Span(section.LikeName), NameOf(section)));
        else return likes[section] = like;
        return null;
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
