using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Proposing;

/// <summary>Several takes of one solo: the same bars of the same song, played each time anew.</summary>
internal sealed class TakeSet
{
    /// <param name="song">The song as one of the takes has it.</param>
    /// <param name="reading">Its reading.</param>
    /// <param name="use">Where the solo is, and the name of the road map to be.</param>
    /// <param name="takes">What is played in each take.</param>
    public TakeSet(Song song, SongReading reading, RoadMapUse use, ImmutableArray<ImmutableArray<PartBar>> takes)
    {
        (Song, Reading, Use, Takes) = (song, reading, use, takes);
        Stretch = SoloStretch.Of(song, reading, new RoadMap { Name = use.RoadMap }, use);
        Lengths = [.. Stretch.Bars.Select(b => b.Length)];
        Lines = [.. takes.Select(t => SoloLine.Of(t, Lengths))];
        IsFixed = [.. Enumerable.Range(0, use.BarCount).Select(IsSame)];
    }

    public Song Song { get; }

    public SongReading Reading { get; }

    public RoadMapUse Use { get; }

    public ImmutableArray<ImmutableArray<PartBar>> Takes { get; }

    /// <summary>The bars without any rules.</summary>
    public SoloStretch Stretch { get; }

    public ImmutableArray<Beats> Lengths { get; }

    /// <summary>Each take's moments.</summary>
    public ImmutableArray<ImmutableArray<LineMoment>> Lines { get; }

    /// <summary>For each bar, from 0: true when every take plays it the same, and something.</summary>
    public ImmutableArray<bool> IsFixed { get; }

    public bool IsFree(LineMoment moment) => !IsFixed[moment.Bar - 1];

    /// <summary>The moments of all takes in free bars.</summary>
    public IEnumerable<LineMoment> Free => Lines.SelectMany(l => l.Where(IsFree));

    /// <summary>True when bars of two takes sound the same at the same places.</summary>
    public static bool AreSame(PartBar one, PartBar other, Beats length)
    {
        var (a, b) = (SoloLine.Of([one], [length]), SoloLine.Of([other], [length]));
        return a.Length == b.Length && a.Zip(b).All(p => p.First.At == p.Second.At && p.First.IsSameAs(p.Second));
    }

    private bool IsSame(int bar) => !Takes[0][bar].IsRest && SoloLine.Of([Takes[0][bar]], [Lengths[bar]]).Length > 0
        && Takes.Skip(1).All(t => AreSame(Takes[0][bar], t[bar], Lengths[bar]));
}
