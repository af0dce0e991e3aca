using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Draft;

/// <summary>What fills a bar of one part.</summary>
internal enum BarKind
{
    Music,
    Rest,
    RoadMap,
}

/// <summary>One bar of one part or riff, before bars of the parts are laid side by side.</summary>
internal sealed record DraftBar
{
    public required BarKind Kind { get; init; }

    public required Neck Neck { get; init; }

    /// <summary>Where it is written.</summary>
    public required TextSpan Span { get; init; }

    public ImmutableArray<DraftStrand> Strands { get; init; } = [];

    /// <summary>What the main strand adds up to; for rests and road maps nothing.</summary>
    public Beats Length { get; init; }

    /// <summary>The metre a riff's bar always has; null for a bar that takes the song's.</summary>
    public Meter? Meter { get; init; }

    public bool IsPickup { get; init; }

    public ImmutableArray<PlacedChange> Changes { get; init; } = [];

    public BarLine EndLine { get; init; }

    public int Repeats { get; init; }

    public string? RoadMap { get; init; }

    /// <summary>Which bar of the road map's stretch this is, from 0.</summary>
    public int RoadMapBar { get; init; }

    /// <summary>True when something in it is wrong in such a way that its length says nothing.</summary>
    public bool IsBroken { get; init; }

    public bool HasOpenHolds
    {
        get
        {
            foreach (var strand in Strands)
            {
                if (strand.HasOpenHolds) return true;
            }
            return false;
        }
    }

    public int EventCount
    {
        get
        {
            var count = 0;
            foreach (var strand in Strands) count += strand.Events.Length;
            return count;
        }
    }

    public int NoteCount
    {
        get
        {
            var count = 0;
            foreach (var strand in Strands) count += strand.NoteCount;
            return count;
        }
    }

    /// <summary>True when a listener hears the same in both: ids, places in the text and "again" signs don't count.</summary>
    public bool HasSameMusicAs(DraftBar other)
    {
        if (ReferenceEquals(this, other)) return true;
        if (Kind != other.Kind || RoadMap != other.RoadMap || RoadMapBar != other.RoadMapBar || IsPickup != other.IsPickup) return false;
        if (Length != other.Length || Strands.Length != other.Strands.Length) return false;
        if (!ReferenceEquals(Neck, other.Neck) && !Neck.Equals(other.Neck)) return false;
        for (var s = 0; s < Strands.Length; s++)
        {
            var (a, b) = (Strands[s], other.Strands[s]);
            if (ReferenceEquals(a, b)) continue;
            if (a.Kind != b.Kind || a.Events.Length != b.Events.Length) return false;
            for (var e = 0; e < a.Events.Length; e++)
            {
                if (!ReferenceEquals(a.Events[e], b.Events[e]) && !a.Events[e].Event.Equals(b.Events[e].Event)) return false;
            }
        }
        return true;
    }
}
