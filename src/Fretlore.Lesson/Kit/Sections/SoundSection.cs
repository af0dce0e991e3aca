using System.Collections.Immutable;

namespace Fretlore.Lesson.Kit.Sections;

/// <summary>The song to listen to and to play along with: everything together, and each part alone.</summary>
internal sealed class SoundSection : IKitSection
{
    public string Doing => "Playing the song";

    public double Weight => 6;

    public SectionResult Make(KitSource source, Action<double> progress)
    {
        if (source.Sound(progress) is not { } sound) return source.WhyNoSound is { } why ? new SectionResult.Made([], why) : new SectionResult.Made([]);
        var files = ImmutableArray.CreateBuilder<KitFile>();
        files.Add(new KitFile("sound/full.opus", sound.Full, "The song to listen to. Mind your ears: 85 dBA for 8 hours a day at most, half as long for every 3 dB more"));
        if (source.Song.Parts.Count < 2) return new SectionResult.Made(files.DrainToImmutable());
        for (var part = 0; part < source.Song.Parts.Count; part++)
        {
            var title = source.Song.Parts[part].Title;
            files.Add(new KitFile($"sound/part-{KitFile.NameOf(source.Song.Parts[part])}.opus", sound.Stems[part], $"{title} alone, as long and as loud as in the song"));
        }
        return new SectionResult.Made(files.DrainToImmutable());
    }
}
