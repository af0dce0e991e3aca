namespace Fretlore.Hands.Grips;

/// <summary>The grips of every hold met so far: riffs come again, and so do their holds.</summary>
/// <param name="rules">Neck and hand.</param>
/// <param name="before">A table of the same rules, whose grips are known from the start; it is left as it is.</param>
internal sealed class GripTable(GripRules rules, GripTable? before = null)
{
    private readonly GripFinder finder = new(rules);
    private readonly Dictionary<Hold, Grip[]> known = before is null ? [] : new(before.known);

    /// <summary>See <see cref="GripFinder.Find"/>.</summary>
    public Grip[] Of(Hold hold)
    {
        if (!known.TryGetValue(hold, out var grips)) known.Add(hold, grips = finder.Find(hold));
        return grips;
    }
}
