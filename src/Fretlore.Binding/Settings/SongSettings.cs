using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Binding.Settings;

/// <summary>What the lines at the top of a sheet say.</summary>
internal sealed record SongSettings
{
    public required SongInfo Info { get; init; }

    public Meter Meter { get; init; } = Meter.FourFour;

    public Tempo Tempo { get; init; } = Tempo.Default;

    public Key? Key { get; init; }

    public Feel Feel { get; init; }

    public required NeckSettings Neck { get; init; }
}

/// <summary>What a sheet says about a neck; null where it says nothing.</summary>
internal sealed record NeckSettings(Tuning? Tuning = null, Capo? Capo = null, int? FretCount = null, (double High, double? Low)? ScaleLength = null, ValueList<GuitarString>? Strings = null)
{
    /// <summary>These settings, with those of the song where these say nothing.</summary>
    public NeckSettings Over(NeckSettings song) =>
        new(Tuning ?? song.Tuning, Capo ?? song.Capo, FretCount ?? song.FretCount, ScaleLength ?? song.ScaleLength, Strings ?? song.Strings);

    /// <summary>The neck; on <paramref name="otherwise"/> where nothing is said.</summary>
    public Neck On(Neck otherwise)
    {
        var (high, low) = ScaleLength ?? (otherwise.ScaleLength, otherwise.LowScaleLength);
        return new Neck(Tuning ?? otherwise.Tuning, Capo ?? otherwise.Capo, FretCount ?? otherwise.FretCount, high) { LowScaleLength = low };
    }

    /// <summary>The strings on a neck. A set is for as many strings as it has: a bass does not get the guitar's.</summary>
    public ValueList<GuitarString> StringsOn(Neck neck) => Strings is { } strings && strings.Count == neck.StringCount ? strings : [];
}
