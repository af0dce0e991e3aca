using Fretlore.Music;
using Fretlore.Music.Scales;

namespace Fretlore.Reading.Scales;

/// <summary>What speaks against a scale: notes outside it, scale notes not played, a rare scale, a root nothing points to.</summary>
internal static class ScalePricing
{
    internal const double FirstNote = 0.5;
    internal const double LastNote = 0.3;
    internal const double LowestNote = 0.3;
    internal const double KeyTonic = 0.8;

    // An outside note costs something however short it is, and more the longer it sounds.
    private const double OutsideNote = 0.6;
    private const double OutsideShare = 6.0;
    private const double MissingNote = 0.45;

    // A scale note that is not played and not in the key either.
    private const double StrangeNote = 0.3;
    private const double ExactFit = 0.9;
    private const double RootNotPlayed = 0.8;

    internal static double Price(Scale scale, int root, NoteWeights weights, bool rootIsGiven)
    {
        var played = weights.Set.From(root);
        var cost = scale.Rarity;
        foreach (var outside in played.Except(scale.Tones))
        {
            cost += OutsideNote + OutsideShare * weights.Share(NoteName.Wrap(outside + root, 12));
        }
        var missing = scale.Tones.Except(played);
        cost += MissingNote * missing.Count;
        if (!weights.AtHome.IsEmpty) cost += StrangeNote * missing.Except(weights.AtHome.From(root)).Count;
        if (played == scale.Tones) cost -= ExactFit;
        if (rootIsGiven) return cost;
        if (!played.Contains(0)) cost += RootNotPlayed;
        return cost - weights.RootEvidence(root) - weights.Share(root);
    }
}
