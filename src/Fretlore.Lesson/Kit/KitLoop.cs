using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Output;

namespace Fretlore.Lesson.Kit;

/// <summary>What the lesson teaches, to play round and round at each of its teaching speeds.</summary>
/// <param name="Name">A riff's or a section's name.</param>
/// <param name="IsSection">Whether it is a section, heard with all parts, or a riff, heard alone.</param>
/// <param name="Percent">Of the written tempo.</param>
public readonly record struct KitLoop(string Name, bool IsSection, int Percent)
{
    /// <summary>Where it lies in the kit.</summary>
    public string Path => string.Create(
        CultureInfo.InvariantCulture, $"sound/loops/{(IsSection ? "section" : "riff")}-{KitFile.NameOf(Name)}-{Percent}.opus");

    /// <summary>What the song's lesson asks for, in its order, each once; a step that names no speed is taught at full speed.</summary>
    public static ImmutableArray<KitLoop> Of(Song song)
    {
        var loops = new List<KitLoop>();
        foreach (var step in song.Lesson?.Steps ?? [])
        {
            foreach (var name in step.Teaches)
            {
                var isRiff = song.Riffs.Any(r => r.Name == name);
                if (!isRiff && !song.Sections.Any(s => s.Name == name)) continue;
                loops.AddRange((step.SpeedPercents.Count == 0 ? new ValueList<int>([100]) : step.SpeedPercents).Select(percent => new KitLoop(name, !isRiff, percent)));
            }
        }
        return [.. loops.Distinct()];
    }

    /// <summary>Plays it; null when it can't be played.</summary>
    /// <exception cref="IOException">There is no room to work in.</exception>
    public KitFile? Make(Song song, Func<Stream> room, CancellationToken stop)
    {
        var request = new SoundRequest { Riff = IsSection ? null : Name, Section = IsSection ? Name : null, Speed = Percent / 100m, Loop = true };
        if (SongMixer.Prepare(song, request) is not SoundResult.Ready { Mix: var mix }) return null;
        using var scratch = room();
        return KitFile.Written(
            Path, string.Create(CultureInfo.InvariantCulture, $"{Name} at {Percent}%, to play along with round and round"),
            stream => SoundFile.Write(mix, scratch, stream, SoundFormat.Opus, StemFiles.StemBitsASecond, cancel: stop));
    }
}
