using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Sound;

namespace Fretlore.Lesson.Kit.Sections;

/// <summary>The song to listen to and to play along with: everything together, each part alone, what the lesson teaches as loops, and its licks.</summary>
internal sealed class SoundSection : IKitSection
{
    private const double ShortShare = 0.35;

    public string Doing => "Playing the song";

    public double Weight => 6;

    public bool IsSound => true;

    public SectionResult Make(KitSource source, Action<double> progress)
    {
        var song = source.Song;
        if (source.Sound(share => progress((1 - ShortShare) * share)) is not { } sound) return source.WhyNoSound is { } why ? new SectionResult.Made([], why) : new SectionResult.Made([]);
        var files = ImmutableArray.CreateBuilder<KitFile>();
        files.Add(new KitFile("sound/full.opus", sound.Full, "The song to listen to. Mind your ears: 85 dBA for 8 hours a day at most, half as long for every 3 dB more"));
        for (var part = 0; song.Parts.Count > 1 && part < song.Parts.Count; part++)
        {
            files.Add(new KitFile(
                $"sound/part-{KitFile.NameOf(song.Parts[part])}.opus", sound.Stems[part], $"{song.Parts[part].Title} alone, as long and as loud as in the song"));
        }
        files.AddRange(Short(source, share => progress(1 - ShortShare + ShortShare * share)));
        return new SectionResult.Made(files.DrainToImmutable());
    }

    // Loops, and licks once.
    private static IEnumerable<KitFile> Short(KitSource source, Action<double> progress)
    {
        var (room, stop) = (source.Options.SoundRoom!, source.Stop);
        Func<KitFile?>[] all = [.. KitLoop.Of(source.Song).Select(loop => (Func<KitFile?>)(() => loop.Make(source.Song, room, stop))), .. source.Licks.Select(lick => (Func<KitFile?>)(() => lick.MakeSound(room, stop)))];
        var made = new KitFile?[all.Length];
        var (gate, done) = (new Lock(), 0);
        SideBySide.Run(all.Length, i =>
        {
            made[i] = all[i]();
            lock (gate) progress(++done / (double)all.Length);
        }, stop);
        // Names that differ only in what a file name can't hold are told apart by number.
        var taken = new HashSet<string>();
        foreach (var file in made.OfType<KitFile>())
        {
            var path = file.Path;
            for (var number = 2; !taken.Add(path); number++) path = string.Create(CultureInfo.InvariantCulture, $"{file.Path[..^5]}-{number}.opus");
            yield return file with { Path = path };
        }
    }
}
