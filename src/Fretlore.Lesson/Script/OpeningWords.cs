using Fretlore.Guitar;
using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Score;

namespace Fretlore.Lesson.Script;

/// <summary>What is said before anything is played: the song, and how to tune.</summary>
internal static class OpeningWords
{
    /// <param name="song">The song.</param>
    /// <param name="neck">The neck of what is played first; null when nothing is played.</param>
    public static Speech Of(Song song, Neck? neck)
    {
        var by = song.Info.Artist is { Length: > 0 } artist ? $" by {artist}" : "";
        string[] opening = [$"This is {song.Info.Title}{by}."];
        return new Speech([.. opening, .. neck is null ? [] : Tuning(neck)]);
    }

    /// <summary>What is said when the next step is played on another neck.</summary>
    public static Speech Retune(Neck from, Neck to)
    {
        if (from.Tuning == to.Tuning) return new Speech([from.Capo == to.Capo ? "Change guitars: same tuning, another neck." : Capo(to)]);
        return new Speech(["This part has another tuning.", .. Tuning(to)]);
    }

    /// <summary>A tuning string by string, and the capo.</summary>
    public static IEnumerable<string> Tuning(Neck neck)
    {
        yield return $"Tune {NumberWords.Of(neck.StringCount)} strings, from low to high.";
        for (var i = 0; i < neck.StringCount; i++)
        {
            var name = i == 0 ? "Low string, the " + NumberWords.Ordinal(neck.StringCount)
                : ScriptWriter.Capital(NumberWords.Ordinal(neck.StringCount - i) + " string");
            yield return $"{name}: {PitchWords.Of(neck.Tuning.LowToHigh[i].Name)}.";
        }
        yield return Capo(neck);
    }

    /// <summary>Where the capo goes, and what frets are counted from.</summary>
    public static string Capo(Neck neck) => neck.Capo switch
    {
        { IsOff: true } => "No capo.",
        { IsPartial: false } all => $"Put the capo at fret {NumberWords.Of(all.Fret)}; all frets are counted from there.",
        var some => $"Put the capo at fret {NumberWords.Of(some.Fret)} over {Strings(some)} only. Frets are counted from the nut; on those strings, open means at the capo.",
    };

    private static string Strings(Capo capo) => capo.Lowest == capo.Highest
        ? $"the {NumberWords.Ordinal(capo.Lowest.Value)} string"
        : $"strings {NumberWords.Of(capo.Lowest.Value)} to {NumberWords.Of(capo.Highest.Value)}";
}
