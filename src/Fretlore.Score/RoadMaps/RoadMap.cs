using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>A solo written as rules: which bars are fixed, and what may be played in those that are free.</summary>
public sealed record RoadMap
{
    public required string Name { get; init; }

    /// <summary>In the order written.</summary>
    public ValueList<RoadMapRule> Rules { get; init; }

    /// <summary>The rules of one kind, in the order written.</summary>
    public IEnumerable<T> RulesOf<T>() where T : RoadMapRule => Rules.Items.OfType<T>();

    /// <summary>The rule of a kind that holds in a bar: the last one written for that bar, else the last one written for all.</summary>
    /// <param name="bar">From 1.</param>
    /// <param name="count">Bars of the stretch.</param>
    public T? RuleIn<T>(int bar, int count) where T : RoadMapRule
    {
        T? general = null, own = null;
        foreach (var rule in Rules)
        {
            if (rule is not T candidate) continue;
            if (rule.Bars is null) general = candidate;
            else if (rule.Bars.Contains(bar, count)) own = candidate;
        }
        return own ?? general;
    }

    /// <summary>The last bar that a rule names, counted from the start; 0 when none does.</summary>
    public int LastNamedBar => Rules.Items.Max(r => (int?)r.Bars?.LastNamed) ?? 0;
}

/// <summary>Where a road map stands in the song.</summary>
public sealed record RoadMapUse(string RoadMap, int Part, int FirstBar, int BarCount);
