using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Fretlore.Binding.Draft;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Form;

/// <summary>Gives notes their ids, one after another, and keeps where each is written.</summary>
internal sealed class NoteNumbering
{
    // Kept event by event and put together once: one long array that grows would cost more than all the notes.
    private readonly List<ImmutableArray<TextSpan>> spans = [];
    private readonly Dictionary<NoteId, TextSpan> symbols = [];
    private int next;

    public int Count => next;

    public ImmutableArray<TextSpan> TakeSpans()
    {
        var all = ImmutableArray.CreateBuilder<TextSpan>(next);
        foreach (var some in spans) all.AddRange(some);
        return all.MoveToImmutable();
    }

    /// <summary>Makes room for so many events more.</summary>
    public void Expect(int events) => spans.EnsureCapacity(spans.Count + events);

    /// <summary>Where the chord symbol of an event is stated, by the event's first note.</summary>
    public IReadOnlyDictionary<NoteId, TextSpan> Symbols => symbols;

    public PartBar Number(DraftBar bar) => new(bar.Neck, Number(bar.Strands)) { Repeats = bar.Repeats, RoadMap = bar.RoadMap };

    private ValueList<Strand> Number(ImmutableArray<DraftStrand> strands)
    {
        if (strands.IsEmpty) return default;
        var numbered = new Strand[strands.Length];
        for (var s = 0; s < numbered.Length; s++)
        {
            var drafts = strands[s].Events;
            var events = new Event[drafts.Length];
            for (var e = 0; e < events.Length; e++) events[e] = Number(drafts[e]);
            numbered[s] = new Strand(strands[s].Kind, new(ImmutableCollectionsMarshal.AsImmutableArray(events)));
        }
        return new(ImmutableCollectionsMarshal.AsImmutableArray(numbered));
    }

    private Event Number(DraftEvent draft)
    {
        if (draft.NoteCount == 0) return draft.Event;
        var graces = Number(draft.Event.Graces);
        var notes = Number(draft.Event.Notes);
        spans.Add(draft.Spans);
        if (draft.SymbolSpan is { } stated && notes.Count > 0) symbols.Add(notes[0].Id, stated);
        return graces.Count == 0 ? draft.Event with { Notes = notes } : draft.Event with { Graces = graces, Notes = notes };
    }

    private ValueList<Note> Number(ValueList<Note> notes)
    {
        if (notes.Count == 0) return notes;
        var numbered = new Note[notes.Count];
        for (var n = 0; n < numbered.Length; n++) numbered[n] = notes[n] with { Id = new NoteId(next++) };
        return new(ImmutableCollectionsMarshal.AsImmutableArray(numbered));
    }
}
