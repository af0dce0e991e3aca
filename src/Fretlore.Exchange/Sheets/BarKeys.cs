using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>Tells bars apart by what is played in them: bars with the same number sound and read the same.</summary>
internal sealed class BarKeys
{
    private readonly Dictionary<(PartBar, Meter, bool), int> numbers = [];

    public int Of(Bar bar, PartBar content)
    {
        var plain = new PartBar(content.Neck, content.Strands.Select(Plain).ToValueList()) { RoadMap = content.RoadMap };
        var key = (plain, bar.Meter, bar.EndLine == BarLine.Double);
        if (!numbers.TryGetValue(key, out var number)) numbers[key] = number = numbers.Count;
        return number;
    }

    private static Strand Plain(Strand strand) => strand with
    {
        Events = strand.Events.Select(e => e with { Graces = e.Graces.Select(Plain).ToValueList(), Notes = e.Notes.Select(Plain).ToValueList() }).ToValueList(),
    };

    // Whether a note is held on is said where it is held.
    private static Note Plain(Note note) => note with { Id = default, IsHeldOn = false };

    /// <summary>True when nothing in the bar's first events is joined to, or held from, what came before.</summary>
    public static bool StandsAlone(PartBar content) => content.Strands.All(s => s.Events.Count == 0 || s.Events[0].Graces.Concat(s.Events[0].Notes).All(
        n => n.Attack is Attack.Picked or Attack.Tap));
}
