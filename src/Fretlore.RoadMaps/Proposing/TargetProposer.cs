using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Proposing;

/// <summary>Finds the notes that every take lands on.</summary>
/// <remarks>The fewer takes, the more they may have in common by chance: a landing counts where chance would bring fewer than one in ten solos such a one.</remarks>
internal sealed class TargetProposer(TakeSet takes)
{
    private const double Chance = 0.1;

    private readonly int count = takes.Takes.Length;

    public ImmutableArray<RoadMapRule> Find()
    {
        var rules = ImmutableArray.CreateBuilder<RoadMapRule>();
        foreach (var bar in takes.Stretch.Bars.Where(b => !takes.IsFixed[b.Number - 1]))
        {
            var found = bar.BeatStarts.Items.Select((at, beat) => OnBeat(bar, at, beat + 1)).OfType<AimRule>().ToList();
            rules.AddRange(found);
            if (found.Count == 0 && SomewhereIn(bar) is { } aim) rules.Add(aim);
        }
        if (End() is { } end) rules.Add(end);
        return rules.ToImmutable();
    }

    private AimRule? OnBeat(StretchBar bar, Beats at, int beat)
    {
        var landings = takes.Lines.Select(l => l.FirstOrDefault(m => m.Bar == bar.Number && m.At == at)).OfType<LineMoment>().ToList();
        if (landings.Count < count || Same(landings.Select(m => NoteName.Wrap(m.Arrival, 12))) is not { } pitchClass) return null;
        // The last note of all is the end's to tell.
        if (landings.TrueForAll(m => takes.Lines.Any(l => ReferenceEquals(l[^1], m)))) return null;
        var how = How(landings);
        // How likely it is that any such place has one note in all takes, when notes come as often as they do.
        var places = takes.Stretch.Bars.Sum(b => b.BeatStarts.Count);
        var share = how is null ? Share(pitchClass) : Share(pitchClass) * 0.3;
        if (places * Math.Pow(share, count - 1) > Chance) return null;
        return new AimRule(Named(pitchClass, bar), how, beat, null, StretchBars.Of(bar.Number, bar.Number));
    }

    private AimRule? SomewhereIn(StretchBar bar)
    {
        for (var pitchClass = 0; pitchClass < 12; pitchClass++)
        {
            if (!takes.Lines.All(l => Lands(l, bar, pitchClass))) continue;
            var others = takes.Stretch.Bars.Where(b => b.Number != bar.Number && !takes.IsFixed[b.Number - 1]).ToList();
            // Half a landing more, so that what was not seen is not impossible.
            var share = (others.Sum(b => takes.Lines.Count(l => Lands(l, b, pitchClass))) + 0.5) / (others.Count * count + 1);
            if (takes.Stretch.Count * 7 * Math.Pow(share, count) <= Chance) return new AimRule(Named(pitchClass, bar), null, null, null, StretchBars.Of(bar.Number, bar.Number));
        }
        return null;
    }

    private static bool Lands(ImmutableArray<LineMoment> line, StretchBar bar, int pitchClass) =>
        line.Any(m => m.Bar == bar.Number && bar.IsStrong(m.At) && NoteName.Wrap(m.Arrival, 12) == pitchClass);

    private EndRule? End()
    {
        if (takes.IsFixed[^1] || takes.Lines.Any(l => l.IsEmpty)) return null;
        var last = takes.Lines.Select(l => l[^1]).ToList();
        if (Same(last.Select(m => NoteName.Wrap(m.Final, 12))) is not { } pitchClass) return null;
        var number = Same(last.Select(m => m.Top.String.Value));
        return new EndRule(Named(pitchClass, takes.Stretch.Bars[^1]), How(last), number is { } on ? new Guitar.StringNumber(on) : null, last.TrueForAll(m => m.End >= takes.Stretch.Length));
    }

    private double Share(int pitchClass) => (takes.Free.Count(m => NoteName.Wrap(m.Arrival, 12) == pitchClass) + 0.5) / (takes.Free.Count() + 1);

    private static Approach? How(List<LineMoment> landings)
    {
        if (Same(landings.Select(m => m.Top.Bend is null ? 0 : m.Arrival - m.Top.Sounding.Midi)) is > 0 and <= 2 and var bent)
        {
            return new Approach(ApproachKind.Bend, bent, null, null);
        }
        return Same(landings.Select(m => (m.Top.GlideIn, m.Top.Attack))) switch
        {
            (GlideIn.FromBelow, _) => new Approach(ApproachKind.Slide, null, null, Side.Below),
            (GlideIn.FromAbove, _) => new Approach(ApproachKind.Slide, null, null, Side.Above),
            (_, Attack.HammerOn) => new Approach(ApproachKind.HammerOn),
            (_, Attack.PullOff) => new Approach(ApproachKind.PullOff),
            (_, Attack.Glide or Attack.PickedGlide) => new Approach(ApproachKind.Slide),
            _ => null,
        };
    }

    private static T? Same<T>(IEnumerable<T> values) where T : struct
    {
        var all = values.Distinct().Take(2).ToList();
        return all.Count == 1 ? all[0] : null;
    }

    private NoteName Named(int pitchClass, StretchBar bar)
    {
        var key = bar.Bar.Key ?? takes.Reading.Keys.ElementAtOrDefault(takes.Use.FirstBar + bar.Number - 1);
        return NoteName.TryParse(PlaceWords.Note(pitchClass, key), out var name) ? name : throw new InvalidOperationException("Every pitch class has a name.");
    }
}
