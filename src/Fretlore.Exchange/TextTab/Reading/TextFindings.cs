using System.Collections.Immutable;
using Fretlore.Exchange.Reports;

namespace Fretlore.Exchange.TextTab.Reading;

/// <summary>Collects findings, so many of each kind and no more; the same kind twice in a line with the same words is told once.</summary>
internal sealed class TextFindings
{
    private const int MostOfAKind = 50;
    private const int LongestLine = 200;

    private readonly List<TextFinding> all = [];
    private readonly HashSet<(TextFindingKind, int, string)> known = [];
    private readonly Dictionary<TextFindingKind, int> counts = [];

    public void Add(TextFindingKind kind, TabLine line, int start, int length, string what = "")
    {
        if (counts.GetValueOrDefault(kind) >= MostOfAKind || !known.Add((kind, line.Number, what))) return;
        counts[kind] = counts.GetValueOrDefault(kind) + 1;
        var column = line.SourceColumn(start);
        var source = line.Source.Length > LongestLine ? line.Source[..LongestLine] : line.Source;
        all.Add(new TextFinding(kind, line.Number, column, Math.Max(1, length), what, source));
    }

    public ImmutableArray<TextFinding> ToImmutable() => [.. all.OrderBy(f => f.Line).ThenBy(f => f.Column)];
}
