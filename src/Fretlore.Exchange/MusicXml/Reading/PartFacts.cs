using Fretlore.Exchange.Import;
using Fretlore.Guitar;

namespace Fretlore.Exchange.MusicXml.Reading;

/// <summary>What is found out about a part while its measures are read.</summary>
internal sealed class PartFacts
{
    public Tuning? Tuning { get; set; }

    /// <summary>Staves with a tablature clef or a tuning.</summary>
    public HashSet<int> TabStaves { get; } = [];

    public SortedDictionary<int, Capo> Capos { get; } = [];

    /// <summary>The chord frames, in order.</summary>
    public List<StatedShape> Shapes { get; } = [];

    /// <summary>Bars under a sign for playing the last bar, or the last two, again; and how many.</summary>
    public SortedDictionary<int, int> Again { get; } = [];

    /// <summary>Notes with words to sing.</summary>
    public int Lyrics { get; set; }

    public bool HasUnpitched { get; set; }

    /// <summary>True when notes say for themselves that they are palm-muted.</summary>
    public bool SaysPalmMutes { get; init; }

    /// <summary>True in a file that Fretlore wrote.</summary>
    public bool IsOwn { get; init; }

    /// <summary>Rests for a whole bar.</summary>
    public HashSet<RawEvent> BarRests { get; } = [];
}

/// <summary>The words over stretches of guitar music.</summary>
internal static class Stretches
{
    /// <summary>What the words mean: <c>palm</c>, <c>ring</c>, <c>arm</c>, <c>wah</c>; null for other words.</summary>
    public static string? Of(string words)
    {
        var plain = words.Trim().TrimEnd('.').ToLowerInvariant().Replace(" ", "", StringComparison.Ordinal);
        return plain switch
        {
            "p.m" or "pm" or "palmmute" => "palm",
            "letring" or "l.r" => "ring",
            "witharm" or "w/bar" or "withbar" => "arm",
            "wah" or "w/wah" => "wah",
            _ => null,
        };
    }
}
