using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Performance;

/// <summary>Plays a trill: the written fret first, then hammered on and pulled off in turn.</summary>
/// <remarks>In 32nds, or in the next shorter values where those would take longer than an 8th of a second; a choice of this project.</remarks>
internal static class Trills
{
    private const double LongestNote = 0.125;

    /// <param name="note">The whole note.</param>
    /// <param name="other">The fret it is trilled with.</param>
    /// <param name="semitones">From the note's pitch up to that fret's.</param>
    /// <param name="tempo">The song's tempos.</param>
    public static IEnumerable<PerformedNote> Of(PerformedNote note, Fret other, int semitones, TempoMap tempo)
    {
        var step = Beats.Of(1, 8);
        if (note.Release - note.Onset < step * 2) step = (note.Release - note.Onset) / 2;
        while (tempo.SecondsAt(note.Onset + step) - note.OnsetSeconds > LongestNote) step /= 2;
        var count = (note.Release - note.Onset).WholeCount(step);
        var isUp = other.Number > note.Fret.Number;
        for (var i = 0; i < count; i++)
        {
            var isOther = i % 2 == 1;
            var start = note.Onset + step * i;
            var end = i == count - 1 ? note.Release : start + step;
            yield return note with
            {
                Fret = isOther ? other : note.Fret,
                Height = isOther ? note.Height + semitones : note.Height,
                Onset = start,
                Release = end,
                OnsetSeconds = tempo.SecondsAt(start),
                ReleaseSeconds = tempo.SecondsAt(end),
                Attack = i == 0 ? note.Attack : isOther == isUp ? Attack.HammerOn : Attack.PullOff,
            };
        }
    }
}
