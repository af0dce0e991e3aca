using System.Collections.Immutable;
using Fretlore.Exchange.Reports;
using Fretlore.Exchange.Sheets;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Import;

/// <summary>Ties notes through a part's bars: what is held has its note's fret and techniques, and bends go on from where they were.</summary>
internal sealed class HeldNotes(Remarks remarks, string part)
{
    private readonly HashSet<(int Bar, int Strand, int Event, StringNumber String)> heldOn = [];

    public ValueList<PartBar> Tied(List<PartBar> bars, IReadOnlyList<Bar> form)
    {
        var repeats = Repeat.In(form.ToValueList());
        var made = bars.Select(b => b.Strands.Select(s => s.Events.ToArray()).ToArray()).ToArray();
        for (var bar = 0; bar < bars.Count; bar++)
        {
            for (var strand = 0; strand < made[bar].Length; strand++)
            {
                for (var e = 0; e < made[bar][strand].Length; e++)
                {
                    var before = e > 0 ? (bar, strand, e - 1) : Before(bars, form, repeats, bar, strand);
                    if (e == 0 && before is not null && repeats.FirstOrDefault(r => r.First == bar) is { } repeat && !IsSame(before, repeat, bars, form, bar, strand)) before = null;
                    made[bar][strand][e] = Tie(made[bar][strand][e], before, made, bar);
                }
            }
        }
        return bars.Select((b, i) => b with
        {
            Strands = b.Strands.Select((s, j) => s with
            {
                Events = made[i][j].Select((e, k) => e with { Notes = e.Notes.Select(n => n with { IsHeldOn = heldOn.Contains((i, j, k, n.String)) }).ToValueList() }).ToValueList(),
            }).ToValueList(),
        }).ToValueList();
    }

    // What is tied into a repeat has to sound at the end of each pass too, or it can be played only once.
    private static bool IsSame((int Bar, int Strand, int Event)? before, Repeat repeat, List<PartBar> bars, IReadOnlyList<Bar> form, int bar, int strand)
    {
        if (before is not var (b, s, e) || repeat.Endings.Length > 0) return false;
        if (Last(bars, form, repeat.End - 1, bars[bar].Strands[strand].Kind) is not var (b2, s2, e2)) return false;
        var (first, second) = (bars[b].Strands[s].Events[e], bars[b2].Strands[s2].Events[e2]);
        return first.Notes.Select(n => (n.String, n.Fret, n.IsDead)).SequenceEqual(second.Notes.Select(n => (n.String, n.Fret, n.IsDead)));
    }

    // The event of the same strand that sounds up to the bar's start; an ending goes on from the body of its repeat.
    private static (int Bar, int Strand, int Event)? Before(List<PartBar> bars, IReadOnlyList<Bar> form, ImmutableArray<Repeat> repeats, int bar, int strand)
    {
        var current = bars[bar].Strands[strand];
        if (!current.Start.IsZero) return null;
        return Last(bars, form, Repeat.Before(repeats, bar), current.Kind);
    }

    private static (int Bar, int Strand, int Event)? Last(List<PartBar> bars, IReadOnlyList<Bar> form, int bar, StrandKind kind)
    {
        if (bar < 0) return null;
        var strands = bars[bar].Strands;
        for (var s = strands.Count - 1; s >= 0; s--)
        {
            if (strands[s].Kind == kind && strands[s].Events.Count > 0 && strands[s].End >= form[bar].Length) return (bar, s, strands[s].Events.Count - 1);
        }
        return null;
    }

    private Event Tie(Event item, (int Bar, int Strand, int Event)? place, Event[][][] made, int bar)
    {
        if (item.IsRest) return item with { Roll = Roll.None, PickingFinger = null };
        var before = place is var (b, s, e) ? made[b][s][e] : null;
        var tied = item with { Notes = item.Notes.Select(n => Tie(Glided(n, item, before, bar), before, place, bar)).ToValueList() };
        // What only sounds on is neither struck nor rolled.
        return tied.Notes.Any(n => !n.IsTiedFromBefore) ? tied : tied with { Roll = Roll.None, Stroke = Stroke.None, PickingFinger = null };
    }

    // A glide needs a note of its string to come from.
    private Note Glided(Note note, Event item, Event? before, int bar)
    {
        if (note.Attack is not (Attack.Glide or Attack.PickedGlide)) return note;
        if (item.Graces.Any(n => n.String == note.String) || before?.Notes.Any(n => n.String == note.String && !n.IsDead) == true) return note;
        remarks.Add(RemarkKind.Changed, "A glide from where nothing sounds is played as a new note.", part, bar + 1);
        return note with { Attack = Attack.Picked };
    }

    private Note Tie(Note note, Event? before, (int Bar, int Strand, int Event)? place, int bar)
    {
        if (!note.IsTiedFromBefore) return note with { Bend = Sane(note.Bend, 0) };
        var sounding = before?.Notes.FirstOrDefault(n => n.String == note.String && !n.IsDead && n.GlideOut == GlideOut.None && n.Fret == note.Fret);
        if (sounding is null || place is not var (b, s, e))
        {
            remarks.Add(RemarkKind.Changed, "A tie from where nothing sounds is played as a new note.", part, bar + 1);
            return note with { Attack = Attack.Picked, Bend = Sane(note.Bend, 0) };
        }
        heldOn.Add((b, s, e, note.String));
        var from = sounding.Bend?.EndCents ?? 0;
        var bend = Sane(new Bend(from, note.Bend?.ToCents.Select(c => c + from).ToValueList() ?? []), from);
        if (note.Fret.IsOpen) bend = null;
        return sounding with
        {
            Attack = Attack.Held,
            GlideIn = GlideIn.None,
            GlideOut = note.GlideOut,
            Bend = bend,
            Vibrato = note.Vibrato with { AfterMoves = Math.Min(note.Vibrato.AfterMoves, bend?.ToCents.Count ?? 0) },
            IsAccented = false,
            IsStaccato = false,
            IsHeldOn = false,
        };
    }

    // A string can't be let down further than it was bent.
    private static Bend? Sane(Bend? bend, int from)
    {
        if (bend is null) return null;
        var at = Math.Max(bend.FromCents, from);
        var moves = new List<int>();
        foreach (var to in bend.ToCents)
        {
            var height = Math.Clamp(to, 0, 1200);
            if (height == 0 && at == 0) continue;
            moves.Add(at = height);
        }
        return moves.Count == 0 && bend.FromCents == 0 ? null : bend with { ToCents = moves.ToValueList() };
    }
}
