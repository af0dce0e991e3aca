using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Reading.Moments;

/// <summary>A note as it sounds within one bar: let-ring notes go on until their string is needed again.</summary>
/// <param name="Start">Quarter notes from the bar's start.</param>
/// <param name="End">Where it stops sounding, at most the bar's end.</param>
/// <param name="WrittenEnd">Where its written value ends.</param>
/// <param name="Note">The note itself.</param>
/// <param name="Event">The event it belongs to.</param>
/// <param name="Strand">The voice it is in.</param>
internal sealed record SoundedNote(Beats Start, Beats End, Beats WrittenEnd, Note Note, Event Event, StrandKind Strand)
{
    public int Midi => Note.Sounding.Midi;

    /// <summary>False for a note tied over from before.</summary>
    public bool IsStruck => !Note.IsTiedFromBefore;
}
