using Fretlore.Binding.Lines;
using Fretlore.Binding.Problems;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Draft;

/// <summary>Turns holds into the notes they hold, over bar lines, repeats and riffs, once bars stand in the order played.</summary>
internal static class HoldResolver
{
    /// <param name="bars">Bars of one part in the order played; changed in place.</param>
    /// <param name="mayOpenHeld">A riff may begin with a hold of what sounds where it is played: that hold stays open.</param>
    /// <param name="problems">Where holds of nothing are reported.</param>
    public static void Resolve(List<DraftBar> bars, bool mayOpenHeld, DiagnosticBag problems)
    {
        for (var i = 0; i < bars.Count; i++)
        {
            if (!bars[i].HasOpenHolds) continue;
            var strands = bars[i].Strands.ToBuilder();
            for (var s = 0; s < strands.Count; s++)
            {
                if (strands[s].HasOpenHolds) strands[s] = Resolved(bars, i, strands[s], mayOpenHeld, problems);
            }
            bars[i] = bars[i] with { Strands = strands.MoveToImmutable() };
            StringConflicts.Check(bars[i], problems);
        }
    }

    private static DraftStrand Resolved(List<DraftBar> bars, int bar, DraftStrand strand, bool mayOpenHeld, DiagnosticBag problems)
    {
        var events = strand.Events.ToBuilder();
        for (var e = 0; e < events.Count; e++)
        {
            if (events[e].Holds.Length == 0) continue;
            if (e > 0)
            {
                if (events[e - 1].Holds.Length > 0) continue; // an opening hold that stays open
                (events[e - 1], events[e]) = Hold(events[e - 1], events[e], problems);
                continue;
            }
            if (bar == 0 && mayOpenHeld && events[0].Event.Start.IsZero) continue;
            if (!events[0].Event.Start.IsZero || bar == 0 || LastStrand(bars[bar - 1], strand.Kind) is not { } before)
            {
                events[0] = Hold([], events[0], [], problems);
                continue;
            }
            var last = bars[bar - 1].Strands[before].Events[^1];
            if (last.Holds.Length > 0) continue;
            (last, events[0]) = Hold(last, events[0], problems);
            bars[bar - 1] = WithLast(bars[bar - 1], before, last);
        }
        return new DraftStrand(strand.Kind, events.MoveToImmutable());
    }

    // The strand of this kind that sounds up to the bar's end.
    private static int? LastStrand(DraftBar bar, StrandKind kind)
    {
        for (var s = bar.Strands.Length - 1; s >= 0; s--)
        {
            var strand = bar.Strands[s];
            if (strand.Kind == kind && strand.Events.Length > 0 && strand.Events[^1].Event.End >= bar.Length) return s;
        }
        return null;
    }

    private static DraftBar WithLast(DraftBar bar, int strand, DraftEvent last)
    {
        var before = bar.Strands[strand];
        var events = before.Events.SetItem(before.Events.Length - 1, last);
        return bar with { Strands = bar.Strands.SetItem(strand, new DraftStrand(before.Kind, events)) };
    }

    private static (DraftEvent Before, DraftEvent Held) Hold(DraftEvent before, DraftEvent holding, DiagnosticBag problems)
    {
        var heldOn = new HashSet<int>();
        var held = Hold(before.Event.Notes, holding, heldOn, problems);
        if (heldOn.Count == 0) return (before, held);
        var notes = before.Event.Notes.Select((n, i) => heldOn.Contains(i) ? n with { IsHeldOn = true } : n).ToValueList();
        return (before with { Event = before.Event with { Notes = notes } }, held);
    }

    private static DraftEvent Hold(ValueList<Note> before, DraftEvent holding, HashSet<int> heldOn, DiagnosticBag problems)
    {
        var notes = new List<(Note Note, TextSpan Span)>();
        for (var n = 0; n < holding.Event.Notes.Count; n++) notes.Add((holding.Event.Notes[n], holding.SpanOfNote(n)));
        foreach (var hold in holding.Holds)
        {
            var any = false;
            for (var n = 0; n < before.Count; n++)
            {
                var sounding = before[n];
                if (hold.String is { } only && sounding.String != only) continue;
                if (sounding.IsDead || sounding.GlideOut != GlideOut.None) continue;
                if (!heldOn.Add(n)) continue;
                notes.Add((Held(sounding, hold, problems), hold.Span));
                any = true;
            }
            if (!any) problems.Add(TechniqueProblems.NothingToHold(hold.Span));
        }
        var ordered = notes.OrderByDescending(n => n.Note.String.Value).ToList();
        var graces = holding.Spans.Take(holding.Event.Graces.Count);
        var held = holding.Event with { Notes = ordered.Select(n => n.Note).ToValueList() };
        return new DraftEvent(held, [.. graces, .. ordered.Select(n => n.Span)], []) { SymbolSpan = holding.SymbolSpan };
    }

    private static Note Held(Note sounding, OpenHold hold, DiagnosticBag problems)
    {
        var from = sounding.Bend?.EndCents ?? 0;
        if (from == 0 && hold.Moves.To is [0, ..]) problems.Add(TechniqueProblems.NothingToRelease(hold.Moves.Span));
        if (hold.Moves.HasBend && sounding.Fret.IsOpen) problems.Add(TechniqueProblems.BendOfOpenString(hold.Moves.Span));
        return sounding with
        {
            Attack = Attack.Held,
            GlideIn = GlideIn.None,
            GlideOut = hold.GlideOut,
            Bend = hold.Moves.ToBend(from),
            Vibrato = hold.Moves.Vibrato,
            IsAccented = false,
            IsStaccato = false,
            IsHeldOn = false,
        };
    }
}
