using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Licks;

/// <summary>Moves a lick as it is to other strings or along the neck: every note by the same way, so that all that is done to it stays.</summary>
internal static class LickMove
{
    /// <summary>The same notes, so many strings lower (or higher, below 0); null where a fret would not be on the neck.</summary>
    public static Riff? Across(Riff riff, int strings)
    {
        return Move(riff, note =>
        {
            var number = note.String.Value + strings;
            if (number < 1 || number > riff.Neck.StringCount) return null;
            var to = new StringNumber(number);
            return riff.Neck.FretOf(to, riff.Neck.Sounding(note.String, note.Fret)) is { } fret ? (to, fret) : null;
        }, 0);
    }

    /// <summary>The same hand, so many frets up (or down, below 0); null where a fret would not be on the neck.</summary>
    public static Riff? Along(Riff riff, int frets) => Move(riff, note => riff.Neck.Above(note.String, note.Fret, frets) is { } fret ? (note.String, fret) : null, frets);

    private static Riff? Move(Riff riff, Func<Note, (StringNumber String, Fret Fret)?> to, int semitones)
    {
        // Touched over a fret, a harmonic is bound to its string and place.
        if (riff.Content.Any(bar => bar.Notes.Any(note => note.Harmonic is { Kind: HarmonicKind.Natural }))) return null;
        var fits = true;
        var content = riff.Content.Select(bar => bar with
        {
            Repeats = 0,
            Strands = bar.Strands.Select(strand => strand with { Events = strand.Events.Select(Of).ToValueList() }).ToValueList(),
        }).ToValueList();
        return fits ? riff with { Content = content, VariationOf = null } : null;

        Event Of(Event item) => item with
        {
            Shape = null,
            ChordSymbol = null,
            Words = null,
            Graces = item.Graces.Select(One).ToValueList(),
            Notes = item.Notes.Select(One).OrderByDescending(n => n.String.Value).ToValueList(),
        };

        Note One(Note note)
        {
            if (to(note) is not var (number, fret) || !riff.Neck.Has(number, fret))
            {
                fits = false;
                return note;
            }
            return note with
            {
                String = number,
                Fret = fret,
                Sounding = note.Sounding + semitones,
                Finger = null,
                Trill = note.Trill is { } trill ? Beside(trill) : null,
                Harmonic = note.Harmonic is { } harmonic ? harmonic with { TouchedAt = Beside(harmonic.TouchedAt) ?? fret } : null,
            };

            // As far from the note as before.
            Fret? Beside(Fret other) => riff.Neck.Above(number, fret, riff.Neck.Semitones(note.String, note.Fret, other));
        }
    }
}
