using System.Collections.Immutable;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Output;

namespace Fretlore.Lesson.Kit;

/// <summary>The song's sound as Opus files: everything together, and each part alone just as it is within it.</summary>
/// <param name="Seconds">The length of every file; the song's first bar begins at its first sample.</param>
/// <param name="Full">Everything together.</param>
/// <param name="Stems">Each part of the song alone, in the song's order: together they are the full sound again. One part alone is the full sound.</param>
/// <param name="Pieces">Each part alone once more, in mono and in short pieces, for the practice page.</param>
/// <param name="Solos">Each free stretch played out once, in mono, for the practice page; from the first sample of its first bar. Null for one that can't be played.</param>
public sealed record KitSound(
    double Seconds, ImmutableArray<byte> Full, ImmutableArray<ImmutableArray<byte>> Stems, ImmutableArray<ImmutableArray<ImmutableArray<byte>>> Pieces,
    ImmutableArray<ImmutableArray<byte>?> Solos)
{
    /// <summary>What the practice page's sound may take: in Base64, a third more, the whole page stays under 6 MB.</summary>
    private const long MostPageBytes = 3_150_000;

    /// <summary>More of the song than this takes a while to be played again.</summary>
    private const double MostQuick = 0.25;

    /// <summary>Whether so little of it differs from what was made before that it is made in a moment.</summary>
    internal static bool IsQuick(KitSource source, EarlierSound earlier) =>
        SongMixer.Prepare(source.Song, new SoundRequest()) is SoundResult.Ready { Mix: var mix } && earlier.ShareOf(mix) <= MostQuick;

    /// <summary>Makes it.</summary>
    /// <returns>The sound, or null with the reason why there is none, a whole sentence.</returns>
    internal static (KitSound? Sound, string? WhyNot) Make(KitSource source, Func<Stream> room, Action<double>? progress)
    {
        var prepared = SongMixer.Prepare(source.Song, new SoundRequest());
        if (prepared is SoundResult.Refused(var message, var remedy)) return (null, $"The kit has no sound, for {message} {remedy}");
        var mix = ((SoundResult.Ready)prepared).Mix;
        using var full = new MemoryStream();
        var stems = mix.Parts.Length < 2 ? [] : mix.Parts.Select(_ => new MemoryStream()).ToArray();
        var pieces = new StemPieces(MostPageBytes);
        var written = StemFiles.Write(mix, room, full, stems, SoundFormat.Opus, progress, pieces, source.Cache?.Sound, source.Stop);
        var whole = ImmutableArray.Create(full.ToArray());
        return (new KitSound(
            mix.Seconds, whole, stems.Length == 0 ? [whole] : [.. stems.Select(stem => ImmutableArray.Create(stem.ToArray()))], pieces.Parts,
            [.. source.Solos.Select((solo, i) => Played(source, solo, i, room, written.Steps))]), null);
    }

    private static ImmutableArray<byte>? Played(KitSource source, KitSolo solo, int number, Func<Stream> room, int steps) =>
        solo.Prepare() is { } mix ? source.Once($"solo {number}", (mix.Content, steps), () => KitSolo.Write(mix, room, steps, source.Stop)) : null;
}
