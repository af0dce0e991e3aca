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
    private readonly List<DraftStrand> sides = [];
    private readonly List<PlacedChange> changes = [];
    private TextSpan? span;
    private bool isBroken;

    public bool HasSides => sides.Count > 0;

    /// <summary>Where the strands of a kind written so far end in this bar.</summary>
    public Beats SideEnd(StrandKind kind) =>
        sides.Where(s => s.Kind == kind).Select(s => s.Events[^1].Event.End).DefaultIfEmpty(Beats.Zero).Max();

    public TextSpan Span => span ?? default;

    public void Touch(TextSpan place) =>
        span = span is { } before ? TextSpan.FromBounds(Math.Min(before.Start, place.Start), Math.Max(before.End, place.End)) : place;

    /// <summary>Something is wrong in such a way that the bar's length says nothing.</summary>
    public void Break() => isBroken = true;

    public void AddSide(StrandCursor cursor)
    {
        if (cursor.Events.Count > 0) sides.Add(new DraftStrand(cursor.Kind, [.. cursor.Events]));
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
        foreach (var side in sides.OrderBy(s => s.Kind)) AddOrContinue(strands, side);
        var bar = new DraftBar
        {
            Kind = BarKind.Music,
            Neck = neck,
            Span = Span,
            Strands = strands.ToImmutable(),
            Length = main.At,
            Meter = meter,
            IsPickup = isPickup,
            Changes = TakeChanges(),
            EndLine = endLine,
            IsBroken = isBroken,
        };
        StringConflicts.Check(bar, problems);
        sides.Clear();
        span = null;
        isBroken = false;
        return bar;
    }

    // A strand that goes on right where the one before it of the same kind ended is one strand.
    private static void AddOrContinue(ImmutableArray<DraftStrand>.Builder strands, DraftStrand side)
    {
        var before = strands[^1];
        if (before.Kind == side.Kind && before.Events[^1].Event.End == side.Events[0].Event.Start)
        {
            strands[^1] = new DraftStrand(side.Kind, [.. before.Events, .. side.Events]);
        }
        else strands.Add(side);
    }
}
