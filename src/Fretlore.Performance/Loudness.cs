using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Performance;

/// <summary>How hard the notes of a part are played.</summary>
/// <remarks>A dynamic holds for the whole part until the next one; a crescendo leads evenly to the next dynamic, or one step on where none follows.</remarks>
public static class Loudness
{
    private const int Step = 16;

    /// <summary>MIDI velocity of a dynamic; the standard leaves the steps open, these are even and centre on mezzo-forte (common practice).</summary>
    public static int LevelOf(Dynamic dynamic) => 32 + Step * (int)dynamic;

    /// <summary>The level at each event, before what is special to a note.</summary>
    /// <param name="events">All events of the part in order of time.</param>
    internal static double[] Levels(IReadOnlyList<PlayedEvent> events)
    {
        var levels = new double[events.Count];
        double level = LevelOf(Dynamic.MezzoForte);
        for (var i = 0; i < events.Count;)
        {
            if (events[i].Event.Dynamic is { } dynamic) level = LevelOf(dynamic);
            var direction = DirectionOf(events[i].Event);
            if (direction == 0)
            {
                levels[i++] = level;
                continue;
            }
            var after = i + 1;
            while (after < events.Count && DirectionOf(events[after].Event) == direction && events[after].Event.Dynamic is null) after++;
            var target = after < events.Count && events[after].Event.Dynamic is { } next && Math.Sign(LevelOf(next) - level) == direction
                ? LevelOf(next)
                : level + direction * Step;
            var (start, end) = (events[i].Start, after < events.Count ? events[after].Start : events[after - 1].End);
            for (; i < after; i++) levels[i] = level + (target - level) * ((events[i].Start - start) / Longer(end - start)).ToDouble();
            level = target;
        }
        return levels;
    }

    internal static int VelocityOf(Note note, double level, bool isGrace)
    {
        var touch = note.Attack switch
        {
            Attack.HammerOn or Attack.PullOff or Attack.HammerFromNowhere or Attack.Glide => -10,
            Attack.Tap => -4,
            _ => 0,
        };
        if (note.IsAccented) touch += 18;
        if (note.IsGhost) touch -= 28;
        if (note.IsDead) touch -= 8;
        if (isGrace) touch -= 8;
        return Math.Clamp((int)Math.Round(level) + touch, 1, 127);
    }

    private static int DirectionOf(Event item) =>
        item.Spans.HasFlag(Spans.Crescendo) ? 1 : item.Spans.HasFlag(Spans.Diminuendo) ? -1 : 0;

    private static Beats Longer(Beats length) => length > Beats.Zero ? length : Beats.Quarter;
}
