using System.Globalization;
using Fretlore.Music;

namespace Fretlore.RoadMaps.Stretches;

/// <summary>Notes and times of a stretch in words.</summary>
public static class PlaceWords
{
    private static readonly string[] Sharps = ["C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B"];
    private static readonly string[] Flats = ["C", "Db", "D", "Eb", "E", "F", "Gb", "G", "Ab", "A", "Bb", "B"];

    /// <summary>A pitch class as it is spelled in a key.</summary>
    public static string Note(int pitchClass, Key? key)
    {
        pitchClass = NoteName.Wrap(pitchClass, 12);
        foreach (var name in key?.Notes ?? default)
        {
            if (name.PitchClass == pitchClass) return name.ToString();
        }
        return key is { Signature: < 0 } ? Flats[pitchClass] : Sharps[pitchClass];
    }

    /// <summary>"beat 1", "beat 2½"; beats are counted as the metre has them.</summary>
    public static string Beat(Beats at, StretchBar bar) => "beat " + BeatNumber(at, bar);

    public static string BeatNumber(Beats at, StretchBar bar)
    {
        var beat = bar.BeatStarts.Count - 1;
        while (beat > 0 && bar.BeatStarts[beat] > at) beat--;
        var start = bar.BeatStarts[beat];
        var length = (beat + 1 < bar.BeatStarts.Count ? bar.BeatStarts[beat + 1] : bar.Bar.Meter.Length) - start;
        var part = (at - start) / length;
        var sign = (part.Numerator, part.Denominator) switch
        {
            (0, _) => "",
            (1, 2) => "½",
            (1, 4) => "¼",
            (3, 4) => "¾",
            (1, 3) => "⅓",
            (2, 3) => "⅔",
            _ => part.ToDouble().ToString(".##", CultureInfo.InvariantCulture),
        };
        return (beat + 1).ToString(CultureInfo.InvariantCulture) + sign;
    }
}
