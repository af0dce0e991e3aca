using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Hands.Grips;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Plans;

/// <summary>Says what a plan asks of the hand, bar by bar, and what no hand can do.</summary>
internal sealed class LoadReader(GripRules rules, IReadOnlyList<Moment> moments, FoundPlan plan)
{
    // By judgement on the demo songs: points a second, and points at one moment.
    private const double Moderate = 2, Demanding = 4, Hard = 7;
    private const double ModerateMoment = 2.5, DemandingMoment = 4, HardMoment = 6.5;

    private const int MostReasons = 3;

    /// <summary>A part of a moment's cost is worth a word from here on.</summary>
    private const double WorthSaying = 0.75;

    /// <summary>Millimetres a second no hand is expected to move at.</summary>
    private const double TooFast = 2500;

    /// <summary>Seconds from which on a shift is no matter of speed.</summary>
    private const double Leisure = 0.6;

    private readonly record struct Reason(double Cost, string Text);

    public LineHands Read(string name, ValueList<Bar> bars, ValueList<PartBar> content)
    {
        var costs = new double[content.Count][];
        var hardest = new double[content.Count];
        var reasons = new List<Reason>[content.Count];
        for (var bar = 0; bar < content.Count; bar++) (costs[bar], reasons[bar]) = (new double[GripCost.EffortCount], []);
        var problems = ImmutableArray.CreateBuilder<HandProblem>();
        Span<double> parts = stackalloc double[GripCost.EffortCount];
        for (var i = 0; i < moments.Count; i++)
        {
            var (moment, grip) = (moments[i], plan.Grips[i]);
            if (grip is null)
            {
                problems.Add(new HandProblem(HandProblemKind.CantBeHeld, moment.Bar, moment.Notes[0], CantBeHeld(moment.Hold)));
                continue;
            }
            parts.Clear();
            var before = i > 0 ? plan.Grips[i - 1] : null;
            GripCost.Of(grip, rules, parts);
            if (before is not null) MoveCost.Of(before, grip, moment, rules, parts);
            var total = 0.0;
            for (var effort = 0; effort < parts.Length; effort++)
            {
                costs[moment.Bar][effort] += parts[effort];
                total += parts[effort];
            }
            hardest[moment.Bar] = Math.Max(hardest[moment.Bar], total);
            AddReasons(reasons[moment.Bar], grip, before, moment, parts);
            AddProblems(problems, grip, before, moment, parts);
        }
        var seconds = Seconds(bars, content.Count);
        var loads = Enumerable.Range(0, content.Count).Select(bar => Load(costs[bar], hardest[bar], seconds[bar], reasons[bar])).ToImmutableArray();
        double[] all = [.. Enumerable.Range(0, GripCost.EffortCount).Select(effort => costs.Sum(bar => bar[effort]))];
        var whole = Load(all, hardest.DefaultIfEmpty(0).Max(), seconds.Sum(), [.. reasons.SelectMany(r => r)]);
        return new LineHands(name, whole, loads, problems.ToImmutable());
    }

    private static HandLoad Load(double[] costs, double hardest, double seconds, List<Reason> reasons)
    {
        var cost = costs.Sum();
        var rate = seconds > 0 ? cost / seconds : 0;
        var difficulty = cost == 0 ? Difficulty.None
            : rate >= Hard || hardest >= HardMoment ? Difficulty.Hard
            : rate >= Demanding || hardest >= DemandingMoment ? Difficulty.Demanding
            : rate >= Moderate || hardest >= ModerateMoment ? Difficulty.Moderate
            : Difficulty.Easy;
        var words = reasons.OrderByDescending(r => r.Cost).Select(r => r.Text).Distinct().Take(MostReasons).ToImmutableArray();
        return new HandLoad(cost, [.. costs], seconds, difficulty, words);
    }

    private void AddReasons(List<Reason> reasons, Grip grip, Grip? before, Moment moment, Span<double> parts)
    {
        foreach (var effort in Enum.GetValues<Effort>())
        {
            var cost = effort == Effort.Shift ? parts[(int)Effort.Shift] + parts[(int)Effort.Hurry] : parts[(int)effort];
            if (cost < WorthSaying || Say(effort, grip, before, moment) is not { } text) continue;
            reasons.Add(new Reason(cost, text));
        }
    }

    private string? Say(Effort effort, Grip grip, Grip? before, Moment moment) => effort switch
    {
        Effort.Stretch => Stretch(grip),
        Effort.Cramp => $"fingers close together at fret {grip.Hold.Presses.Min(p => p.Fret)}",
        Effort.Barre => Barre(grip),
        Effort.Bend => $"a bend under the {FingerWords.Of(grip.Fingers[Array.FindIndex(grip.Hold.Presses, p => p.BendCents >= 100)])}",
        Effort.Shift when before is not null && moment.SinceBefore < Leisure => Text($"a shift from fret {before.Position} to fret {grip.Position} in {moment.SinceBefore:0.00} s"),
        Effort.Hop when moment.SinceBefore < Leisure => Text($"a finger needed again elsewhere within {moment.SinceBefore:0.00} s at fret {grip.Position}"),
        Effort.Legato => $"a slur or glide against the hand's position at fret {grip.Position}",
        Effort.LostNote => "a ringing note let go for the next one",
        _ => null,
    };

    private string Stretch(Grip grip)
    {
        var fingers = Enumerable.Range(1, Grip.FingerCount - 1).Where(grip.Uses).ToList();
        if (fingers.Count == 0) return $"the thumb where the sheet wants it at fret {grip.FretOf((int)Finger.Thumb)}";
        if (fingers.Count == 1) return $"the {FingerWords.Of((Finger)fingers[0])} reaching out of the position to fret {grip.FretOf(fingers[0])}";
        var (low, high) = (grip.FretOf(fingers[0]), grip.FretOf(fingers[^1]));
        var way = rules.Place(high) - rules.Place(low);
        return Text($"a {FingerWords.Count(high - low + 1)}-fret stretch at fret {low} ({way:0} mm from {FingerWords.Of((Finger)fingers[0])} to {FingerWords.Of((Finger)fingers[^1])})");
    }

    private static string? Barre(Grip grip)
    {
        for (var finger = 1; finger < Grip.FingerCount; finger++)
        {
            if (grip.StringsUnder(finger) > 1) return $"a barre of {grip.StringsUnder(finger)} strings at fret {grip.FretOf(finger)} under the {FingerWords.Of((Finger)finger)}";
        }
        return null;
    }

    private void AddProblems(ImmutableArray<HandProblem>.Builder problems, Grip grip, Grip? before, Moment moment, Span<double> parts)
    {
        var note = moment.Notes[Math.Max(0, Array.IndexOf(moment.IsNew, true))];
        if (grip.IsBeyondReach)
        {
            problems.Add(new HandProblem(HandProblemKind.StatedFingersDontReach, moment.Bar, note, ""));
        }
        if (parts[(int)Effort.LostNote] >= HandCosts.HeldNoteLost)
        {
            problems.Add(new HandProblem(HandProblemKind.HeldNoteLost, moment.Bar, note, ""));
        }
        if (before is null || grip.Position == before.Position) return;
        var speed = Math.Abs(rules.Place(grip.Position) - rules.Place(before.Position)) / moment.SinceBefore;
        if (speed <= TooFast) return;
        problems.Add(new HandProblem(HandProblemKind.TooFast, moment.Bar, note, Text(
            $"it has {moment.SinceBefore:0.00} s to get from fret {before.Position} to fret {grip.Position}")));
    }

    private string CantBeHeld(Hold hold)
    {
        var (low, high) = (hold.Presses.Min(p => p.Fret), hold.Presses.Max(p => p.Fret));
        var way = rules.Place(high) - rules.Place(low);
        var most = rules.Reach.Most(Finger.Index, Finger.Little);
        return way > most
            ? Text($"frets {low} and {high} are {way:0} mm apart, index and little finger reach {most:0} mm")
            : $"four fingers can't be on frets {string.Join(", ", hold.Presses.Select(p => p.Fret))} of these strings at once";
    }

    private static double[] Seconds(ValueList<Bar> bars, int count)
    {
        var seconds = new double[count];
        var tempo = Tempo.Default;
        for (var i = 0; i < count; i++)
        {
            var clock = new BarClock(bars[i], tempo, 0);
            (seconds[i], tempo) = (clock.Seconds(bars[i].Length), clock.LastTempo);
        }
        return seconds;
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
