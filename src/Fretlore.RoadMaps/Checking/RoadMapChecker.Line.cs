using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Checking;

/// <content>Rules about the line: fixed phrases, time, contour, targets, things to avoid, the end.</content>
public sealed partial class RoadMapChecker
{
    private IEnumerable<RuleBreak> Fixed(FixedRule phrase)
    {
        foreach (var number in stretch.BarsOf(phrase))
        {
            if (stretch.Bars[number - 1].Fixed is not { } written) continue;
            var wanted = SoloLine.Of([written], [stretch.Bars[number - 1].Length]);
            var played = SoloLine.Of([bars[number - 1]], [stretch.Bars[number - 1].Length]);
            for (var i = 0; i < Math.Max(wanted.Length, played.Length); i++)
            {
                if (i < wanted.Length && i < played.Length && wanted[i].At == played[i].At && wanted[i].IsSameAs(played[i])) continue;
                var at = i < played.Length && (i >= wanted.Length || played[i].At < wanted[i].At) ? played[i].At : wanted[i].At;
                yield return new RuleBreak(number, at, $"it is not {phrase.Riff} as written");
                break;
            }
        }
    }

    private IEnumerable<RuleBreak> Density(DensityRule density)
    {
        var (shortest, longest) = (new NoteValue(density.Fastest).Length, new NoteValue(density.Slowest).Length);
        for (var i = 0; i < line.Length; i++)
        {
            var moment = line[i];
            if (!IsOwn(moment) || BarOf(moment).Density != density) continue;
            if (moment.Length < shortest) yield return new RuleBreak(moment.Bar, moment.At, "this note is shorter");
            else if (moment.Length > longest && !MayRest(i)) yield return new RuleBreak(moment.Bar, moment.At, "this note is longer, and the line does not come to rest on it");
        }
    }

    // Before a breath, on a target, before what is not free, at the end.
    private bool MayRest(int at) => line[at].ComesToRest || at + 1 == line.Length || !IsOwn(line[at + 1]) || hitMoments.Contains(line[at]);

    private IEnumerable<RuleBreak> Rhythm(RhythmRule rhythm)
    {
        foreach (var bar in stretch.Bars)
        {
            if (!bar.IsFree || bar.Rhythm != rhythm) continue;
            var own = line.Where(m => m.Bar == bar.Number).ToList();
            if (own.Exists(inLicks.Contains)) continue;
            if (!RhythmTiling.IsMadeOf([.. own.Select(m => m.At)], bar.Length, rhythm.Cells)) yield return new RuleBreak(bar.Number, null, "the bar is not made of these cells");
        }
    }

    private IEnumerable<RuleBreak> ContourOf(ContourRule contour)
    {
        ContourState? state = null;
        LineMoment? last = null;
        foreach (var moment in Landmarks(contour))
        {
            last = moment;
            if (state is not { } before)
            {
                state = ContourState.At(moment.Arrival);
                continue;
            }
            state = before.To(moment.Arrival, contour.Shape);
            if (state is not null) continue;
            yield return new RuleBreak(moment.Bar, moment.At, $"after {Name(before.Last, BarOf(moment))} the line comes to {Name(moment.Arrival, BarOf(moment))} here");
            yield break;
        }
        if (state is { } end && !end.IsComplete(contour.Shape)) yield return new RuleBreak(last!.Bar, last.At, $"up to here the line is not {contour.Shape.ToString().ToLowerInvariant()}");
    }

    /// <summary>The first moment of each of its bars, and the last moment of all.</summary>
    private List<LineMoment> Landmarks(ContourRule contour)
    {
        var own = line.Where(m => ReferenceEquals(stretch.Map.RuleIn<ContourRule>(m.Bar, stretch.Count), contour)).ToList();
        var marks = own.GroupBy(m => m.Bar).Select(g => g.First()).ToList();
        if (own.Count > 0 && !ReferenceEquals(own[^1], marks[^1])) marks.Add(own[^1]);
        return marks;
    }

    private IEnumerable<RuleBreak> Aim(AimRule aim)
    {
        var wanted = aim.Bars?.In(stretch.Count).ToList();
        var any = false;
        foreach (var number in wanted ?? Enumerable.Range(1, stretch.Count).ToList())
        {
            var bar = stretch.Bars[number - 1];
            var at = Enumerable.Range(0, line.Length).FirstOrDefault(i => line[i].Bar == number && IsHit(aim, i), -1);
            if (at >= 0)
            {
                any = true;
                hits.Add(new AimHit(aim, number, line[at].At, line[at].Top.String.Value, line[at].Top.Fret.Number));
            }
            else if (wanted is not null) yield return new RuleBreak(number, null, Missed(aim, bar));
        }
        if (wanted is null && !any) yield return new RuleBreak(stretch.Count, null, $"no bar has {aim.Target} so");
    }

    private string Missed(AimRule aim, StretchBar bar)
    {
        var same = line.Where(m => m.Bar == bar.Number && NoteName.Wrap(m.Arrival, 12) == aim.Target.PitchClass).ToList();
        if (same.Count == 0) return $"there is no {aim.Target}";
        var onTime = same.Where(m => IsOnTime(aim, m)).ToList();
        if (onTime.Count == 0) return $"{aim.Target} comes on {string.Join(" and ", same.Select(m => PlaceWords.Beat(m.At, bar)))} only";
        if (aim.String is { } number && !onTime.Exists(m => m.Top.String == number)) return $"{aim.Target} is on string {onTime[0].Top.String}";
        return $"{aim.Target} is reached in another way";
    }

    private bool IsOnTime(AimRule aim, LineMoment moment)
    {
        var bar = BarOf(moment);
        return aim.Beat is { } beat ? beat <= bar.BeatStarts.Count && moment.At == bar.BeatStarts[beat - 1] : bar.IsStrong(moment.At);
    }

    private bool IsHit(AimRule aim, int at) => NoteName.Wrap(line[at].Arrival, 12) == aim.Target.PitchClass && IsOnTime(aim, line[at])
        && (aim.String is not { } number || line[at].Top.String == number) && (aim.How is not { } how || Approaches.IsReached(how, line[at], at > 0 ? line[at - 1] : null));

    private bool IsEnd(EndRule end, int at) => at == line.Length - 1 && NoteName.Wrap(line[at].Final, 12) == end.Target.PitchClass
        && (end.String is not { } number || line[at].Top.String == number) && (end.How is not { } how || Approaches.IsReached(how, line[at], at > 0 ? line[at - 1] : null));

    private IEnumerable<RuleBreak> End(EndRule end)
    {
        if (line.IsEmpty)
        {
            yield return new RuleBreak(stretch.Count, null, "nothing is played");
            yield break;
        }
        var last = line[^1];
        var bar = BarOf(last);
        if (NoteName.Wrap(last.Final, 12) != end.Target.PitchClass) yield return new RuleBreak(last.Bar, last.At, $"the last note is {Name(last.Final, bar)}");
        else if (end.String is { } number && last.Top.String != number) yield return new RuleBreak(last.Bar, last.At, $"the last note is on string {last.Top.String}");
        else if (end.How is { } how && !Approaches.IsReached(how, last, line.Length > 1 ? line[^2] : null)) yield return new RuleBreak(last.Bar, last.At, "the last note is reached in another way");
        else if (end.IsHeld && last.End < stretch.Length) yield return new RuleBreak(last.Bar, last.At, "the last note stops before the stretch does");
        else hits.Add(new AimHit(end, last.Bar, last.At, last.Top.String.Value, last.Top.Fret.Number));
    }

    private IEnumerable<RuleBreak> Avoid(AvoidRule avoid)
    {
        for (var i = 0; i < line.Length; i++)
        {
            var moment = line[i];
            if (!BarOf(moment).IsFree || (avoid.Bars is { } bars && !bars.Contains(moment.Bar, stretch.Count))) continue;
            foreach (var thing in avoid.What)
            {
                if (Met(thing, moment, i > 0 && !moment.FollowsRest ? line[i - 1] : null) is { } what) yield return new RuleBreak(moment.Bar, moment.At, what);
            }
        }
    }

    private string? Met(Avoided thing, LineMoment moment, LineMoment? before) => thing switch
    {
        Avoided.Note note when moment.PitchClasses.Contains(note.Name.PitchClass) => $"here is {note.Name}",
        Avoided.OpenStrings when moment.Notes.Any(n => n.Fret.IsOpen && n.Harmonic is null) => "an open string sounds",
        Avoided.Bends when moment.Heard.Length > 1 || moment.Top.Bend is not null && moment.Arrival != moment.Top.Sounding.Midi => "this note is bent",
        Avoided.Slides when moment.Notes.Any(n => n.GlideIn != GlideIn.None || n.GlideOut != GlideOut.None || n.Attack is Attack.Glide or Attack.PickedGlide) => "this note is slid",
        Avoided.Repeats when before is not null && before.Final == moment.Arrival => $"{Name(moment.Arrival, BarOf(moment))} comes twice in a row",
        Avoided.Leaps leaps when before is not null && Math.Abs(moment.Arrival - before.Final) > leaps.Semitones =>
            $"from {Name(before.Final, BarOf(moment))} to {Name(moment.Arrival, BarOf(moment))} is a wider leap",
        _ => null,
    };

    /// <summary>Each target that is hit and how it is to be reached, with the index of its moment.</summary>
    private IEnumerable<(Approach How, int At)> Targets()
    {
        for (var i = 0; i < line.Length; i++)
        {
            foreach (var rule in stretch.Map.Rules)
            {
                var isHit = rule switch
                {
                    AimRule aim => (aim.Bars is null || aim.Bars.Contains(line[i].Bar, stretch.Count)) && IsHit(aim, i),
                    EndRule end => IsEnd(end, i),
                    _ => false,
                };
                if (!isHit) continue;
                hitMoments.Add(line[i]);
                if (rule is AimRule { How: { } way }) yield return (way, i);
                else if (rule is EndRule { How: { } lastWay }) yield return (lastWay, i);
            }
        }
    }

    private readonly HashSet<LineMoment> hitMoments = new(ReferenceEqualityComparer.Instance);
}
