using System.Collections.Immutable;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Draft;

/// <summary>An event whose notes have no ids yet.</summary>
/// <param name="Event">The event; all note ids are zero.</param>
/// <param name="Spans">Where each grace note and then each note is written.</param>
/// <param name="Holds">Strings that go on sounding from the event before and are not yet notes.</param>
internal sealed record DraftEvent(Event Event, ImmutableArray<TextSpan> Spans, ImmutableArray<OpenHold> Holds)
{
    /// <summary>Where its chord symbol is stated.</summary>
    public TextSpan? SymbolSpan { get; init; }

    public int NoteCount => Event.Notes.Count + Event.Graces.Count;

    public TextSpan SpanOfNote(int note) => Spans[Event.Graces.Count + note];
}

/// <summary>A hold that waits for what sounds before it.</summary>
/// <param name="String">The string held, or null for all that sound.</param>
/// <param name="Moves">What happens to the held notes.</param>
/// <param name="Span">Where the hold is written.</param>
/// <param name="GlideOut">How the held notes are left.</param>
internal sealed record OpenHold(Guitar.StringNumber? String, BendMoves Moves, TextSpan Span, GlideOut GlideOut = GlideOut.None);

/// <summary>One strand of a bar in draft.</summary>
internal sealed record DraftStrand(StrandKind Kind, ImmutableArray<DraftEvent> Events)
{
    public bool HasOpenHolds { get; } = Events.Any(e => e.Holds.Length > 0);

    public int NoteCount
    {
        get
        {
            var count = 0;
            foreach (var item in Events) count += item.NoteCount;
            return count;
        }
    }
}
