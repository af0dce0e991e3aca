using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Search;

/// <summary>The places on the neck where a rule-keeping note can be at a time, in the bars of one stretch.</summary>
internal sealed class PlaceFinder(Neck neck)
{
    // A whole step is the most that is bent without being asked for; the first frets are too stiff to bend (common practice).
    private const int WidestBend = 2;
    private const int LowestBentFret = 3;
    private const int LowestBentString = 4;

    private const int HighestFret = 22;

    private readonly Dictionary<(int Bar, Beats At, bool Bends, FretWindow? Hand), List<PlaceNode>> known = [];

    /// <summary>Notes of the scale, or of the roles, on the strings and frets of the bar that are not to be avoided.</summary>
    /// <param name="bar">The bar.</param>
    /// <param name="at">Quarter notes from its start.</param>
    /// <param name="bends">True to have bent notes among them.</param>
    /// <param name="hand">Frets to stay on besides the rule's; null for no matter.</param>
    public IReadOnlyList<PlaceNode> At(StretchBar bar, Beats at, bool bends, FretWindow? hand)
    {
        if (known.TryGetValue((bar.Number, at, bends, hand), out var found)) return found;
        return known[(bar.Number, at, bends, hand)] = FindAt(bar, at, bends, hand);
    }

    private List<PlaceNode> FindAt(StretchBar bar, Beats at, bool bends, FretWindow? hand)
    {
        var nodes = new List<PlaceNode>();
        var tones = bar.TonesAt(at);
        foreach (var (number, fret, height) in Places(bar, hand))
        {
            if (IsOf(tones, height) && !bar.ForbidsNote(height)) nodes.Add(new PlaceNode(number, fret, 0, height, height));
            if (!bends || fret < LowestBentFret || number > LowestBentString || !IsOf(bar.ScaleTones, height)) continue;
            for (var bend = 1; bend <= WidestBend; bend++)
            {
                var reached = height + bend;
                if (IsOf(tones, reached) && !bar.ForbidsNote(reached)) nodes.Add(new PlaceNode(number, fret, bend, reached, reached));
            }
        }
        return nodes;
    }

    /// <summary>Places of a target, reached so that what it asks of the note itself is kept.</summary>
    public List<PlaceNode> Target(StretchBar bar, Beats at, NoteName target, Approach? how, StringNumber? only, FretWindow? hand)
    {
        var nodes = new List<PlaceNode>();
        var tones = bar.TonesAt(at);
        if (!IsOf(tones, target.PitchClass) || bar.ForbidsNote(target.PitchClass)) return nodes;
        if ((how is { Kind: ApproachKind.Bend } && bar.Forbids<Avoided.Bends>()) || (how is { Kind: ApproachKind.Slide } && bar.Forbids<Avoided.Slides>())) return nodes;
        foreach (var (number, fret, height) in Places(bar, hand))
        {
            if (only is { } on && on.Value != number) continue;
            if (how is not { Kind: ApproachKind.Bend })
            {
                if (NoteName.Wrap(height, 12) == target.PitchClass && MaySlide(how, fret) && MayFinger(how, fret)) nodes.Add(new PlaceNode(number, fret, 0, height, height));
                continue;
            }
            if (fret == 0) continue;
            for (var bend = 1; bend <= 3; bend++)
            {
                if (how.Semitones is { } size ? size != bend : how.From is null && bend > WidestBend) continue;
                if (how.From is { } from && NoteName.Wrap(height, 12) != from.PitchClass) continue;
                if (NoteName.Wrap(height + bend, 12) == target.PitchClass) nodes.Add(new PlaceNode(number, fret, bend, height + bend, height + bend));
            }
        }
        return nodes;
    }

    /// <summary>Places of the note that a target is reached from, which need not be in the scale.</summary>
    public List<PlaceNode> Before(StretchBar bar, Beats at, NoteName target, Approach how, FretWindow? hand)
    {
        var nodes = FindAt(bar, at, false, hand);
        if (how.From is null && how.Kind != ApproachKind.Step) return nodes;
        foreach (var (number, fret, height) in Places(bar, hand))
        {
            var away = NoteName.Wrap(how.Side == Side.Below ? target.PitchClass - height : height - target.PitchClass, 12);
            var leads = how.From is { } from ? NoteName.Wrap(height, 12) == from.PitchClass : how.Semitones is { } size ? away == size : away is 1 or 2;
            var node = new PlaceNode(number, fret, 0, height, height);
            if (leads && !bar.ForbidsNote(height) && !nodes.Contains(node)) nodes.Add(node);
        }
        return nodes;
    }

    private static bool MaySlide(Approach? how, int fret) => how is not { Kind: ApproachKind.Slide } || fret > (how.Side == Side.Above ? 0 : 1);

    // Nothing is hammered on to an open string.
    private static bool MayFinger(Approach? how, int fret) => how is not { Kind: ApproachKind.HammerOn } || fret > 0;

    private IEnumerable<(int String, int Fret, int Height)> Places(StretchBar bar, FretWindow? hand)
    {
        for (var number = 1; number <= neck.StringCount; number++)
        {
            for (var fret = 0; fret <= Math.Min(neck.HighestFret.Number, bar.Window is null ? HighestFret : 36); fret++)
            {
                if (!bar.Allows(number, fret) || neck.Capo.IsBehind(new StringNumber(number), new Fret(fret)) || (hand is { } window && !window.Contains(fret))) continue;
                if (fret == 0 && bar.Forbids<Avoided.OpenStrings>()) continue;
                yield return (number, fret, neck.Sounding(new StringNumber(number), new Fret(fret)).Midi);
            }
        }
    }

    private static bool IsOf(PitchClassSet? tones, int height) => tones is not { } set || set.Contains(NoteName.Wrap(height, 12));
}
