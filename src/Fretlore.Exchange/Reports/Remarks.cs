using System.Collections.Immutable;

namespace Fretlore.Exchange.Reports;

/// <summary>Collects remarks; the same one is kept for the first thousand places and then counted.</summary>
internal sealed class Remarks
{
    private const int MostOfOneSort = 1000;

    private readonly List<Remark> all = [];
    private readonly Dictionary<(RemarkKind, string, string?), int> counts = [];

    public void Add(RemarkKind kind, string text, string? part = null, int? bar = null, int? line = null)
    {
        var count = counts[(kind, text, part)] = counts.GetValueOrDefault((kind, text, part)) + 1;
        if (count <= MostOfOneSort) all.Add(new Remark(kind, text, part, bar, line));
    }

    public ImmutableArray<Remark> ToImmutable() =>
    [
        .. all,
        .. counts.Where(c => c.Value > MostOfOneSort).Select(c => new Remark(
            c.Key.Item1, $"{c.Key.Item2} The same {c.Value - MostOfOneSort} times more.", c.Key.Item3)),
    ];
}
