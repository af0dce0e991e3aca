using System.Globalization;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Engraving.Layout.Pages;

/// <summary>How a neck is tuned, in words, with what a player has to turn.</summary>
internal static class TuningText
{
    // Common practice: guitars of seven and eight strings go on downwards in fourths, basses of four to six both ways.
    private static readonly string[] Usual =
    [
        "E2 A2 D3 G3 B3 E4", "B1 E2 A2 D3 G3 B3 E4", "F#1 B1 E2 A2 D3 G3 B3 E4", "E1 A1 D2 G2", "B0 E1 A1 D2 G2", "B0 E1 A1 D2 G2 C3",
    ];

    private const int MostTurned = 3;

    public static string Of(Neck neck)
    {
        var text = neck.Tuning == Tuning.Standard ? "standard tuning" : "tuning, string " + neck.StringCount.ToString(CultureInfo.InvariantCulture)
            + " to 1: " + string.Join(' ', neck.Tuning.LowToHigh.Items.Select(Written)) + Turned(neck.Tuning);
        return neck.Capo.IsOff ? text : $"{text}; {WordsOf(neck.Capo)}";
    }

    /// <summary>Where a capo goes within a song, as words above the staff.</summary>
    public static string Of(Capo capo) => capo.IsOff ? "Capo off" : "C" + WordsOf(capo)[1..];

    private static string WordsOf(Capo capo) => capo.Words + (capo.IsPartial ? ", frets from the nut" : "");

    private static string Written(Pitch pitch) => MixedText.SignsOf(pitch.Name.ToString()) + pitch.Octave.ToString(CultureInfo.InvariantCulture);

    // The strings that differ from the nearest usual tuning, when they are few; those turned alike together.
    private static string Turned(Tuning tuning)
    {
        List<(int Number, int Semitones)>? fewest = null;
        foreach (var text in Usual)
        {
            if (!Tuning.TryParse(text, out var usual) || usual.StringCount != tuning.StringCount) continue;
            var turned = new List<(int Number, int Semitones)>();
            for (var number = usual.StringCount; number >= 1; number--)
            {
                var semitones = tuning[new StringNumber(number)].Midi - usual[new StringNumber(number)].Midi;
                if (semitones != 0) turned.Add((number, semitones));
            }
            if (fewest is null || turned.Count < fewest.Count) fewest = turned;
        }
        if (fewest is not { Count: > 0 and <= MostTurned }) return "";
        return $" ({string.Join(", ", fewest.GroupBy(t => t.Semitones).Select(g => $"{Listed([.. g.Select(t => t.Number)])} {(g.Key < 0 ? "down" : "up")} {StepsOf(Math.Abs(g.Key))}"))})";
    }

    private static string Listed(int[] numbers) => numbers.Length == 1
        ? $"string {numbers[0]}"
        : $"strings {string.Join(", ", numbers[..^1])} and {numbers[^1]}";

    private static string StepsOf(int semitones) => semitones switch
    {
        1 => "a half step",
        2 => "a whole step",
        _ when semitones % 2 == 0 => string.Create(CultureInfo.InvariantCulture, $"{semitones / 2} steps"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{semitones / 2}\u00BD steps"),
    };
}
