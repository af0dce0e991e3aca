using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Checking;

/// <summary>What a solo has kept and broken of a road map.</summary>
/// <param name="Rules">One for each rule of the map, in its order.</param>
/// <param name="Licks">Where licks were used, in order of time.</param>
/// <param name="Aims">Where targets were hit, in order of time.</param>
public sealed record RoadMapCheck(ImmutableArray<RuleOutcome> Rules, ImmutableArray<LickUse> Licks, ImmutableArray<AimHit> Aims)
{
    public bool KeepsAll => Rules.All(r => r.IsKept);
}

/// <summary>What became of one rule.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Breaks">Where it is broken, in order of time; empty when it is kept.</param>
/// <param name="Remark">What could not be judged, a whole sentence; null when everything could.</param>
public sealed record RuleOutcome(RoadMapRule Rule, ImmutableArray<RuleBreak> Breaks, string? Remark = null)
{
    public bool IsKept => Breaks.IsEmpty;
}

/// <summary>A place where a rule is broken.</summary>
/// <param name="Bar">Bar of the stretch, from 1.</param>
/// <param name="At">Quarter notes from the bar's start; null for the bar as a whole.</param>
/// <param name="What">What is wrong, a sentence without its full stop.</param>
public sealed record RuleBreak(int Bar, Beats? At, string What);

/// <summary>A lick that was drawn on.</summary>
/// <param name="Riff">Its name.</param>
/// <param name="Bar">The bar of the stretch it begins in, from 1.</param>
/// <param name="BarCount">How many bars it takes.</param>
/// <param name="Kept">How many of its moments are played as they stand in it.</param>
/// <param name="Moments">How many it has.</param>
public sealed record LickUse(string Riff, int Bar, int BarCount, int Kept, int Moments);

/// <summary>A target that was hit.</summary>
/// <param name="Aim">The rule: an <see cref="AimRule"/> or the <see cref="EndRule"/>.</param>
/// <param name="Bar">Bar of the stretch, from 1.</param>
/// <param name="At">Quarter notes from the bar's start.</param>
/// <param name="String">The string it is on.</param>
/// <param name="Fret">The fret.</param>
public sealed record AimHit(RoadMapRule Aim, int Bar, Beats At, int String, int Fret);
