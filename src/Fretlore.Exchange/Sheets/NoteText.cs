using System.Text;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>A note's fret with its marks, and a hold's marks.</summary>
internal static class NoteText
{
    /// <summary>The note without place and joint.</summary>
    /// <param name="note">A note that is picked, tapped, hammered or glided to, not held.</param>
    /// <param name="palm">True to write a palm mute as a mark.</param>
    /// <param name="bend">False where the bend and vibrato stand after a bracket.</param>
    public static string Of(Note note, bool palm, bool bend = true)
    {
        var text = new StringBuilder();
        if (note.Attack == Attack.Tap) text.Append('t');
        if (bend && note.Bend is { FromCents: > 0 } before) text.Append(SheetWords.Raise(before.FromCents));
        if (note.IsDead) text.Append('x');
        if (!note.IsDead || !note.Fret.IsOpen) text.Append(note.Fret);
        if (note.Harmonic is { } harmonic)
        {
            text.Append('*');
            if (harmonic.Kind == HarmonicKind.Pinch) text.Append('p');
            if (harmonic.Kind == HarmonicKind.Touched) text.Append(harmonic.TouchedAt);
        }
        if (bend) text.Append(Moves(note));
        if (note.DipCents > 0) text.Append('_').Append(SheetWords.Raise(note.DipCents)[1..]);
        if (note.Trill is { } trill) text.Append('~').Append(trill);
        if (note.IsAccented) text.Append('!');
        if (note.IsGhost) text.Append('?');
        if (note.IsStaccato) text.Append('\'');
        if (palm && note.IsPalmMuted) text.Append('m');
        if (note.Finger is { } finger) text.Append('f').Append((int)finger);
        if (note.Tremolo is { } tremolo) text.Append(':').Append(SheetWords.Letter(tremolo));
        return text.ToString();
    }

    /// <summary>Raises, releases and vibrato in their order.</summary>
    public static string Moves(Note note)
    {
        if (note.Bend is null && note.Vibrato.Width == VibratoWidth.None) return "";
        var text = new StringBuilder();
        var moves = note.Bend?.ToCents ?? default;
        var vibrato = note.Vibrato.Width switch { VibratoWidth.None => "", VibratoWidth.Wide => "vv", _ => "v" };
        for (var i = 0; i <= moves.Count; i++)
        {
            if (i == Math.Min(note.Vibrato.AfterMoves, moves.Count)) text.Append(vibrato);
            if (i < moves.Count) text.Append(SheetWords.Raise(moves[i]));
        }
        return text.ToString();
    }
}
