using System.Collections.Immutable;
using Fretlore.Music.Chords;

namespace Fretlore.Reading.Chords;

/// <summary>What each unusual thing about a chord name costs; tuned on open chord data and on guitar voicings, and held by tests.</summary>
internal static class ChordPricing
{
    private const double ForeignBass = 1.2;
    private const double HarshForeignBass = 1.6;

    // Under a bare fifth the bass is less clearly foreign.
    private const double BareForeignBass = 0.3;
    private const double ThirdMissing = 1.8;
    private const double OutsideKey = 0.4;
    private const double RootMissing = 1.8;

    // Cost of a tone beyond the family by semitones above the root; a tone that makes another family is dear so that the family wins.
    // Columns:                                       -    b9   9     #9   3   11   #11  5    b13  13    b7   7
    private static ReadOnlySpan<double> MajorTriad => [0, 1.6, 0.5, 1.7, 9, 1.0, 1.3, 9, 2.3, 9, 9, 9];

    private static ReadOnlySpan<double> MinorTriad => [0, 2.0, 0.55, 9, 9, 0.8, 1.7, 9, 1.6, 9, 9, 9];

    private static ReadOnlySpan<double> Fifth => [0, 1.5, 3, 3, 9, 3, 1.4, 9, 1.6, 1.8, 3, 3];

    private static ReadOnlySpan<double> NoThird => [0, 1.5, 0.5, 3, 9, 0.7, 1.4, 9, 1.6, 1.6, 3, 3];

    private static ReadOnlySpan<double> Altered => [0, 1.8, 0.7, 1.7, 9, 1.2, 1.5, 2.2, 1.6, 1.2, 3, 3];

    private static ReadOnlySpan<double> Sixth => [0, 1.8, 0.1, 1.7, 9, 1.0, 0.8, 9, 1.5, 9, 3, 3];

    private static ReadOnlySpan<double> Dominant => [0, 0.6, 0.25, 0.6, 9, 1.3, 0.5, 1.0, 0.7, 0.35, 0, 3];

    private static ReadOnlySpan<double> MajorSeventh => [0, 1.8, 0.25, 1.5, 9, 1.0, 0.5, 1.2, 1.5, 0.5, 3, 0];

    private static ReadOnlySpan<double> MinorSeventh => [0, 1.5, 0.25, 9, 9, 0.4, 1.8, 1.2, 1.3, 0.6, 3, 2.5];

    private static ReadOnlySpan<double> Diminished => [0, 1.2, 0.6, 9, 9, 0.6, 9, 1.4, 1.0, 1.2, 2.5, 1.2];

    /// <summary>Cost of a root, a kind and a bass; <paramref name="parts"/> gets its parts when given.</summary>
    /// <param name="kind">Family, tensions and omitted tones.</param>
    /// <param name="bass">Semitones of the bass above the root.</param>
    /// <param name="foreignBass">True when the bass is no part of the kind.</param>
    /// <param name="rootInKey">False when there is a key and the root is none of its notes.</param>
    internal static double Price(ChordKind kind, int bass, bool foreignBass, bool rootInKey, ImmutableArray<CostPart>.Builder? parts)
    {
        var family = kind.Family;
        var total = family.Rarity;
        if (family.Rarity > 0) parts?.Add(new CostPart(CostReason.RareFamily, family.Rarity));
        if (foreignBass)
        {
            var amount = bass is 2 or 5 or 9 or 10 ? ForeignBass : HarshForeignBass;
            if (kind.Family.Tones.Count == 2) amount += BareForeignBass;
            total += amount;
            parts?.Add(new CostPart(CostReason.BassIsForeign, amount, kind.DegreeOf(bass)));
        }
        else if (bass != 0)
        {
            var amount = Inversion(kind, bass);
            total += amount;
            parts?.Add(new CostPart(CostReason.BassIsNotRoot, amount, kind.DegreeOf(bass)));
        }
        if (!rootInKey)
        {
            total += OutsideKey;
            parts?.Add(new CostPart(CostReason.RootOutsideKey, OutsideKey));
        }
        foreach (var omitted in kind.Omitted)
        {
            var (why, amount) = omitted == 0 ? (CostReason.RootMissing, RootMissing)
                : omitted == family.Third ? (CostReason.ThirdMissing, ThirdMissing)
                : (CostReason.FifthMissing, FifthMissing(kind));
            total += amount;
            parts?.Add(new CostPart(why, amount, kind.DegreeOf(omitted)));
        }
        if (kind.Tensions.IsEmpty) return total;
        var prices = TensionPrices(family);
        foreach (var tension in kind.Tensions)
        {
            total += prices[tension];
            parts?.Add(new CostPart(CostReason.Tension, prices[tension], kind.DegreeOf(tension)));
        }
        return total;
    }

    private static double Inversion(ChordKind kind, int bass)
    {
        var family = kind.Family;
        if (bass == family.Third) return 0.9;
        if (bass == family.Fifth) return family.Fifth == 7 ? 0.8 : 0.85;
        if (bass == family.Seventh) return 1.3;
        return family.Tones.Contains(bass) ? 1.1 : 1.6;
    }

    // With a third and a seventh the fifth says nothing; without the third it is half of what is left.
    private static double FifthMissing(ChordKind kind)
    {
        var family = kind.Family;
        if (family.Third < 0) return 1.0;
        // A sharp eleventh or flat thirteenth without the fifth beside it is rather an altered fifth.
        if (kind.Tensions.Contains(6) || kind.Tensions.Contains(8)) return 0.6;
        return family.Seventh > 0 ? 0.2 : family.HasSixth || !kind.Tensions.IsEmpty ? 0.4 : 0.5;
    }

    private static ReadOnlySpan<double> TensionPrices(ChordFamily family) => family switch
    {
        { HasSixth: true } => Sixth,
        { Fifth: 6, Third: 3 } => Diminished,
        { Seventh: 11, Third: not 3 } => MajorSeventh,
        { Seventh: > 0, Third: 3 } => MinorSeventh,
        { Seventh: 10 } => Dominant,
        { Third: 4, Fifth: 7 } => MajorTriad,
        { Third: 3, Fifth: 7 } => MinorTriad,
        { Third: -1 } => family.Tones.Count == 2 ? Fifth : NoThird,
        _ => Altered,
    };
}
