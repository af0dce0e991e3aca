using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Lesson.Licks;
using Fretlore.Lesson.Plans;
using Fretlore.Lesson.Script;
using Fretlore.Lesson.Subjects;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Output;

namespace Fretlore.Lesson.Kit;

/// <summary>A lick that the lesson teaches and its card.</summary>
/// <param name="Path">Where its files lie in the kit, without an ending.</param>
/// <param name="Title">Its name as it is said.</param>
/// <param name="Card">Its versions one after another, as a song.</param>
/// <param name="Bars">How many bars the lick itself has: the card's first.</param>
internal sealed record KitLick(string Path, string Title, Song Card, int Bars)
{
    /// <summary>What it is, as the lesson's steps say.</summary>
    public required Taught What { get; init; }

    /// <summary>How fast it is played in the song.</summary>
    public required Tempo Tempo { get; init; }

    /// <summary>As it is played, then elsewhere on the neck and in other keys.</summary>
    public required ImmutableArray<LickVersion> Versions { get; init; }

    /// <summary>A line longer than this is no lick.</summary>
    private const int MostBars = 8;

    /// <summary>What the lesson's steps teach, whether there is time for it on film or not.</summary>
    public static ImmutableArray<KitLick> Of(KitSource source)
    {
        if (source.Film is not FilmPlanResult.Made { Plan: var plan }) return [];
        var subjects = plan.Steps.Select(s => s.Step).Concat(plan.LeftOut.Select(l => l.Step)).SelectMany(step => step.Subjects)
            .Where(s => s.Kind is SubjectKind.Riff or SubjectKind.Passage && s.Lines is [{ Riff.Bars.Count: <= MostBars }])
            .Where(s => s.Lines[0].Riff.Content.Any(bar => bar.Notes.Any()))
            .DistinctBy(s => s.What);
        var cards = new LickCard(source.Song, source.Reading.Home);
        return [.. subjects.Select((subject, i) => Of(source, cards, subject, i + 1))];
    }

    private static KitLick Of(KitSource source, LickCard cards, Subject subject, int number)
    {
        var riff = subject.Lines[0].Riff;
        var tempo = TempoText.At(source.Song, subject.Places.Count > 0 ? subject.Places[0].FirstBar : 0);
        var title = ScriptWriter.Capital(SpokenName.Of(subject.What.ToString()));
        var versions = source.Once($"lick {subject.What}", (riff, tempo, cards.Home), () => cards.Of(riff, tempo));
        versions = versions.SetItem(0, versions[0] with { Fingers = LickFingers.Of(OnPages(source.Song, subject, riff), source.Hands) });
        var path = string.Create(CultureInfo.InvariantCulture, $"licks/{number:00}-{KitFile.NameOf(subject.What.ToString())}");
        return new KitLick(path, title, LickCardSong.Of(source.Song, title, subject.Why.ToString(), tempo, versions), riff.Bars.Count)
        {
            What = subject.What,
            Tempo = tempo,
            Versions = versions,
        };
    }

    // Its bars where the song plays them first: the pages have its fingers there. One that is not played stands among the riffs.
    private static ValueList<PartBar> OnPages(Song song, Subject subject, Riff riff)
    {
        if (subject.Places.Count == 0 || subject.Places[0].BarCount != riff.Bars.Count) return riff.Content;
        var place = subject.Places[0];
        return [.. song.Parts[place.Part].Bars.Skip(place.FirstBar).Take(place.BarCount)];
    }

    /// <summary>The lick as it is played in the song, without what its card says and has besides: all that its sound depends on.</summary>
    public Song Alone
    {
        get
        {
            var lick = Card.Parts[0];
            return Card with
            {
                Bars = [.. Card.Bars.Take(Bars)],
                Parts = [lick with { Bars = [.. lick.Bars.Take(Bars).Select(Unsaid)] }],
                Sections = [],
                Shapes = [],
                NoteCount = lick.Bars.Take(Bars).Sum(bar => bar.Notes.Count()),
            };
        }
    }

    /// <summary>Makes the lick alone ready to be heard; null when it can't be played.</summary>
    public SongMix? Prepare() => SongMixer.Prepare(Alone, new SoundRequest()) is SoundResult.Ready { Mix: var mix } ? mix : null;

    /// <summary>Plays the lick alone.</summary>
    /// <exception cref="IOException">There is no room to work in.</exception>
    public KitFile Write(SongMix mix, Func<Stream> room, CancellationToken stop)
    {
        using var scratch = room();
        return KitFile.Written($"{Path}.opus", $"{Title} to listen to, as in the song, alone", stream => SoundFile.Write(mix, scratch, stream, SoundFormat.Opus, StemFiles.StemBitsASecond, cancel: stop));
    }

    private static PartBar Unsaid(PartBar bar) => bar with
    {
        Strands = [.. bar.Strands.Select(strand => strand with { Events = [.. strand.Events.Select(item => item with { Words = null })] })],
    };
}
