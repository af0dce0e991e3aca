using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>Road maps carried over to other notes, places and riffs.</summary>
public static class RuleChanges
{
    /// <summary>The map with every note it names changed.</summary>
    public static RoadMap WithNotes(this RoadMap map, Func<NoteName, NoteName> change)
    {
        return map with { Rules = map.Rules.Select(Changed).ToValueList() };

        RoadMapRule Changed(RoadMapRule rule) => rule switch
        {
            ScaleRule scale => scale with { Tonic = change(scale.Tonic) },
            AimRule aim => aim with { Target = change(aim.Target), How = Way(aim.How) },
            EndRule end => end with { Target = change(end.Target), How = Way(end.How) },
            AvoidRule avoid => avoid with { What = avoid.What.Select(w => w is Avoided.Note note ? new Avoided.Note(change(note.Name)) : w).ToValueList() },
            _ => rule,
        };

        Approach? Way(Approach? how) => how is { From: { } from } ? how with { From = change(from) } : how;
    }

    /// <summary>The map with every riff it names changed.</summary>
    public static RoadMap WithRiffs(this RoadMap map, Func<string, string> change) => map with
    {
        Rules = map.Rules.Select(rule => rule switch
        {
            FixedRule phrase => phrase with { Riff = change(phrase.Riff) },
            LickRule licks => licks with { Riffs = licks.Riffs.Select(change).ToValueList() },
            _ => rule,
        }).ToValueList(),
    };

    /// <summary>The map with its strings and frets changed; a rule whose strings are gone says nothing about strings any more.</summary>
    /// <param name="map">The map.</param>
    /// <param name="strings">The strings that take the place of those from the highest to the lowest; null for none.</param>
    /// <param name="fret">The fret that takes the place of another.</param>
    public static RoadMap WithPlaces(
        this RoadMap map, Func<(StringNumber Highest, StringNumber Lowest), (StringNumber Highest, StringNumber Lowest)?> strings, Func<Fret, Fret> fret)
    {
        return map with { Rules = map.Rules.Select(Changed).OfType<RoadMapRule>().ToValueList() };

        RoadMapRule? Changed(RoadMapRule rule) => rule switch
        {
            StringsRule on => strings((on.Highest, on.Lowest)) is { } there ? on with { Highest = there.Highest, Lowest = there.Lowest } : null,
            FretsRule frets => frets with { From = fret(frets.From), To = fret(frets.To) },
            AimRule aim => aim with { String = One(aim.String) },
            EndRule end => end with { String = One(end.String) },
            _ => rule,
        };

        StringNumber? One(StringNumber? number) => number is { } on ? strings((on, on))?.Highest : null;
    }
}
