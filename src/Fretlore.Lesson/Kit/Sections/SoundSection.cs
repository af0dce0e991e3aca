using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Sound;

namespace Fretlore.Lesson.Kit.Sections;

/// <summary>The song to listen to and to play along with: everything together, each part alone, and what the lesson teaches as loops.</summary>
internal sealed class SoundSection : IKitSection
{
    private const double LoopShare = 0.35;

    public string Doing => "Playing the song";

    public double Weight => 6;

    public SectionResult Make(KitSource source, Action<double> progress)
    {
        var song = source.Song;
        if (source.Sound(share => progress((1 - LoopShare) * share)) is not { } sound) return source.WhyNoSound is { } why ? new SectionResult.Made([], why) : new SectionResult.Made([]);
        var files = ImmutableArray.CreateBuilder<KitFile>();
        files.Add(new KitFile("sound/full.opus", sound.Full, "The song to listen to. Mind your ears: 85 dBA for 8 hours a day at most, half as long for every 3 dB more"));
        for (var part = 0; song.Parts.Count > 1 && part < song.Parts.Count; part++)
        {
            files.Add(new KitFile(
                $"sound/part-{KitFile.NameOf(song.Parts[part])}.opus", sound.Stems[part], $"{song.Parts[part].Title} alone, as long and as loud as in the song"));
        }
        files.AddRange(Loops(source, share => progress(1 - LoopShare + LoopShare * share)));
        return new SectionResult.Made(files.DrainToImmutable());
    }

    private static IEnumerable<KitFile> Loops(KitSource source, Action<double> progress)
    {
        var loops = KitLoop.Of(source.Song);
        var made = new KitFile?[loops.Length];
        var (gate, done) = (new Lock(), 0);
        SideBySide.Run(loops.Length, loop =>
        {
            made[loop] = loops[loop].Make(source.Song, source.Options.SoundRoom!, source.Stop);
            lock (gate) progress(++done / (double)loops.Length);
        }, source.Stop);
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
