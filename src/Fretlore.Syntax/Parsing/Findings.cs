using System.Collections.Immutable;

namespace Fretlore.Syntax.Parsing;

/// <summary>What the parser has found so far, up to a bound: past it a person has enough to mend, and random bytes cost no memory.</summary>
internal sealed class Findings
{
    public const int Most = 100;

    private readonly List<Diagnostic> found = [];
    private TextSpan? firstNotShown;

    public bool IsFull => found.Count >= Most;

    public void Add(Diagnostic diagnostic)
    {
        if (!IsFull) found.Add(diagnostic);
        else firstNotShown ??= diagnostic.Span;
    }

    /// <summary>In the order of the text; when there were more than are kept, the last one says so.</summary>
    public ImmutableArray<Diagnostic> InOrder()
    {
        var ordered = found.OrderBy(d => d.Span.Start).ToList();
        if (firstNotShown is { } span) ordered.Add(SyntaxDiagnostics.TooManyFindings(span, Most));
        return [.. ordered];
    }
}
