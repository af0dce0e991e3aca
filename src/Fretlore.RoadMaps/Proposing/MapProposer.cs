using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.RoadMaps.Checking;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Proposing;

/// <summary>A road map found in takes.</summary>
/// <param name="Song">The song with the road map in the solo's place.</param>
/// <param name="Stretch">The road map where it stands.</param>
/// <param name="Riffs">The names of riffs that were made for it.</param>
/// <param name="Checks">What each take keeps of it.</param>
public sealed record Proposal(Song Song, SoloStretch Stretch, ImmutableArray<string> Riffs, ImmutableArray<RoadMapCheck> Checks)
{
    public RoadMap Map => Stretch.Map;
}

/// <summary>Proposes a road map from takes of one solo: what never changed is fixed, where they wander is free, and by which rules.</summary>
public static class MapProposer
{
    /// <summary>Takes below this number say too little of what is fixed.</summary>
    public const int LeastTakes = 3;

    // A scale that takes leave for so few notes is still their scale: a note on the way to another.
    private const double Passing = 0.03;

    private static readonly Contour[] Contours = [Contour.Rising, Contour.Falling, Contour.Arch, Contour.Valley];

    // Fewer landmarks go some way or other by chance.
    private const int LeastLandmarks = 5;

    /// <param name="song">The song as one of the takes has it.</param>
    /// <param name="reading">Its reading.</param>
    /// <param name="use">Where the solo is, and what the road map is to be called.</param>
    /// <param name="takes">What is played in its bars, take by take; three at least.</param>
    public static Proposal Propose(Song song, SongReading reading, RoadMapUse use, ImmutableArray<ImmutableArray<PartBar>> takes)
    {
        if (takes.Length < LeastTakes) throw new ArgumentException("Three takes at least say what is fixed.", nameof(takes));
        if (takes.Any(t => t.Length != use.BarCount)) throw new ArgumentException("Every take has a bar for each of the stretch.", nameof(takes));
        var set = new TakeSet(song, reading, use, takes);
        var phrases = new PhraseFinder(set).Find();
        var isFree = set.IsFixed.Contains(false);
        ImmutableArray<RoadMapRule> kept = [.. phrases.Rules, .. isFree ? new TargetProposer(set).Find() : []];
        if (isFree)
        {
            foreach (var rule in (RoadMapRule[])[.. Notes(set, phrases, kept), .. RegionProposer.Find(set)]) kept = kept.Add(rule);
            if (Densities(set).FirstOrDefault(d => Keeps(set, phrases, kept.Add(d), d)) is { } density) kept = kept.Add(density);
            if (Contours.Select(c => new ContourRule(c)).FirstOrDefault(c => set.Lines.All(l => Landmarks(l) >= LeastLandmarks) && Keeps(set, phrases, kept.Add(c), c)) is { } contour) kept = kept.Add(contour);
            if (!set.Free.Any(m => m.Notes.Any(n => n.Fret.IsOpen)) && MayBeOpen(kept)) kept = kept.Add(new AvoidRule([new Avoided.OpenStrings()]));
        }
        // What a take breaks is no rule of the solo; a few notes on their way to others don't speak against a scale.
        var checks = Check(set, phrases, kept);
        var notes = Math.Max(1, set.Free.Count());
        kept = [.. kept.Where((_, i) => checks.Sum(c => c.Rules[i].Breaks.Length) is var broken && (broken == 0 || (kept[i] is ScaleRule && broken <= Passing * notes)))];
        kept = [.. kept.OrderBy(Place)];
        var made = With(set, phrases, kept);
        return new Proposal(made.Song, made, [.. phrases.Riffs.Select(r => r.Name)], [.. takes.Select(t => RoadMapChecker.Check(made, t))]);
    }

    // Nothing but chord tones is roles, else a scale.
    private static ImmutableArray<RoadMapRule> Notes(TakeSet takes, FoundPhrases phrases, ImmutableArray<RoadMapRule> kept)
    {
        var roles = new RolesRule([ToneRole.Root, ToneRole.Third, ToneRole.Fifth, ToneRole.Seventh]);
        var checks = Check(takes, phrases, kept.Add(roles));
        return checks.All(c => c.Rules[^1] is { IsKept: true, Remark: null }) ? [roles] : ScaleProposer.Find(takes);
    }

    private static int Landmarks(ImmutableArray<LineMoment> line) => line.Select(m => m.Bar).Distinct().Count();

    private static bool MayBeOpen(ImmutableArray<RoadMapRule> rules) => rules.OfType<FretsRule>().All(f => Math.Min(f.From.Number, f.To.Number) == 0);

    private static bool Keeps(TakeSet takes, FoundPhrases phrases, ImmutableArray<RoadMapRule> rules, RoadMapRule rule) =>
        Check(takes, phrases, rules).All(c => c.Rules[rules.IndexOf(rule)].IsKept);

    private static ImmutableArray<RoadMapCheck> Check(TakeSet takes, FoundPhrases phrases, ImmutableArray<RoadMapRule> rules)
    {
        var stretch = With(takes, phrases, rules);
        return [.. takes.Takes.Select(t => RoadMapChecker.Check(stretch, t))];
    }

    // The narrowest first.
    private static IEnumerable<DensityRule> Densities(TakeSet takes)
    {
        var lengths = takes.Free.Select(m => m.Length).Where(l => l > Beats.Zero).ToList();
        if (lengths.Count == 0) return [];
        var shortest = lengths.Min();
        var values = Enum.GetValues<ValueBase>();
        return values.Where(v => new NoteValue(v).Length <= shortest).Take(1)
            .SelectMany(fastest => values.Where(v => v <= fastest).Reverse().Select(slowest => new DensityRule(slowest, fastest)));
    }

    // In the order a player reads them.
    private static int Place(RoadMapRule rule) => rule switch
    {
        FixedRule => 0,
        ScaleRule or RolesRule => 1,
        StringsRule => 2,
        FretsRule => 3,
        ContourRule => 4,
        DensityRule => 5,
        LickRule => 6,
        AimRule => 7,
        AvoidRule => 8,
        _ => 9,
    };

    /// <summary>The song with the road map in the solo's place.</summary>
    private static SoloStretch With(TakeSet takes, FoundPhrases phrases, ImmutableArray<RoadMapRule> rules)
    {
        var (song, use) = (takes.Song, takes.Use);
        var map = new RoadMap { Name = use.RoadMap, Rules = new ValueList<RoadMapRule>(rules) };
        var part = song.Parts[use.Part];
        var bars = part.Bars.Items.Select((bar, i) => i < use.FirstBar || i >= use.FirstBar + use.BarCount ? bar
            : takes.IsFixed[i - use.FirstBar] ? bar with { RoadMap = map.Name, Repeats = 0 } : new PartBar(bar.Neck, []) { RoadMap = map.Name });
        var riffs = song.Riffs.Concat(phrases.Riffs).ToValueList();
        var fixedUses = rules.OfType<FixedRule>().Select(f => new RiffUse(
            f.Riff, use.Part, use.FirstBar + f.Bars!.Ranges[0].First - 1, riffs.Items.First(r => r.Name == f.Riff).Bars.Count));
        var made = song with
        {
            Parts = new ValueList<Part>(song.Parts.Items.SetItem(use.Part, part with { Bars = bars.ToValueList() })),
            Riffs = riffs,
            RiffUses = song.RiffUses.Where(u => u.Part != use.Part || u.FirstBar + u.BarCount <= use.FirstBar || u.FirstBar >= use.FirstBar + use.BarCount).Concat(fixedUses).ToValueList(),
            RoadMaps = song.RoadMaps.Where(m => m.Name != map.Name).Append(map).ToValueList(),
            RoadMapUses = song.RoadMapUses.Where(u => u.Part != use.Part || u.FirstBar + u.BarCount <= use.FirstBar || u.FirstBar >= use.FirstBar + use.BarCount).Append(use).ToValueList(),
        };
        return SoloStretch.Of(made, takes.Reading, map, use);
    }
}
