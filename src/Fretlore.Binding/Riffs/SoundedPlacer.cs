using Fretlore.Binding.Draft;
using Fretlore.Binding.Lines;
using Fretlore.Binding.Problems;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Riffs;

/// <summary>Plays a riff on another neck at the same pitches: on the same string where the fret exists, or else on the nearest one.</summary>
/// <remarks>
/// Notes that the hand joins on one string (hammered, pulled, glided, held) move together, so that the joint can still be played. Each
/// string takes one note at a time.
/// </remarks>
internal sealed class SoundedPlacer
{
    private readonly Neck from;
    private readonly Neck to;
    private readonly List<Chain> chains = [];
    private readonly Dictionary<(int Bar, int Strand, int Event, bool IsGrace, int Note), Chain> chainOf = [];

    private readonly Dictionary<(int Bar, int Strand, int Event, StringNumber String), Chain> heldChain = [];

    private SoundedPlacer(Neck from, Neck to) => (this.from, this.to) = (from, to);

    /// <summary>Notes joined on one string, from their start in the riff to their end.</summary>
    private sealed class Chain(StringNumber number)
    {
        public StringNumber String { get; } = number;

        public List<Note> Notes { get; } = [];

        public Beats Start { get; set; }

        public Beats End { get; set; }

        public StringNumber? Placed { get; set; }
    }

    /// <summary>The riff's bars on the neck; null, reported at the play, when some note can't be had there.</summary>
    public static Flow? Place(BoundRiff riff, Neck neck, PlaySyntax play, DiagnosticBag problems)
    {
        var placer = new SoundedPlacer(riff.Neck, neck);
        var bars = riff.Flow.Bars.Select(b => b.Bar).ToList();
        placer.FindChains(bars);
        if (placer.PlaceChains() is { } stuck)
        {
            problems.Add(PlaceProblems.CannotSoundThere(play.Span, play.Name.Text, stuck.Notes[0].Fret.Number, stuck.String.Value));
            return null;
        }
        var made = new Flow { WrittenCount = riff.Flow.WrittenCount };
        for (var b = 0; b < bars.Count; b++) made.Add(placer.Moved(bars[b], b), riff.Flow.Bars[b].Origin, riff.Flow.Bars[b].Written);
        made.Repeats.AddRange(riff.Flow.Repeats);
        made.Riffs.AddRange(riff.Flow.Riffs);
        made.RoadMaps.AddRange(riff.Flow.RoadMaps);
        return made;
    }

    private void FindChains(List<DraftBar> bars)
    {
        var start = Beats.Zero;
        var last = new Dictionary<(StrandKind, StringNumber), Chain>();
        for (var b = 0; b < bars.Count; b++)
        {
            for (var s = 0; s < bars[b].Strands.Length; s++)
            {
                var strand = bars[b].Strands[s];
                for (var e = 0; e < strand.Events.Length; e++)
                {
                    var draft = strand.Events[e];
                    var (at, end) = (start + draft.Event.Start, start + draft.Event.End);
                    for (var n = 0; n < draft.Event.Graces.Count; n++) Join((b, s, e, true, n), strand.Kind, draft.Event.Graces[n], at, at);
                    for (var n = 0; n < draft.Event.Notes.Count; n++) Join((b, s, e, false, n), strand.Kind, draft.Event.Notes[n], at, end);
                    foreach (var hold in draft.Holds)
                    {
                        Extend(strand.Kind, hold.String, at, end);
                        if (hold.String is { } held && last.TryGetValue((strand.Kind, held), out var chain)) heldChain[(b, s, e, held)] = chain;
                    }
                }
            }
            start += bars[b].Length;
        }

        void Join((int, int, int, bool, int) place, StrandKind kind, Note note, Beats at, Beats end)
        {
            var isJoined = note.Attack is Attack.HammerOn or Attack.PullOff or Attack.Glide or Attack.PickedGlide;
            if (!isJoined || !last.TryGetValue((kind, note.String), out var chain))
            {
                chain = new Chain(note.String) { Start = at };
                chains.Add(chain);
                last[(kind, note.String)] = chain;
            }
            chain.Notes.Add(note);
            chain.End = Beats.Max(chain.End, end);
            chainOf[place] = chain;
        }

        // A hold makes what ended just here last on.
        void Extend(StrandKind kind, StringNumber? number, Beats at, Beats end)
        {
            foreach (var ((k, s), chain) in last)
            {
                if (k == kind && (number is null || s == number) && chain.End == at) chain.End = end;
            }
        }
    }

    /// <summary>Gives each chain a string; returns one that has none.</summary>
    private Chain? PlaceChains()
    {
        // What can stay where it is stays, before anything is moved onto its string.
        foreach (var chain in chains.Where(c => Fits(c, c.String))) chain.Placed = chain.String;
        var byString = chains.Where(c => c.Placed is not null).GroupBy(c => c.Placed!.Value)
            .ToDictionary(g => g.Key, g => g.OrderBy(c => c.Start).ToList());
        foreach (var chain in chains.Where(c => c.Placed is null))
        {
            foreach (var number in Places.All(to).OrderBy(n => Math.Abs(n.Value - chain.String.Value)))
            {
                if (!byString.TryGetValue(number, out var there)) byString[number] = there = [];
                if (!Fits(chain, number)) continue;
                var next = Next(there, chain.Start);
                if (Meets(there, next - 1, chain) || Meets(there, next, chain)) continue;
                chain.Placed = number;
                there.Insert(next, chain);
                break;
            }
            if (chain.Placed is null) return chain;
        }
        return null;
    }

    // Chains on one string follow one another, so only the ones before and after a place can be in the way.
    private static bool Meets(List<Chain> there, int index, Chain chain) => index >= 0 && index < there.Count
        && (there[index].Start == chain.Start || (there[index].Start < chain.End && chain.Start < there[index].End));

    /// <summary>Where the first chain stands that begins at this time or later.</summary>
    private static int Next(List<Chain> there, Beats start)
    {
        var (low, high) = (0, there.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (there[middle].Start < start) low = middle + 1;
            else high = middle;
        }
        return low;
    }

    private bool Fits(Chain chain, StringNumber number) => to.Tuning.Has(number) && chain.Notes.All(n => FretOn(n, number) is not null);

    private Fret? FretOn(Note note, StringNumber number)
    {
        var stopped = from.Sounding(note.String, note.Fret);
        if (note.Harmonic?.Kind == HarmonicKind.Natural)
        {
            return from.Open(note.String) == to.Open(number) ? to.Above(number, Fret.Open, from.Capo.AboveOpen(note.String, note.Fret)) : null;
        }
        return to.FretOf(number, stopped) is not { } fret || fret.IsOpen && note.Bend is not null ? null : fret;
    }

    private DraftBar Moved(DraftBar bar, int b) => bar with
    {
        Neck = to,
        Strands = [.. bar.Strands.Select((s, i) => new DraftStrand(s.Kind, [.. s.Events.Select((e, j) => Moved(e, b, i, j))]))],
    };

    private DraftEvent Moved(DraftEvent draft, int b, int s, int e)
    {
        var notes = draft.Event.Notes.Select((n, i) => (Note: Moved(n, chainOf[(b, s, e, false, i)]), Span: draft.SpanOfNote(i)))
            .OrderByDescending(n => n.Note.String.Value).ToList();
        var graces = draft.Event.Graces.Select((n, i) => Moved(n, chainOf[(b, s, e, true, i)])).ToValueList();
        return draft with
        {
            Event = draft.Event with { Notes = notes.Select(n => n.Note).ToValueList(), Graces = graces, Shape = null },
            Spans = [.. draft.Spans.Take(graces.Count), .. notes.Select(n => n.Span)],
            Holds = [.. draft.Holds.Select(h => h.String is { } held ? h with { String = MovedString(b, s, e, held) } : h)],
        };
    }

    private Note Moved(Note note, Chain chain)
    {
        var number = chain.Placed ?? note.String;
        var fret = FretOn(note, number) ?? note.Fret;
        var harmonic = note.Harmonic is { Kind: HarmonicKind.Touched } touched
            ? touched with { TouchedAt = to.Above(number, fret, from.Semitones(note.String, note.Fret, touched.TouchedAt)) ?? fret }
            : note.Harmonic is { } other ? other with { TouchedAt = fret } : null;
        return note with { String = number, Fret = fret, Harmonic = harmonic, Trill = note.TrillSemitones(from) is { } trill ? to.Above(number, fret, trill) : null };
    }

    private StringNumber MovedString(int b, int s, int e, StringNumber held) =>
        heldChain.TryGetValue((b, s, e, held), out var chain) && chain.Placed is { } number ? number : held;
}
