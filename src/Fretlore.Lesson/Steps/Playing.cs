using Fretlore.Lesson.Script;
using Fretlore.Lesson.Subjects;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;

namespace Fretlore.Lesson.Steps;

/// <summary>How long the music of a step takes to play at a speed.</summary>
internal sealed class Playing(PerformedSong played)
{
    private readonly Song song = played.Song;

    /// <summary>A riff of up to so many bars is played twice, so that it is heard to come round (by judgement).</summary>
    private const int BarsPlayedTwice = 4;

    /// <summary>The playing of all subjects one after another; null when they have no music.</summary>
    public PlayThrough? At(IReadOnlyList<Subject> subjects, int percent)
    {
        var pieces = subjects.SelectMany(Pieces).ToArray();
        if (pieces.Length == 0) return null;
        var seconds = pieces.Sum(piece => piece.CountIn + piece.Once * piece.Times) * 100 / percent;
        var tempo = pieces[0].Tempo;
        return new PlayThrough(percent, tempo with { PerMinute = tempo.PerMinute * percent / 100 }, pieces.Max(p => p.Times), seconds);
    }

    private readonly record struct Piece(Tempo Tempo, double CountIn, double Once, int Times);

    private IEnumerable<Piece> Pieces(Subject subject)
    {
        if (subject.Kind is SubjectKind.Section or SubjectKind.RoadMap)
        {
            if (subject.Places.Count > 0) yield return InSong(subject.Places[0]);
            yield break;
        }
        foreach (var line in subject.Lines) yield return Alone(line.Riff, subject);
    }

    // The first time the song has it, with its own repeats.
    private Piece InSong(Place place)
    {
        var tempo = TempoText.At(song, place.FirstBar);
        var first = played.Bars.ToList().FindIndex(bar => bar.Bar == place.FirstBar);
        if (first < 0) return Timed(Passage.Of(song, place, ""), tempo, 1);
        var end = first;
        while (end < played.Bars.Length && played.Bars[end].Bar >= place.FirstBar && played.Bars[end].Bar < place.FirstBar + place.BarCount) end++;
        var seconds = (end < played.Bars.Length ? played.Bars[end].StartSeconds : played.Seconds) - played.Bars[first].StartSeconds;
        return new Piece(tempo, CountIn(song.Bars[place.FirstBar], tempo), seconds, 1);
    }

    private static double CountIn(Bar first, Tempo tempo) => first.Meter.Length.ToDouble() * tempo.SecondsPerQuarter;

    private Piece Alone(Riff riff, Subject subject) =>
        Timed(riff, TempoOf(riff, subject), riff.Bars.Count <= BarsPlayedTwice ? 2 : 1);

    /// <summary>The song's tempo where it first plays the riff, or else the riff's own.</summary>
    public Tempo TempoOf(Riff riff, Subject subject) =>
        subject.Places.Count > 0 ? TempoText.At(song, subject.Places[0].FirstBar)
        : riff.Bars[0].Tempos.Count > 0 ? riff.Bars[0].Tempos[0].Tempo
        : TempoText.At(song, 0);

    private Piece Timed(Riff riff, Tempo tempo, int times)
    {
        var seconds = Performer.Play(RiffSong.Of(song, riff, tempo)).Seconds;
        return new Piece(tempo, CountIn(riff.Bars[0], tempo), seconds, times);
    }
}
