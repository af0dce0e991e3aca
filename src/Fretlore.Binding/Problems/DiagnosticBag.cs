using System.Collections.Immutable;
using Fretlore.Syntax;

namespace Fretlore.Binding.Problems;

/// <summary>Findings as they come up; the same finding at the same place is kept once, however often the music there is played.</summary>
internal sealed class DiagnosticBag
{
    private readonly List<Diagnostic> found = [];
    private readonly HashSet<(string Code, TextSpan Span)> seen = [];

    public bool HasErrors { get; private set; }

    public int Count => found.Count;

    public void Add(Diagnostic diagnostic)
    {
        if (!seen.Add((diagnostic.Code, diagnostic.Span))) return;
        HasErrors |= diagnostic.Severity == Severity.Error;
        found.Add(diagnostic);
    }

    /// <summary>These and the parser's, in the order of the text.</summary>
    public ImmutableArray<Diagnostic> MergedWith(ImmutableArray<Diagnostic> parser) =>
        [.. parser.Concat(found).OrderBy(d => d.Span.Start)];
}
