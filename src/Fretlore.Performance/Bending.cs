using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Performance;

/// <summary>The pitch over time of one sounding note: bends, glides and vibrato.</summary>
/// <remarks>
/// The moves of a bend share a value evenly; each starts at its share's start and takes the time a finger needs, 0.1 s and 0.06 s more
/// a semitone, at most two thirds of the share. Vibrato fills the rest of its share. A glide takes the end of its value, 0.05 s and
/// 0.015 s more a fret, at most half of it. Under the tremolo arm a held pitch dips and comes back, four and a half times a second; a dip of
/// the arm takes 0.24 s, at most half the note. The times and depths are choices of this project; no standard gives any.
/// </remarks>
internal static class Bending
{
    private const double VibratoHertz = 5.5;
    private const double ArmHertz = 4.5;
    private const double ArmCents = -60;
    private const double DipSeconds = 0.24;
    private const double IndefiniteGlideSemitones = 4;

    public static PitchCurve CurveOf(Sounding note, Neck neck, TempoMap tempo)
    {
        if (!Moves(note)) return PitchCurve.Flat;
        var onset = tempo.SecondsAt(note.Onset);
        var end = tempo.SecondsAt(note.Release) - onset;
        var moves = new List<PitchMove>();
        var vibrato = new List<VibratoStretch>();
        double start = note.First.Bend?.FromCents ?? 0;
        var cents = start;
        if (note.First.GlideIn != GlideIn.None)
        {
            var from = 100 * (note.First.GlideIn == GlideIn.FromBelow ? -Math.Min(IndefiniteGlideSemitones, neck.Capo.AboveOpen(note.First.String, note.First.Fret)) : IndefiniteGlideSemitones);
            var length = Math.Min(GlideSeconds(from), end / 2);
            moves.Add(new PitchMove(0, length, start + from, start, true));
            start += from;
        }
        if (note.First.DipCents > 0)
        {
            // Down and back up at once, before what else happens.
            var length = Math.Min(DipSeconds, end / 2);
            moves.Add(new PitchMove(0, length / 2, cents, cents - note.First.DipCents));
            moves.Add(new PitchMove(length / 2, length, cents - note.First.DipCents, cents));
        }
        for (var i = 0; i < note.Values.Count; i++)
        {
            var value = note.Values[i];
            var from = Math.Max(tempo.SecondsAt(value.Start) - onset, moves.Count > 0 ? moves[^1].End : 0);
            var to = i == note.Values.Count - 1 ? end : Math.Min(tempo.SecondsAt(value.End) - onset, end);
            if (to > from) cents = AddValue(value, from, to, cents, moves, vibrato);
        }
        AddGlideOut(note, neck, end, cents, moves, vibrato);
        return new PitchCurve(start, moves.ToValueList(), vibrato.ToValueList());
    }

    private static bool Moves(Sounding note) => note.GlideTo is not null || note.First.GlideIn != GlideIn.None || note.First.DipCents > 0
        || note.Values.Any(v => v.Spans.HasFlag(Spans.TremoloArm) || v.Note.Bend is not null || v.Note.Vibrato.Width != VibratoWidth.None || v.Note.GlideOut != GlideOut.None);

    private static double AddValue(SoundingValue value, double from, double to, double cents, List<PitchMove> moves, List<VibratoStretch> vibrato)
    {
        var note = value.Note;
        var targets = note.Bend?.ToCents ?? [];
        var vibratoFirst = note.Vibrato.Width != VibratoWidth.None && note.Vibrato.AfterMoves == 0 && targets.Count > 0;
        var shares = Math.Max(1, targets.Count + (vibratoFirst ? 1 : 0));
        var share = (to - from) / shares;
        var at = from;
        if (vibratoFirst || (targets.Count == 0 && note.Vibrato.Width != VibratoWidth.None))
        {
            AddVibrato(note.Vibrato.Width, at, at + share, cents, vibrato);
            at += share;
        }
        else if (targets.Count == 0 && value.Spans.HasFlag(Spans.TremoloArm))
        {
            vibrato.Add(new VibratoStretch(from, to, ArmCents, ArmHertz));
        }
        for (var i = 0; i < targets.Count; i++, at += share)
        {
            var length = Math.Min(0.1 + 0.0006 * Math.Abs(targets[i] - cents), share * 2 / 3);
            moves.Add(new PitchMove(at, at + length, cents, targets[i]));
            cents = targets[i];
            if (note.Vibrato.AfterMoves == i + 1) AddVibrato(note.Vibrato.Width, at + length, at + share, cents, vibrato);
        }
        return cents;
    }

    private static void AddVibrato(VibratoWidth width, double from, double to, double cents, List<VibratoStretch> vibrato)
    {
        if (width == VibratoWidth.None) return;
        var depth = width == VibratoWidth.Wide ? 80 : 35;
        vibrato.Add(new VibratoStretch(from, to, cents > 0 ? -depth : depth, VibratoHertz));
    }

    private static void AddGlideOut(Sounding note, Neck neck, double end, double cents, List<PitchMove> moves, List<VibratoStretch> vibrato)
    {
        var target = (note.GlideTo, note.Last.GlideOut) switch
        {
            ({ } semitones, _) => 100.0 * semitones,
            (_, GlideOut.Downwards) => cents - 100 * Math.Min(IndefiniteGlideSemitones, neck.Capo.AboveOpen(note.Last.String, note.Last.Fret)),
            (_, GlideOut.Upwards) => cents + 100 * IndefiniteGlideSemitones,
            _ => cents,
        };
        if (target == cents) return;
        var length = Math.Min(GlideSeconds(target - cents), end / 2);
        var start = Math.Max(end - length, moves.Count > 0 ? Math.Min(moves[^1].End, end) : 0);
        if (start >= end) return;
        moves.Add(new PitchMove(start, end, cents, target, true));
        if (vibrato.Count > 0 && vibrato[^1].End > start) vibrato[^1] = vibrato[^1] with { End = Math.Max(vibrato[^1].Start, start) };
    }

    private static double GlideSeconds(double cents) => 0.05 + 0.00015 * Math.Abs(cents);
}
