using Fretlore.Music;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Checking;

/// <summary>Whether a note is reached in the way a rule asks for.</summary>
internal static class Approaches
{
    /// <param name="how">The way asked for.</param>
    /// <param name="moment">The note.</param>
    /// <param name="before">The moment before it; null when it is the first.</param>
    public static bool IsReached(Approach how, LineMoment moment, LineMoment? before)
    {
        var note = moment.Top;
        var follows = before is not null && !moment.FollowsRest;
        return how.Kind switch
        {
            ApproachKind.Bend => note.Bend is { } bend && Bends(how, note, Math.Max(bend.FromCents, bend.ToCents.Count > 0 ? bend.ToCents[0] : 0)),
            ApproachKind.Slide => IsSlid(how, note, follows ? before : null),
            ApproachKind.HammerOn => note.Attack == Attack.HammerOn && follows && ComesFrom(how, before!),
            ApproachKind.PullOff => note.Attack == Attack.PullOff && follows && ComesFrom(how, before!),
            _ => follows && IsStep(how, before!.Final, moment.Arrival),
        };
    }

    /// <summary>True when the interval from one height to another is the step asked for.</summary>
    public static bool IsStep(Approach how, int from, int to)
    {
        if (how.From is { } name) return NoteName.Wrap(from, 12) == name.PitchClass && from != to && Math.Abs(to - from) <= 12;
        var up = how.Side == Side.Below ? to - from : from - to;
        return how.Semitones is { } size ? up == size : up is 1 or 2;
    }

    private static bool Bends(Approach how, Note note, int cents)
    {
        var semitones = (cents + 50) / 100;
        if (semitones < 1 || (how.Semitones is { } size && semitones != size)) return false;
        return how.From is not { } from || note.Sounding.PitchClass == from.PitchClass;
    }

    private static bool IsSlid(Approach how, Note note, LineMoment? before)
    {
        if (note.GlideIn != GlideIn.None)
        {
            return how.From is null && (how.Side is null || (how.Side == Side.Below) == (note.GlideIn == GlideIn.FromBelow));
        }
        if (note.Attack is not (Attack.Glide or Attack.PickedGlide) || before is null) return false;
        if (how.Side is { } side && (side == Side.Below) != (before.Final < note.Sounding.Midi)) return false;
        return ComesFrom(how, before);
    }

    private static bool ComesFrom(Approach how, LineMoment before) => how.From is not { } from || NoteName.Wrap(before.Final, 12) == from.PitchClass;
}
