using Fretlore.Binding.Draft;
using Fretlore.Binding.Lines;
using Fretlore.Binding.Problems;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Riffs;

/// <summary>Plays a riff on another neck with the same strings and frets; pitches follow the neck.</summary>
internal static class FrettedPlacer
{
    /// <summary>The riff's bars on the neck; notes the neck has not are reported where it is called for and left out.</summary>
    public static Flow Place(BoundRiff riff, Neck neck, TextSpan at, DiagnosticBag problems) =>
        riff.Neck.Equals(neck) ? riff.Flow : FlowMap.Bars(riff.Flow, bar => OnNeck(bar, neck, riff.Name, at, problems));

    private static DraftBar OnNeck(DraftBar bar, Neck neck, string riff, TextSpan at, DiagnosticBag problems) => bar with
    {
        Neck = neck,
        Strands = [.. bar.Strands.Select(s => new DraftStrand(s.Kind, [.. s.Events.Select(e => OnNeck(e, neck, riff, at, problems))]))],
    };

    private static DraftEvent OnNeck(DraftEvent draft, Neck neck, string riff, TextSpan at, DiagnosticBag problems)
    {
        var notes = draft.Event.Notes.Select((n, i) => (Note: n, Span: draft.SpanOfNote(i))).Where(n => Fits(n.Note)).ToList();
        var graces = draft.Event.Graces.Select((n, i) => (Note: n, Span: draft.Spans[i])).Where(n => Fits(n.Note)).ToList();
        return draft with
        {
            Event = draft.Event with { Notes = Moved(notes), Graces = Moved(graces) },
            Spans = [.. graces.Select(n => n.Span), .. notes.Select(n => n.Span)],
        };

        ValueList<Note> Moved(List<(Note Note, TextSpan Span)> list) =>
            list.Select(n => n.Note with { Sounding = NoteBinder.Sounding(neck, n.Note.String, n.Note.Fret, n.Note.Harmonic) }).ToValueList();

        Diagnostic? Unplayable(Note note)
        {
            if (!neck.Has(note.String, note.Fret) && !neck.Capo.IsBehind(note.String, note.Fret)) return PlaceProblems.RiffBeyondNeck(at, riff, note.String.Value, note.Fret.Number);
            foreach (var fret in note.Trill is { } other ? [note.Fret, other] : (ReadOnlySpan<Fret>)[note.Fret])
            {
                if (neck.Capo.IsBehind(note.String, fret)) return PlaceProblems.FretBehindCapo(at, note.String, fret, neck.Capo);
            }
            return note.Harmonic is { Kind: not HarmonicKind.Pinch } && Harmonic(note) is null ? PlaceProblems.NoNodeUnderCapo(at, riff, note.String, note.Harmonic.TouchedAt) : null;
        }

        int? Harmonic(Note note) => neck.Harmonic(note.String, note.Harmonic is { Kind: HarmonicKind.Touched } ? note.Fret : Fret.Open, note.Harmonic!.TouchedAt);

        bool Fits(Note note)
        {
            if (Unplayable(note) is not { } problem) return true;
            problems.Add(problem);
            return false;
        }
    }
}
