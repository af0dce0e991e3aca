using System.Collections.Immutable;
using Fretlore.Binding.Draft;
using Fretlore.Binding.Problems;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lines;

/// <summary>Collects what is written in one bar.</summary>
internal sealed class BarDraftBuilder
{
    private readonly List<(StrandKind Kind, List<DraftEvent> Events)> sides = [];
    private readonly Dictionary<StrandKind, List<DraftEvent>> latest = [];
    private readonly List<PlacedChange> changes = [];
    private TextSpan? span;
    private bool isBroken;

    public bool HasSides => sides.Count > 0;

    /// <summary>Where the strands of a kind written so far end in this bar.</summary>
    public Beats SideEnd(StrandKind kind) => latest.TryGetValue(kind, out var events) ? events[^1].Event.End : Beats.Zero;

    public TextSpan Span => span ?? default;

    public void Touch(TextSpan place) =>
        span = span is { } before ? TextSpan.FromBounds(Math.Min(before.Start, place.Start), Math.Max(before.End, place.End)) : place;

    /// <summary>Something is wrong in such a way that the bar's length says nothing.</summary>
    public void Break() => isBroken = true;

    /// <summary>Takes in what a strand beside the main one has played; where it goes on right from its last notes it is one strand with them.</summary>
    public void AddSide(StrandCursor cursor)
    {
        if (cursor.Events.Count == 0) return;
        if (latest.TryGetValue(cursor.Kind, out var before) && before[^1].Event.End == cursor.Events[0].Event.Start)
        {
            before.AddRange(cursor.Events);
            return;
        }
        latest[cursor.Kind] = [.. cursor.Events];
        sides.Add((cursor.Kind, latest[cursor.Kind]));
    }

    public void Add(PlacedChange change) => changes.Add(change);

    /// <summary>Changes that came before anything was played; they belong to the next bar.</summary>
    public ImmutableArray<PlacedChange> TakeChanges()
    {
        var taken = changes.ToImmutableArray();
        changes.Clear();
        return taken;
    }

    /// <summary>Makes the bar and starts the next one empty.</summary>
    public DraftBar Build(StrandCursor main, Guitar.Neck neck, Meter? meter, bool isPickup, BarLine endLine, DiagnosticBag problems)
    {
        var strands = ImmutableArray.CreateBuilder<DraftStrand>(sides.Count + 1);
        strands.Add(new DraftStrand(StrandKind.Main, [.. main.Events]));
        if (sides.Count > 0)
        {
            foreach (var (kind, events) in sides.OrderBy(s => s.Kind)) strands.Add(new DraftStrand(kind, [.. events]));
        }
        var bar = new DraftBar
        {
            Kind = BarKind.Music,
            Neck = neck,
            Span = Span,
            Strands = strands.MoveToImmutable(),
            Length = main.At,
            Meter = meter,
            IsPickup = isPickup,
            Changes = TakeChanges(),
            EndLine = endLine,
            IsBroken = isBroken,
        };
        StringConflicts.Check(bar, problems);
        sides.Clear();
        latest.Clear();
        span = null;
        isBroken = false;
        return bar;
    }
}
