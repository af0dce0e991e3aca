using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Sound.Mixing;
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
        var loops = KitLoop.Of(song);
        var licks = source.Licks;
        var files = new ImmutableArray<KitFile>[1 + loops.Length + licks.Length];
        var shares = new double[files.Length];
        var gate = new Lock();
        // The whole song first: it takes longest.
        SideBySide.Run(files.Length, i =>
        {
            files[i] = i == 0 ? Whole(source, Tell) : i <= loops.Length ? Loop(source, loops[i - 1]) : Lick(source, licks[i - 1 - loops.Length]);
            Tell(1);

            void Tell(double share)
            {
                lock (gate)
                {
                    shares[i] = share;
                    progress((1 - ShortShare) * shares[0] + ShortShare * shares.Skip(1).Sum() / Math.Max(1, shares.Length - 1));
                }
            }
        }, source.Stop);
        if (source.WhyNoSound is { } why) return new SectionResult.Made([], why);
        return new SectionResult.Made([.. files[0], .. Named(files.Skip(1).SelectMany(made => made))]);
    }

    private static ImmutableArray<KitFile> Loop(KitSource source, KitLoop loop) =>
        source.Once($"sound {loop.Path}", loop.InputOf(source.Song), () =>
            loop.Prepare(source.Song) is { } mix ? Heard(source, loop.Path, "", mix, () => loop.Write(mix, source.Options.SoundRoom!, source.Stop)) : []);

    private static ImmutableArray<KitFile> Lick(KitSource source, KitLick lick) =>
        source.Once($"sound {lick.Path}", (lick.Path, lick.Title, lick.Alone), () =>
            lick.Prepare() is { } mix ? Heard(source, lick.Path, lick.Title, mix, () => lick.Write(mix, source.Options.SoundRoom!, source.Stop)) : []);

    // What was written otherwise may still sound the same.
    private static ImmutableArray<KitFile> Heard(KitSource source, string path, string title, SongMix mix, Func<KitFile> write) =>
        source.Once<ImmutableArray<KitFile>>($"heard {path}", (title, mix.Content), () => [write()]);

    private static ImmutableArray<KitFile> Whole(KitSource source, Action<double> progress)
    {
        if (source.Sound(progress) is not { } sound) return [];
        var parts = source.Song.Parts;
        var files = ImmutableArray.CreateBuilder<KitFile>();
        files.Add(new KitFile("sound/full.opus", sound.Full, "The song to listen to. Mind your ears: 85 dBA for 8 hours a day at most, half as long for every 3 dB more"));
        for (var part = 0; parts.Count > 1 && part < parts.Count; part++)
        {
            files.Add(new KitFile($"sound/part-{KitFile.NameOf(parts[part])}.opus", sound.Stems[part], $"{parts[part].Title} alone, as long and as loud as in the song"));
        }
        return files.DrainToImmutable();
    }

    // Names that differ only in what a file name can't hold are told apart by number.
    private static IEnumerable<KitFile> Named(IEnumerable<KitFile> files)
    {
        var taken = new HashSet<string>();
        foreach (var file in files)
        {
            var path = file.Path;
            for (var number = 2; !taken.Add(path); number++) path = string.Create(CultureInfo.InvariantCulture, $"{file.Path[..^5]}-{number}.opus");
            yield return file with { Path = path };
        }
    }
}
