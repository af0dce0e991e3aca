using System.Globalization;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Script;

/// <summary>Tempos as spoken, at full and at teaching speed.</summary>
internal static class TempoText
{
    /// <summary>Speeds offered when the sheet names none: slow, nearly there, full (common practice).</summary>
    public static ValueList<int> UsualPercents => [60, 80, 100];

    /// <summary>"112 quarters a minute".</summary>
    public static string Of(Tempo tempo, int percent = 100)
    {
        var count = Math.Round(tempo.PerMinute * percent / 100, 0, MidpointRounding.AwayFromZero);
        var unit = ValueWords.Many(tempo.Beat, null);
        return $"{count.ToString(CultureInfo.InvariantCulture)} {unit} a minute";
    }

    /// <summary>The tempo in force at a written bar.</summary>
    public static Tempo At(Song song, int bar)
    {
        for (var i = Math.Min(bar, song.Bars.Count - 1); i >= 0; i--)
        {
            var marks = song.Bars[i].Tempos;
            if (marks.Count > 0) return i == bar ? marks[0].Tempo : marks[^1].Tempo;
        }
        return Tempo.Default;
    }

    public static string Speeds(Tempo tempo, ValueList<int> percents)
    {
        var said = (percents.Count > 0 ? percents : UsualPercents)
            .Select(p => p == 100 ? $"full speed, {Of(tempo)}" : $"{p} percent, {Of(tempo, p)}");
        return "Teach it at " + string.Join("; at ", said) + ".";
    }
}
