using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Lesson.Script;
using Fretlore.Score;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Output;

namespace Fretlore.Lesson.Kit;

/// <summary>What the lesson teaches, to play round and round at one of its teaching speeds.</summary>
/// <param name="What">A riff, heard alone, or a section, heard with everybody; or bars of it, or one part of it.</param>
/// <param name="IsSection">Whether it is a section or a riff.</param>
/// <param name="Percent">Of the written tempo.</param>
public readonly record struct KitLoop(Taught What, bool IsSection, int Percent)
{
    /// <summary>Where it lies in the kit.</summary>
    public string Path => string.Create(
        CultureInfo.InvariantCulture, $"sound/loops/{(IsSection ? "section" : "riff")}-{KitFile.NameOf(What.ToString())}-{Percent}.opus");

    /// <summary>What the song's lesson asks for, in its order, each once, without road maps: what is made up cannot be played before.</summary>
    public static ImmutableArray<KitLoop> Of(Song song)
    {
        var loops = new List<KitLoop>();
        foreach (var step in song.Lesson?.Steps ?? [])
        {
            foreach (var what in step.Teaches)
            {
                var isRiff = song.Riffs.Any(r => r.Name == what.Name);
                if (!isRiff && !song.Sections.Any(s => s.Name == what.Name)) continue;
                var percents = step.SpeedPercents.Count > 0 ? step.SpeedPercents : isRiff ? TempoText.UsualPercents : [100];
                loops.AddRange(percents.Select(percent => new KitLoop(what, !isRiff, percent)));
            }
        }
        return [.. loops.Distinct()];
    }

    /// <summary>All that its sound depends on, to be compared by value: of a riff it is the riff as it is played, of a section all that is played.</summary>
    public object InputOf(Song song)
    {
        var name = What.Name;
        var heard = !IsSection && What.Part is null && song.Riffs.FirstOrDefault(r => r.Name == name) is { } riff ? SongMixer.InputOf(song, riff) : song with { Lesson = null };
        return (this, heard);
    }

    /// <summary>Makes it ready to be heard; null when it can't be played.</summary>
    public SongMix? Prepare(Song song)
    {
        var part = What.Part is { } name ? song.Parts.Select(p => p.Name).ToList().IndexOf(name) : -1;
        var request = new SoundRequest
        {
            Riff = IsSection ? null : What.Name,
            Section = IsSection ? What.Name : null,
            FromBar = What.Bars?.First,
            ToBar = What.Bars?.Last,
            Parts = part < 0 ? [] : [part],
            Speed = Percent / 100m,
            Loop = true,
        };
        return SongMixer.Prepare(song, request) is SoundResult.Ready { Mix: var mix } ? mix : null;
    }

    /// <summary>Plays it.</summary>
    /// <exception cref="IOException">There is no room to work in.</exception>
    public KitFile Write(SongMix mix, Func<Stream> room, CancellationToken stop)
    {
        using var scratch = room();
        return KitFile.Written(
            Path, string.Create(CultureInfo.InvariantCulture, $"{What} at {Percent}%, to play along with round and round"),
            stream => SoundFile.Write(mix, scratch, stream, SoundFormat.Opus, StemFiles.StemBitsASecond, cancel: stop));
    }
}
