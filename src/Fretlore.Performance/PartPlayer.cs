using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Performance;

/// <summary>Plays one part through the unrolled bars.</summary>
internal static class PartPlayer
{
    public static PerformedPart Play(Song song, Part part, ImmutableArray<PerformedBar> bars, Swing[] swings, TempoMap tempo)
    {
        var events = PlayedEvent.AllOf(part, bars, swings);
        var sounding = Attacks.Of(events);
        Beats BarLength(int bar) => song.Bars[bars[bar].Bar].Length;
        var songEnd = bars.Length == 0 ? Beats.Zero : bars[^1].Start + BarLength(bars.Length - 1);
        Ringing.Release(sounding, events, songEnd, BarLength);
        var notes = sounding
            .SelectMany(note => Strokes(note, part.Bars[bars[note.Played.Bar].Bar].Neck, tempo))
            .OrderBy(n => n.Onset).ThenByDescending(n => n.String.Value)
            .ToImmutableArray();
        return new PerformedPart(part, notes);
    }

    private static IEnumerable<PerformedNote> Strokes(Sounding note, Neck neck, TempoMap tempo)
    {
        var curve = Bending.CurveOf(note, neck, tempo);
        var onset = tempo.SecondsAt(note.Onset);
        var whole = Whole(note, tempo);
        var strokes = TremoloPicking.StrokesOf(note);
        if (strokes.Count == 1 && note.First.Trill is { } other)
        {
            foreach (var trilled in Trills.Of(whole, other, note.First.TrillSemitones(neck) ?? 0, tempo)) yield return trilled;
            yield break;
        }
        if (strokes.Count == 1)
        {
            yield return whole with { Pitch = curve };
            yield break;
        }
        for (var i = 0; i < strokes.Count; i++)
        {
            var (start, end) = strokes[i];
            var seconds = tempo.SecondsAt(start);
            yield return whole with
            {
                Onset = start,
                Release = end,
                OnsetSeconds = seconds,
                ReleaseSeconds = tempo.SecondsAt(end),
                Attack = i == 0 ? whole.Attack : Attack.Picked,
                Stroke = i % 2 == 0 == (whole.Stroke != Stroke.Up) ? Stroke.Down : Stroke.Up,
                Pitch = curve.From(seconds - onset),
            };
        }
    }

    private static PerformedNote Whole(Sounding note, TempoMap tempo) => new()
    {
        Note = note.First.Id,
        HeldNotes = note.Values.Skip(1).Select(v => v.Note.Id).ToValueList(),
        Bar = note.Played.Bar,
        String = note.First.String,
        Fret = note.First.Fret,
        Height = note.First.Sounding,
        Onset = note.Onset,
        Release = note.Release,
        OnsetSeconds = tempo.SecondsAt(note.Onset),
        ReleaseSeconds = tempo.SecondsAt(note.Release),
        Velocity = note.Velocity,
        Attack = note.First.Attack == Attack.Held ? Attack.Picked : note.First.Attack,
        Stroke = note.Played.Event.Stroke,
        Damping = note.First.IsDead ? Damping.Dead : note.First.IsPalmMuted ? Damping.Palm : Damping.None,
        Harmonic = note.First.Harmonic,
        IsGhost = note.First.IsGhost,
        IsGrace = note.IsGrace,
        LetsRing = note.Last.LetsRing,
        Spans = note.Played.Event.Spans,
    };
}
