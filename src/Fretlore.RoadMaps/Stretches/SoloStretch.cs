using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Music.Scales;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Stretches;

/// <summary>A road map where it stands in a song: its bars with their chords and rules.</summary>
public sealed class SoloStretch
{
    private readonly ImmutableArray<ImmutableArray<ChordSpan>> chords;

    private SoloStretch(Song song, RoadMap map, RoadMapUse use, ImmutableArray<ImmutableArray<ChordSpan>> chords)
    {
        (Song, Map, Use, this.chords) = (song, map, use, chords);
        Bars = ReadBars();
    }

    public Song Song { get; }

    public RoadMap Map { get; }

    public RoadMapUse Use { get; }

    public Part Part => Song.Parts[Use.Part];

    public int Count => Use.BarCount;

    public ImmutableArray<StretchBar> Bars { get; }

    /// <summary>The length of the whole stretch.</summary>
    public Beats Length => Bars[^1].Start + Bars[^1].Length;

    /// <summary>A road map of the song at one of its places.</summary>
    public static SoloStretch Of(Song song, SongReading reading, RoadMap map, RoadMapUse use) => new(
        song, map, use, [.. Enumerable.Range(use.FirstBar, use.BarCount).Select(bar => ChordSpan.Under(use.Part, bar, song, reading))]);

    /// <summary>The same place with other rules.</summary>
    public SoloStretch With(RoadMap map) => new(Song, map, Use, chords);

    /// <summary>The riff of a name as it is defined.</summary>
    public Riff? RiffOf(string name) => Song.Riffs.Items.FirstOrDefault(r => r.Name == name);

    /// <summary>The bars that a fixed phrase fills, from 1.</summary>
    public IEnumerable<int> BarsOf(FixedRule phrase)
    {
        foreach (var use in Song.RiffUses)
        {
            if (use.Riff != phrase.Riff || use.Part != Use.Part) continue;
            var first = use.FirstBar - Use.FirstBar + 1;
            if (first < 1 || first > Count || !IsStart(phrase, first) || Part.Bars[use.FirstBar].RoadMap != Map.Name) continue;
            for (var bar = first; bar < first + use.BarCount; bar++) yield return bar;
        }
    }

    private bool IsStart(FixedRule phrase, int bar) => phrase.Bars is null || phrase.Bars.Contains(bar, Count);

    private ImmutableArray<StretchBar> ReadBars()
    {
        var fixedBars = Map.RulesOf<FixedRule>().SelectMany(BarsOf).ToHashSet();
        var bars = ImmutableArray.CreateBuilder<StretchBar>(Count);
        var start = Beats.Zero;
        for (var i = 0; i < Count; i++)
        {
            var bar = Song.Bars[Use.FirstBar + i];
            var number = i + 1;
            var scale = Map.RuleIn<ScaleRule>(number, Count);
            var frets = Map.RuleIn<FretsRule>(number, Count);
            ImmutableArray<AvoidRule> avoids = [.. Map.RulesOf<AvoidRule>().Where(a => a.Bars is null || a.Bars.Contains(number, Count))];
            bars.Add(new StretchBar
            {
                Number = number,
                Bar = bar,
                SecondsPerQuarter = TempoAt(Use.FirstBar + i).SecondsPerQuarter,
                Start = start,
                Fixed = fixedBars.Contains(number) ? Part.Bars[Use.FirstBar + i] : null,
                Chords = chords[i],
                StrongBeats = StrongBeats.Of(bar.Meter),
                BeatStarts = StrongBeats.Starts(bar.Meter),
                Scale = scale,
                ScaleTones = scale is not null && ScaleTable.TryFind(scale.Name, out var known) ? known.Tones.Up(scale.Tonic.PitchClass) : null,
                Roles = Map.RuleIn<RolesRule>(number, Count),
                Strings = Map.RuleIn<StringsRule>(number, Count),
                Frets = frets,
                Window = frets is null ? null : FretWindow.Of(frets, number, Count),
                Density = Map.RuleIn<DensityRule>(number, Count),
                Rhythm = Map.RuleIn<RhythmRule>(number, Count),
                Avoids = avoids,
                WidestLeap = avoids.SelectMany(a => a.What.Items).OfType<Avoided.Leaps>().Min(l => (int?)l.Semitones),
                ForbidsRepeats = avoids.Any(a => a.What.Items.Any(w => w is Avoided.Repeats)),
            });
            start += bar.Length;
        }
        return bars.MoveToImmutable();
    }

    private Tempo TempoAt(int bar)
    {
        for (var i = bar; i >= 0; i--)
        {
            var marks = Song.Bars[i].Tempos;
            if (marks.Count == 0) continue;
            if (i < bar) return marks[^1].Tempo;
            if (marks[0].At.IsZero) return marks[0].Tempo;
        }
        return Tempo.Default;
    }
}
