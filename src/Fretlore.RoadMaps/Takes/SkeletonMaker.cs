using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.RoadMaps.Checking;
using Fretlore.RoadMaps.Model;
using Fretlore.RoadMaps.Search;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Takes;

/// <summary>Plans a solo: which licks, where phrases begin and breathe, which of them answer each other, where targets are hit.</summary>
internal sealed class SkeletonMaker(SoloStretch stretch, PhraseModel model, ImmutableArray<(LickRule Rule, Riff Riff, int First)> licks, double level, Dice dice)
{
    // No more than this share of a stretch is licks: the rest is the player's own.
    private const double MostLicks = 0.4;

    private readonly int count = stretch.Count;

    /// <summary>A plan by chance; null when targets can't be placed this time.</summary>
    public Skeleton? Make()
    {
        var chosen = ChooseLicks();
        var phrases = Phrases(chosen);
        if (PlaceTargets(phrases) is not { } targets) return null;
        return Land(phrases, targets);
    }

    private List<PlannedLick> ChooseLicks()
    {
        var chosen = new List<PlannedLick>();
        var left = (int)Math.Ceiling(stretch.Bars.Count(b => b.IsFree) * MostLicks);
        var order = licks.OrderBy(_ => dice.Share()).ToList();
        foreach (var (rule, riff, first) in order)
        {
            var bars = riff.Bars.Count;
            var chance = model.Licks * (0.4 + 0.6 * level);
            // A lick said twice is less of a find than said once, and none is said twice in a row.
            var again = chosen.Count(l => l.Riff.Name == riff.Name);
            if (!dice.Comes(chance / (1 << again)) || bars > left || chosen.Exists(l => l.Riff.Name == riff.Name && first <= l.Last + 1 && l.First <= first + bars) || chosen.Exists(l => first <= l.Last && l.First <= first + bars - 1) || IsAimedAt(first, first + bars - 1)) continue;
            left -= bars;
            chosen.Add(Varied(rule, riff, first));
        }
        return chosen;
    }

    // Bars with targets are left to phrases that lead to them.
    private bool IsAimedAt(int first, int last) => Enumerable.Range(first, last - first + 1).Any(bar =>
        stretch.Map.RulesOf<AimRule>().Any(a => a.Bars is { } bars && bars.Contains(bar, count)) || (bar == count && stretch.Map.RulesOf<EndRule>().Any()));

    private PlannedLick Varied(LickRule rule, Riff riff, int first)
    {
        var moments = LickFinder.MomentsOf(riff).Length;
        var least = Math.Min(moments, LickFinder.MustKeep(moments));
        var isPlain = riff.Content.All(b => b.Strands.Count <= 1);
        if (!isPlain || least == moments || !dice.Comes(model.VariedLicks)) return new PlannedLick(rule, riff, first, moments, false);
        return new PlannedLick(rule, riff, first, least + dice.Below(moments - least), dice.Comes(0.4));
    }

    private List<PlannedPhrase> Phrases(List<PlannedLick> chosen)
    {
        var phrases = new List<PlannedPhrase>();
        for (var bar = 1; bar <= count;)
        {
            if (stretch.Bars[bar - 1].Fixed is not null)
            {
                var (last, riff) = FixedFrom(bar);
                phrases.Add(new PlannedPhrase(PhraseKind.Fixed, bar, last) { Riff = riff });
                bar = last + 1;
            }
            else if (chosen.Find(l => l.First == bar) is { } lick)
            {
                phrases.Add(new PlannedPhrase(PhraseKind.Lick, bar, lick.Last) { Lick = lick, Riff = lick.Riff.Name });
                bar = lick.Last + 1;
            }
            else
            {
                var last = bar;
                while (last < count && stretch.Bars[last].IsFree && !chosen.Exists(l => l.First == last + 1)) last++;
                Free(bar, last, phrases);
                bar = last + 1;
            }
        }
        return phrases;
    }

    private (int Last, string? Riff) FixedFrom(int bar)
    {
        var rule = stretch.Map.RulesOf<FixedRule>().FirstOrDefault(f => stretch.BarsOf(f).Contains(bar));
        var use = stretch.Song.RiffUses.FirstOrDefault(u => u.Part == stretch.Use.Part && u.Riff == rule?.Riff && u.FirstBar == stretch.Use.FirstBar + bar - 1);
        return (Math.Min(count, bar + Math.Max(1, use?.BarCount ?? 1) - 1), rule?.Riff);
    }

    /// <summary>Cuts a free run into phrases, by the costs of their lengths; a target likes to be where a phrase ends.</summary>
    private void Free(int first, int last, List<PlannedPhrase> phrases)
    {
        var length = last - first + 1;
        var ahead = new double[length + 1];
        ahead[length] = 1;
        for (var at = length - 1; at >= 0; at--)
        {
            for (var bars = 1; bars <= model.PhraseBars.Length && at + bars <= length; bars++) ahead[at] += Weight(first + at, bars) * ahead[at + bars];
        }
        for (var at = 0; at < length;)
        {
            var weights = new double[model.PhraseBars.Length];
            for (var bars = 1; bars <= weights.Length && at + bars <= length; bars++) weights[bars - 1] = Weight(first + at, bars) * ahead[at + bars] * (IsPaired(phrases, bars) ? 1 : Bits.Weight(model.OtherLength));
            var chosen = dice.ByWeight(weights) + 1;
            phrases.Add(Related(first + at, first + at + chosen - 1, phrases));
            at += chosen;
        }
    }

    // As long as the question before; anything else begins anew.
    private static bool IsPaired(List<PlannedPhrase> phrases, int bars) => phrases.Count == 0 || phrases[^1].Kind != PhraseKind.Question || phrases[^1].Last - phrases[^1].First + 1 == bars;

    private double Weight(int first, int bars)
    {
        var bits = model.PhraseBars[bars - 1];
        for (var bar = first; bar < first + bars - 1; bar++)
        {
            if (stretch.Map.RulesOf<AimRule>().Any(a => a.Bars is { } b && b.Contains(bar, count))) bits += model.PastTarget;
        }
        return Bits.Weight(bits);
    }

    // A phrase may answer the one before where that one asked, or say it again higher or lower.
    private PlannedPhrase Related(int first, int last, List<PlannedPhrase> phrases)
    {
        var before = phrases.Count - 1;
        if (before >= 0 && phrases[before] is { Kind: PhraseKind.Question } question && question.Last - question.First == last - first && IsAlike(question.First, first, last - first + 1))
        {
            if (dice.Comes(model.Answers)) return new PlannedPhrase(PhraseKind.Answer, first, last, before);
            if (dice.Comes(model.Sequences)) return new PlannedPhrase(PhraseKind.Sequence, first, last, before) { Shift = dice.Comes(0.5) ? -1 : dice.Comes(0.5) ? 1 : -2 };
        }
        return new PlannedPhrase(PhraseKind.Question, first, last);
    }

    private bool IsAlike(int a, int b, int bars) => Enumerable.Range(0, bars).All(i => stretch.Bars[a - 1 + i].Bar.Meter == stretch.Bars[b - 1 + i].Bar.Meter);

    /// <summary>Gives each aim its beat; those for no bar in particular come where a phrase ends.</summary>
    private List<PlannedTarget>[]? PlaceTargets(List<PlannedPhrase> phrases)
    {
        var targets = Enumerable.Range(0, count).Select(_ => new List<PlannedTarget>()).ToArray();
        foreach (var aim in stretch.Map.RulesOf<AimRule>().OrderByDescending(a => a.Beat is not null))
        {
            if (aim.Bars is { } bars)
            {
                foreach (var bar in bars.In(count).Where(b => stretch.Bars[b - 1].IsFree))
                {
                    if (!Place(aim, bar, targets)) return null;
                }
            }
            else if (!IsHitByFixed(aim))
            {
                var free = phrases.Where(p => p.Kind is not (PhraseKind.Fixed or PhraseKind.Lick)).Select(p => p.Last).ToList();
                if (free.Count == 0 || !Place(aim, free[dice.Below(free.Count)], targets)) return null;
            }
        }
        foreach (var own in targets) own.Sort((a, b) => a.At.CompareTo(b.At));
        return targets;
    }

    private bool IsHitByFixed(AimRule aim) => stretch.Bars.Any(b => b.Fixed is not null) && RoadMapChecker.Check(
        stretch.With(stretch.Map with { Rules = [aim, .. stretch.Map.RulesOf<FixedRule>()] }), [.. stretch.Bars.Select(b => b.Fixed ?? new PartBar(stretch.Part.Neck, []))]).Rules[0].IsKept;

    private bool Place(AimRule aim, int bar, List<PlannedTarget>[] targets)
    {
        var own = targets[bar - 1];
        var facts = stretch.Bars[bar - 1];
        var beats = aim.Beat is { } beat ? (beat <= facts.BeatStarts.Count ? [facts.BeatStarts[beat - 1]] : []) : facts.StrongBeats.Items;
        var free = beats.Where(at => !own.Exists(t => t.At == at)).ToList();
        // The same note asked for twice can be one and the same.
        var shared = own.FindIndex(t => beats.Contains(t.At) && t.Wanted.All(w => w.Target.PitchClass == aim.Target.PitchClass && (w.How is null || aim.How is null || w.How == aim.How)));
        if (shared >= 0 && (free.Count == 0 || dice.Comes(0.5)))
        {
            own[shared] = own[shared] with { Rules = own[shared].Rules.Add(aim) };
            return true;
        }
        if (free.Count == 0) return false;
        own.Add(new PlannedTarget(free[dice.Below(free.Count)], [aim]));
        return true;
    }

    /// <summary>Gives each free phrase the beat of its last note: its last target, or a strong beat that leaves room for a breath.</summary>
    private Skeleton? Land(List<PlannedPhrase> phrases, List<PlannedTarget>[] targets)
    {
        var end = stretch.Map.RulesOf<EndRule>().FirstOrDefault();
        var hasEnd = end is not null && stretch.Bars[^1].IsFree;
        var landed = ImmutableArray.CreateBuilder<PlannedPhrase>(phrases.Count);
        foreach (var phrase in phrases)
        {
            if (phrase.Kind is PhraseKind.Fixed or PhraseKind.Lick)
            {
                landed.Add(phrase);
                continue;
            }
            var isLast = hasEnd && phrase.Last == count;
            if (Landing(phrase, targets[phrase.Last - 1], isLast ? end : null) is not { } at) return null;
            landed.Add(phrase with { Landing = at });
        }
        return new Skeleton(landed.MoveToImmutable(), [.. targets.Select(t => t.ToImmutableArray())], hasEnd);
    }

    private Beats? Landing(PlannedPhrase phrase, List<PlannedTarget> targets, EndRule? end)
    {
        var facts = stretch.Bars[phrase.Last - 1];
        var lastTarget = targets.Count > 0 ? targets[^1] : null;
        if (lastTarget is not null && end is null) return lastTarget.At;
        if (lastTarget is not null && lastTarget.Wanted.All(w => w.Target.PitchClass == end!.Target.PitchClass && (w.How is null || end.How is null || w.How == end.How)
            && (w.String is null || end.String is null || w.String == end.String)) && dice.Comes(0.7))
        {
            targets[^1] = lastTarget with { Rules = lastTarget.Rules.Add(end!) };
            return lastTarget.At;
        }
        var room = Beats.Of((long)Math.Ceiling((model.LandingNote + (end?.IsHeld == true ? 0 : model.Breath)) * 4), 4);
        var candidates = (end is null ? facts.StrongBeats.Items : facts.BeatStarts.Items)
            .Where(at => at + room <= facts.Length && (lastTarget is null || at > lastTarget.At)).ToList();
        // A phrase of one bar that lands where it begins would be one note.
        if (phrase.First == phrase.Last && candidates.Exists(at => !at.IsZero)) candidates.RemoveAll(at => at.IsZero);
        if (candidates.Count == 0) candidates = [.. facts.BeatStarts.Items.Where(at => lastTarget is null || at > lastTarget.At)];
        if (candidates.Count == 0) return null;
        // Later landings leave more to play, and are twice as likely each.
        var weights = candidates.Select((_, i) => Math.ScaleB(1, i)).ToArray();
        var landing = candidates[dice.ByWeight(weights)];
        if (end is not null) targets.Add(new PlannedTarget(landing, [end]));
        return landing;
    }
}
