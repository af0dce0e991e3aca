using Fretlore.Guitar;
using Fretlore.Syntax;

namespace Fretlore.Binding.Riffs;

/// <summary>Finds the neck each riff was written for.</summary>
/// <remarks>
/// A riff's own tuning comes first. Without one it is written for the first part that plays it, directly or within another riff, for a
/// player writes a riff with an instrument in hand. A variation is on its base's neck.
/// </remarks>
internal sealed class RiffOwners(Dictionary<string, RiffSyntax> riffs, Func<RiffSyntax, Neck, Neck> ownNeck, Neck otherwise)
{
    private readonly Dictionary<string, Neck> necks = [];

    /// <summary>Says that a part plays these riffs; the first to say so counts.</summary>
    public void Claim(MusicSyntax line, Neck neck)
    {
        var open = new Stack<(PlaySyntax Play, Neck Neck)>();
        foreach (var play in Plays.In(line).Reverse()) open.Push((play, neck));
        while (open.TryPop(out var next))
        {
            if (!riffs.TryGetValue(next.Play.Name.Text, out var riff)) continue;
            var mine = Claim(riff, next.Neck);
            if (!visited.Add(riff.Name.Text)) continue;
            foreach (var play in Plays.In(riff).Reverse()) open.Push((play, mine));
        }
    }

    private readonly HashSet<string> visited = [];

    public Neck NeckOf(RiffSyntax riff) => Claim(riff, otherwise);

    private Neck Claim(RiffSyntax riff, Neck neck)
    {
        var root = RootOf(riff);
        if (necks.TryGetValue(root.Name.Text, out var known)) return known;
        return necks[root.Name.Text] = ownNeck(root, neck);
    }

    private RiffSyntax RootOf(RiffSyntax riff)
    {
        var seen = new HashSet<string>();
        while (riff.Variation is { } variation && seen.Add(riff.Name.Text) && riffs.TryGetValue(variation.BaseName.Text, out var above))
        {
            riff = above;
        }
        return riff;
    }
}
