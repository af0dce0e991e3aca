using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Music;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Checking;

/// <summary>Says which rules of a road map a solo keeps and breaks, where licks were used and which targets were hit.</summary>
/// <remarks>
/// Scale, roles, strings, frets, density and rhythm are for the notes of free bars that belong to no lick; what is to be avoided is for licks too;
/// contours, aims and the end are for every bar. The note an aim is reached from need not be in the scale. Grace notes are ornament.
/// </remarks>
public sealed partial class RoadMapChecker
{
    private readonly SoloStretch stretch;
    private readonly IReadOnlyList<PartBar> bars;
    private readonly ImmutableArray<LineMoment> line;
    private readonly ImmutableArray<LickUse> licks;
    private readonly HashSet<LineMoment> inLicks;
    private readonly HashSet<LineMoment> onTheWay;
    private readonly List<AimHit> hits = [];

    private RoadMapChecker(SoloStretch stretch, IReadOnlyList<PartBar> bars)
    {
        (this.stretch, this.bars) = (stretch, bars);
        line = SoloLine.Of(bars, [.. stretch.Bars.Select(b => b.Length)]);
        (licks, inLicks) = LickFinder.Find(stretch, line);
        onTheWay = new HashSet<LineMoment>(ReferenceEqualityComparer.Instance);
        foreach (var (how, at) in Targets()) if (how.Kind != ApproachKind.Bend && at > 0) onTheWay.Add(line[at - 1]);
    }

    /// <param name="stretch">The road map where it stands.</param>
    /// <param name="solo">What is played in its bars, one for each.</param>
    public static RoadMapCheck Check(SoloStretch stretch, IReadOnlyList<PartBar> solo)
    {
        if (solo.Count != stretch.Count) throw new ArgumentException($"The stretch has {stretch.Count} bars, the solo {solo.Count}.", nameof(solo));
        var checker = new RoadMapChecker(stretch, solo);
        var outcomes = stretch.Map.Rules.Select(checker.Judge).ToImmutableArray();
        return new RoadMapCheck(outcomes, checker.licks, [.. checker.hits.OrderBy(h => h.Bar).ThenBy(h => h.At)]);
    }

    private RuleOutcome Judge(RoadMapRule rule) => rule switch
    {
        FixedRule phrase => new(rule, [.. Fixed(phrase)]),
        ScaleRule scale => new(rule, [.. Each(m => BarOf(m).Scale == scale, (m, bar) => OutOfScale(m, bar, scale))]),
        RolesRule roles => Roles(roles),
        StringsRule strings => new(rule, [.. Each(m => BarOf(m).Strings == strings, OffStrings)]),
        FretsRule frets => new(rule, [.. Each(m => BarOf(m).Frets == frets, OffFrets)]),
        DensityRule density => new(rule, [.. Density(density)]),
        RhythmRule rhythm => new(rule, [.. Rhythm(rhythm)]),
        ContourRule contour => new(rule, [.. ContourOf(contour)]),
        AimRule aim => new(rule, [.. Aim(aim)]),
        AvoidRule avoid => new(rule, [.. Avoid(avoid)]),
        EndRule end => new(rule, [.. End(end)]),
        _ => new(rule, []),
    };

    private StretchBar BarOf(LineMoment moment) => stretch.Bars[moment.Bar - 1];

    private bool IsOwn(LineMoment moment) => BarOf(moment).IsFree && !inLicks.Contains(moment);

    /// <summary>What is wrong with each of the notes that a rule about notes is for.</summary>
    private IEnumerable<RuleBreak> Each(Func<LineMoment, bool> isFor, Func<LineMoment, StretchBar, string?> wrong)
    {
        foreach (var moment in line)
        {
            if (IsOwn(moment) && isFor(moment) && wrong(moment, BarOf(moment)) is { } what) yield return new RuleBreak(moment.Bar, moment.At, what);
        }
    }

    private string? OutOfScale(LineMoment moment, StretchBar bar, ScaleRule scale)
    {
        if (bar.ScaleTones is not { } tones || onTheWay.Contains(moment)) return null;
        foreach (var pitchClass in moment.PitchClasses)
        {
            if (!tones.Contains(pitchClass)) return $"{Name(pitchClass, bar)} is not in {scale.Tonic} {scale.Name}";
        }
        return null;
    }

    private RuleOutcome Roles(RolesRule roles)
    {
        var unheard = false;
        var breaks = Each(m => BarOf(m).Roles == roles && !onTheWay.Contains(m), (moment, bar) =>
        {
            if (bar.ScaleTones is not null && !bar.IsStrong(moment.At)) return null;
            if (bar.ChordAt(moment.At) is not { } chord)
            {
                unheard = true;
                return null;
            }
            var allowed = new PitchClassSet();
            foreach (var role in roles.Roles) allowed |= chord.Having(role, bar.ScaleTones);
            return allowed.Contains(NoteName.Wrap(moment.Arrival, 12)) ? null : $"{Name(moment.Arrival, bar)} is none of these in {chord.Symbol}";
        }).ToImmutableArray();
        return new RuleOutcome(roles, breaks, unheard ? "No other part plays a chord under some of these notes." : null);
    }

    private static string? OffStrings(LineMoment moment, StretchBar bar)
    {
        foreach (var note in moment.Notes)
        {
            if (note.String.Value < bar.Strings!.Highest.Value || note.String.Value > bar.Strings.Lowest.Value) return $"string {note.String} is another one";
        }
        return null;
    }

    private static string? OffFrets(LineMoment moment, StretchBar bar)
    {
        var (low, high) = bar.Window!.Value;
        foreach (var note in moment.Notes)
        {
            if (note.Fret.Number < low || note.Fret.Number > high) return string.Create(CultureInfo.InvariantCulture, $"fret {note.Fret.Number} is not from {low} to {high}");
        }
        return null;
    }

    private static string Name(int height, StretchBar bar) => PlaceWords.Note(height, bar.Bar.Key);
}
