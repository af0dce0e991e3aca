using Fretlore.Lesson.Script;
using Fretlore.Lesson.Subjects;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;

namespace Fretlore.Lesson.Steps;

/// <summary>How long the music of a step takes to play at a speed.</summary>
internal sealed class Playing(Song song)
{
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

    private Piece InSong(Place place)
    {
        var cut = Passage.Of(song, place, "");
        return Timed(cut, TempoText.At(song, place.FirstBar), 1);
    }

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
        return new Piece(tempo, riff.Bars[0].Meter.Length.ToDouble() * tempo.SecondsPerQuarter, seconds, times);
    }
}
