using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Performance;

/// <summary>When each note starts: ties joined, grace notes and spread shapes placed.</summary>
/// <remarks>
/// Grace notes come before the beat and take their time from what is before, a 32nd each at most and never more than half of it, so
/// that the main note stays on the beat (common practice); at the song's start they begin on the beat. A rolled shape starts on the
/// beat, a 64th between strings; a strummed one a 6th of that; a raked one ends on the
/// beat, a third of a 64th between strings, and like grace notes takes its time from what is before.
/// </remarks>
internal static class Attacks
{
    private static readonly Beats GraceLength = Beats.Of(1, 8);
    private static readonly Beats RollStep = Beats.Of(1, 16);
    private static readonly Beats RakeStep = Beats.Of(1, 48);
    private static readonly Beats StrumStep = Beats.Of(1, 96);

    public static List<Sounding> Of(IReadOnlyList<PlayedEvent> events)
    {
        var sounding = new List<Sounding>();
        var levels = Loudness.Levels(events);
        var onString = new Dictionary<StringNumber, Sounding>();
        var before = new Dictionary<StrandKind, Beats>();
        for (var i = 0; i < events.Count; i++)
        {
            var played = events[i];
            var shift = AddGraces(played, levels[i], before.GetValueOrDefault(played.Strand), sounding, onString);
            var step = StepOf(played.Event, played.End - played.Start - shift);
            var attacked = played.Event.Notes.Where(note => !TryHold(played, note, onString)).ToList();
            var ahead = played.Event.Roll == Roll.Rake ? RoomBefore(played, attacked, before, onString) / Math.Max(1, 2 * attacked.Count) : Beats.Zero;
            if (ahead > Beats.Zero) step = Beats.Min(step, ahead);
            for (var nth = 0; nth < attacked.Count; nth++)
            {
                var place = step < Beats.Zero || ahead > Beats.Zero ? nth - attacked.Count + 1 : nth;
                var velocity = Loudness.VelocityOf(attacked[nth], levels[i], isGrace: false);
                Add(new Sounding(played, attacked[nth], played.Start + shift + step * place, played.End, velocity), sounding, onString);
            }
            if (!played.Event.IsRest) before[played.Strand] = played.Start + shift;
        }
        return sounding;
    }

    private static bool TryHold(PlayedEvent played, Note note, Dictionary<StringNumber, Sounding> onString)
    {
        if (!note.IsTiedFromBefore || !onString.TryGetValue(note.String, out var held) || !held.Holds(note)) return false;
        held.Hold(played, note);
        return true;
    }

    // From what was played last, in its strand or on its strings, to it; none where grace notes are before it.
    private static Beats RoomBefore(PlayedEvent played, List<Note> attacked, Dictionary<StrandKind, Beats> before, Dictionary<StringNumber, Sounding> onString)
    {
        if (played.Event.Graces.Count > 0) return Beats.Zero;
        var last = before.GetValueOrDefault(played.Strand);
        foreach (var note in attacked)
        {
            if (onString.TryGetValue(note.String, out var sounding)) last = Beats.Max(last, sounding.Onset);
        }
        return Beats.Max(Beats.Zero, played.Start - last);
    }

    private static Beats AddGraces(
        PlayedEvent played, double level, Beats before, List<Sounding> sounding, Dictionary<StringNumber, Sounding> onString)
    {
        var count = played.Event.Graces.Count;
        if (count == 0) return Beats.Zero;
        // The string may have been played in another strand since.
        foreach (var grace in played.Event.Graces)
        {
            if (onString.TryGetValue(grace.String, out var last)) before = Beats.Max(before, last.Onset);
        }
        var room = played.Start - before;
        var onBeat = room <= Beats.Zero;
        if (onBeat) room = played.End - played.Start;
        var length = Beats.Min(GraceLength, room / (2 * count));
        var start = onBeat ? played.Start : played.Start - length * count;
        for (var i = 0; i < count; i++)
        {
            var note = played.Event.Graces[i];
            var onset = start + length * i;
            Add(new Sounding(played, note, onset, onset + length, Loudness.VelocityOf(note, level, true)) { IsGrace = true }, sounding, onString);
        }
        return onBeat ? length * count : Beats.Zero;
    }

    private static void Add(Sounding note, List<Sounding> sounding, Dictionary<StringNumber, Sounding> onString)
    {
        var number = note.First.String;
        if (note.First.Attack is Attack.Glide or Attack.PickedGlide && onString.TryGetValue(number, out var from))
            from.GlideTo = note.First.Sounding - from.First.Sounding;
        onString[number] = note;
        sounding.Add(note);
    }

    // Above zero from the low string up, below zero from the high string down.
    private static Beats StepOf(Event item, Beats length)
    {
        if (item.Notes.Count < 2) return Beats.Zero;
        var most = length / (2 * item.Notes.Count);
        return (item.Roll, item.Stroke) switch
        {
            (Roll.LowToHigh, _) => Beats.Min(RollStep, most),
            (Roll.Rake, _) => Beats.Min(RakeStep, most),
            (Roll.HighToLow, _) => -Beats.Min(RollStep, most),
            (_, Stroke.Down) => Beats.Min(StrumStep, most),
            (_, Stroke.Up) => -Beats.Min(StrumStep, most),
            _ => Beats.Zero,
        };
    }
}
