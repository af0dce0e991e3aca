using System.Collections.Immutable;
using Fretlore.Syntax;

namespace Fretlore.Binding.Draft;

/// <summary>One bar as it comes in a line of music.</summary>
/// <param name="Bar">What is played.</param>
/// <param name="Origin">Where the line calls for it: the bar itself, or the play that brings it.</param>
/// <param name="Written">Its written number from 1; all passes of a repeat share it.</param>
internal readonly record struct FlowBar(DraftBar Bar, TextSpan Origin, int Written);

/// <summary>One time through a repeat.</summary>
/// <param name="Start">Index of its first bar.</param>
/// <param name="Body">Bars before the ending.</param>
/// <param name="Ending">Which ending is played, or -1.</param>
/// <param name="EndingLength">Bars of that ending.</param>
internal readonly record struct PassSpan(int Start, int Body, int Ending, int EndingLength)
{
    public int End => Start + Body + EndingLength;
}

/// <summary>A stretch that the sheet plays several times.</summary>
internal sealed record RepeatSpan(ImmutableArray<PassSpan> Passes)
{
    public int Start => Passes[0].Start;

    public int End => Passes[^1].End;

    public RepeatSpan Shifted(int by) => new([.. Passes.Select(p => p with { Start = p.Start + by })]);
}

/// <summary>A named riff or road map over some bars of a flow.</summary>
internal readonly record struct NamedSpan(string Name, int Start, int Count);

/// <summary>A line of music as bars one after another, repeats unrolled, with what the repeats were.</summary>
internal sealed class Flow
{
    public List<FlowBar> Bars { get; } = [];

    public List<RepeatSpan> Repeats { get; } = [];

    public List<NamedSpan> Riffs { get; } = [];

    public List<NamedSpan> RoadMaps { get; } = [];

    public long NoteCount { get; private set; }

    /// <summary>How many written bars there are.</summary>
    public int WrittenCount { get; set; }

    public void Add(DraftBar bar, TextSpan origin, int written)
    {
        Bars.Add(new FlowBar(bar, origin, written));
        NoteCount += bar.NoteCount;
    }

    /// <summary>Puts another flow after this one.</summary>
    /// <param name="other">What comes.</param>
    /// <param name="origin">The play that brings it, or null when its bars are this flow's own.</param>
    /// <param name="writtenOffset">Added to its written numbers.</param>
    public void Append(Flow other, TextSpan? origin, int writtenOffset)
    {
        var start = Bars.Count;
        foreach (var bar in other.Bars) Bars.Add(new FlowBar(bar.Bar, origin ?? bar.Origin, bar.Written + writtenOffset));
        foreach (var repeat in other.Repeats) Repeats.Add(repeat.Shifted(start));
        foreach (var riff in other.Riffs) Riffs.Add(riff with { Start = riff.Start + start });
        foreach (var map in other.RoadMaps) RoadMaps.Add(map with { Start = map.Start + start });
        NoteCount += other.NoteCount;
    }
}
