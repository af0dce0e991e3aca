using Fretlore.Music;

namespace Fretlore.Sound.Mixing;

/// <summary>What of a song is to be heard, and how.</summary>
public sealed record SoundRequest
{
    /// <summary>The slowest and the fastest a song may be played, as a share of its own tempo.</summary>
    public const decimal SlowestSpeed = 0.1m;

    /// <inheritdoc cref="SlowestSpeed"/>
    public const decimal FastestSpeed = 3m;

    /// <summary>Indexes of the parts that play; none for all of them.</summary>
    public ValueList<int> Parts { get; init; }

    /// <summary>Indexes of parts that are left out.</summary>
    public ValueList<int> Without { get; init; }

    /// <summary>The printed number of the first bar; null from the start. Of a section or riff, bars are counted from its own first one.</summary>
    public int? FromBar { get; init; }

    /// <summary>The printed number of the last bar; null to the end.</summary>
    public int? ToBar { get; init; }

    /// <summary>A section by its name: the first time it is played.</summary>
    public string? Section { get; init; }

    /// <summary>
    /// A riff by its name. Where neither <see cref="Parts"/> nor <see cref="Without"/> says more it is played alone, as it is
    /// defined, by the part that plays it; otherwise it is heard among those parts, the first time it stands in the song.
    /// </summary>
    public string? Riff { get; init; }

    /// <summary>True for a sound that can be played round and round: exactly as long as its bars, and what rings on at its end is heard at its start.</summary>
    public bool Loop { get; init; }

    /// <summary>Share of the written tempo: 0.6 is slower. The music is played at that tempo, not stretched.</summary>
    public decimal Speed { get; init; } = 1;

    /// <summary>True to play exactly what is written, without the small differences a player makes (<see cref="Performance.HumanTouch"/>).</summary>
    public bool Exact { get; init; }

    /// <summary>True for a click on every beat.</summary>
    public bool Click { get; init; }

    /// <summary>True for a bar of clicks before the music.</summary>
    public bool CountIn { get; init; }
}

/// <summary>What became of a request.</summary>
public abstract record SoundResult
{
    private SoundResult()
    {
    }

    /// <summary>It can be played.</summary>
    /// <param name="Mix">Ready to be rendered, once.</param>
    public sealed record Ready(SongMix Mix) : SoundResult;

    /// <summary>It can't be played as asked.</summary>
    /// <param name="Message">What is wrong, a whole sentence.</param>
    /// <param name="Remedy">What to do about it.</param>
    public sealed record Refused(string Message, string Remedy) : SoundResult;
}
