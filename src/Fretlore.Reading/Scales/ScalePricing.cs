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

    private const double StrangeNote = 0.75;
    private const double NearNote = 0.3;
    private const double ExactFit = 0.9;
    private const double RootNotPlayed = 0.8;

    internal static double Price(Scale scale, int root, NoteWeights weights, bool rootIsGiven) =>
        Price(scale, scale.Tones, root, weights, rootIsGiven);

    /// <summary>The price of a scale with tones added to it, without what adding them costs.</summary>
    internal static double PriceOfUnion(Scale scale, PitchClassSet added, int root, NoteWeights weights, bool rootIsGiven) =>
        Price(scale, scale.Tones | added, root, weights, rootIsGiven);

    private static double Price(Scale scale, PitchClassSet tones, int root, NoteWeights weights, bool rootIsGiven)
    {
        var played = weights.Set.From(root);
        // An exact fit of notes added to fit is no evidence.
        var fits = played == tones && tones == scale.Tones;
        var cost = scale.Rarity;
        foreach (var outside in played.Except(tones))
        {
            cost += OutsideNote + OutsideShare * weights.Share(NoteName.Wrap(outside + root, 12));
        }
        var missing = tones.Except(played);
        if (weights.AtHome.IsEmpty)
        {
            cost += MissingNote * missing.Count;
            if (fits) cost -= ExactFit;
        }
        else
        {
            // In a song the notes of its key are near even where a phrase leaves them out, and an exact fit is often chance.
            var strange = missing.Except(weights.AtHome.From(root)).Count;
            cost += StrangeNote * strange + NearNote * (missing.Count - strange);
            if (fits) cost -= ExactFit / 3;
        }
        if (rootIsGiven) return cost;
        if (!played.Contains(0)) cost += RootNotPlayed;
        return cost - weights.RootEvidence(root) - weights.Share(root);
    }
}
