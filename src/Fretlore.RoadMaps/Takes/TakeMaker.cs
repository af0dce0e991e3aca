using System.Collections.Immutable;
using Fretlore.Hands.Grips;
using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.RoadMaps.Checking;
using Fretlore.RoadMaps.Model;
using Fretlore.RoadMaps.Search;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Takes;

/// <summary>Makes solos from a road map: every rule kept, playable, in phrases, no two alike.</summary>
public sealed class TakeMaker
{
    private const int MostAttempts = 200;

    private readonly SoloStretch stretch;
    private readonly PhraseModel model;
    private readonly SongHabits habits;
    private readonly ImmutableArray<(LickRule Rule, Riff Riff, int First)> licks;
    private readonly PlaceFinder finder;
    private readonly HashSet<string> made = [];

    public TakeMaker(SoloStretch stretch, PhraseModel? model = null)
    {
        this.stretch = stretch;
        this.model = model ?? new PhraseModel();
        habits = SongHabits.Of(stretch, this.model);
        licks = LickPlaces.In(stretch);
        finder = new PlaceFinder(stretch.Part.Neck);
    }

    /// <summary>A take; null when none was found, which for rules that don't conflict is a take no hand can play.</summary>
    /// <param name="seed">Chance; the same seed gives the same takes.</param>
    /// <param name="number">From 1.</param>
    /// <param name="level">From 0, easy, to 1.</param>
    public SoloTake? Make(int seed, int number, double level)
    {
        for (var attempt = 0; attempt < MostAttempts; attempt++)
        {
            if (Attempt(Dice.Of(seed, number, attempt), level) is not { } draft) continue;
            var check = RoadMapChecker.Check(stretch, draft.Bars);
            if (!check.KeepsAll) continue;
            var hands = HandsOf(draft.Bars);
            if (!hands.Problems.IsEmpty || !made.Add(TextOf(draft.Bars))) continue;
            return new SoloTake { Number = number, Level = level, Bars = draft.Bars, Phrases = draft.Phrases, Check = check, Hands = hands.Whole, Discarded = attempt };
        }
        return null;
    }

    private (ImmutableArray<PartBar> Bars, ImmutableArray<TakePhrase> Phrases)? Attempt(Dice dice, double level)
    {
        if (new SkeletonMaker(stretch, model, licks, level, dice).Make() is not { } skeleton) return null;
        if (new RhythmMaker(stretch, skeleton, Pools(level), model, dice).Make() is not { } rhythm) return null;
        var hands = stretch.Bars.Select(_ => (FretWindow?)null).ToArray();
        var heights = new HeightPlan(stretch, skeleton, finder, hands, model, dice);
        var bend = -Math.Log2(Math.Max(0.001, SongHabits.Blend(Math.Pow(2, -model.Bend), habits.Bent, habits.Notes, model.TradeNotes))) + 4 * (1 - level);
        if (new SlotMaker(stretch, skeleton, finder, heights, model, bend, hands).Make(rhythm) is not { } slots) return null;
        var lattice = new Lattice(slots, new StepRules(model, habits, stretch.Part.Neck, level));
        if (!lattice.Prune() || !Landmarks(lattice, dice)) return null;
        var places = new PhraseSampler(stretch, skeleton, lattice, model, dice).Draw();
        if (places is null) return null;
        var notes = new Articulator(model, habits, level, dice).Play(slots, places);
        return (new BarWriter(stretch, skeleton).Write(notes), PhrasesOf(skeleton, slots));
    }

    private Dictionary<int, RhythmPool> Pools(double level)
    {
        var pools = new Dictionary<int, RhythmPool>();
        foreach (var bar in stretch.Bars.Where(b => b.IsFree)) pools[bar.Number] = RhythmPool.Of(bar, model, habits, NotesPerQuarter(bar.Density, level));
        return pools;
    }

    private double NotesPerQuarter(DensityRule? density, double level)
    {
        var slow = 1 / new NoteValue(density?.Slowest ?? ValueBase.Quarter).Length.ToDouble() * model.EasyDensity;
        var fast = 1 / new NoteValue(density?.Fastest ?? ValueBase.Sixteenth).Length.ToDouble() * model.FullDensity;
        return slow + (fast - slow) * level;
    }

    private bool Landmarks(Lattice lattice, Dice dice)
    {
        foreach (var rule in stretch.Map.RulesOf<ContourRule>())
        {
            var own = Enumerable.Range(0, lattice.Slots.Length).Where(i => ReferenceEquals(stretch.Map.RuleIn<ContourRule>(lattice.Slots[i].Bar.Number, stretch.Count), rule)).ToList();
            var marks = own.GroupBy(i => lattice.Slots[i].Bar.Number).Select(g => g.First()).ToList();
            if (own.Count > 0 && own[^1] != marks[^1]) marks.Add(own[^1]);
            if (!new LandmarkChooser(lattice, dice).Choose(rule.Shape, [.. marks])) return false;
        }
        return true;
    }

    private static ImmutableArray<TakePhrase> PhrasesOf(Skeleton skeleton, Slot[] slots) =>
    [
        .. from phrase in skeleton.Phrases
           let own = slots.Where(s => s.Bar.Number >= phrase.First && s.Bar.Number <= phrase.Last).ToList()
           where own.Count > 0
           select new TakePhrase(phrase.Kind, phrase.First, phrase.Last - phrase.First + 1, own[0].Start, own[^1].End, phrase.Riff),
    ];

    /// <summary>The hand plan of the stretch alone.</summary>
    private LineHands HandsOf(ImmutableArray<PartBar> bars)
    {
        var form = stretch.Bars.Select((b, i) => i == 0 ? b.Bar with { Tempos = [new TempoMark(Beats.Zero, new Tempo(new NoteValue(ValueBase.Quarter), (decimal)Math.Round(60 / b.SecondsPerQuarter, 3)))] } : b.Bar).ToValueList();
        var song = new Song
        {
            Info = new SongInfo(stretch.Map.Name),
            Bars = form,
            Parts = [stretch.Part with { Bars = bars.ToValueList() }],
            NoteCount = bars.Sum(b => b.Notes.Count()),
        };
        return HandPlanner.Plan(song, HandSize.Average).Parts[0];
    }

    private static string TextOf(ImmutableArray<PartBar> bars) => string.Join('|', bars.Select(b => string.Join(' ', b.Strands.SelectMany(s => s.Events).Select(
        e => $"{e.Start}{string.Join(',', e.Notes.Select(n => $"{n.String}:{n.Fret}{n.Attack}{n.Bend?.EndCents}"))}"))));
}
