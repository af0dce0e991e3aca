namespace Fretlore.Hands.Grips;

/// <summary>The grips of every hold met so far: riffs come again, and so do their holds.</summary>
internal sealed class GripTable(GripRules rules)
{
    private readonly GripFinder finder = new(rules);
    private readonly Dictionary<Hold, Grip[]> known = [];

    /// <summary>See <see cref="GripFinder.Find"/>.</summary>
    public Grip[] Of(Hold hold)
    {
        if (!known.TryGetValue(hold, out var grips)) known.Add(hold, grips = finder.Find(hold));
        return grips;
    }
}
