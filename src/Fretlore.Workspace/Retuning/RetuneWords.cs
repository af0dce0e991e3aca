using System.Globalization;
using Fretlore.Hands.Placing;
using Fretlore.Hands.Retuning;
using Fretlore.Reading;

namespace Fretlore.Workspace.Retuning;

/// <summary>Says in words what was lost in retuning.</summary>
internal static class RetuneWords
{
    public static string Of(RetuneLoss loss, SongReading reading)
    {
        var pitch = reading.SpellingOf(loss.Note);
        return loss.Kind switch
        {
            RetuneLossKind.NoteLeftOut => $"{pitch} is left out",
            RetuneLossKind.OctaveMoved => $"{pitch} sounds {Octaves(loss.Place!.Sounding - loss.Wanted)} ({Place(loss.Place)})",
            RetuneLossKind.DroneStopped => $"the open {pitch} that sounds on under others is stopped now ({Place(loss.Place!)})",
            RetuneLossKind.RingCutShort => $"{pitch} can't ring on: its string is needed again",
            RetuneLossKind.HarmonicTouched => $"the harmonic {pitch} is over no open string: it is stopped and touched ({Place(loss.Place!)})",
            RetuneLossKind.OneFingerShapeLost => $"the one-finger shape from {pitch} up needs more fingers",
            _ => throw new ArgumentOutOfRangeException(nameof(loss), loss.Kind, "No such loss."),
        };
    }

    /// <summary>For example <c>3 semitones down</c>.</summary>
    public static string Semitones(int semitones) =>
        string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(semitones)} {(Math.Abs(semitones) == 1 ? "semitone" : "semitones")} {(semitones > 0 ? "up" : "down")}");

    private static string Octaves(int semitones)
    {
        var count = Math.Abs(semitones) / 12;
        return $"{(count == 1 ? "an octave" : count.ToString(CultureInfo.InvariantCulture) + " octaves")} {(semitones > 0 ? "higher" : "lower")}";
    }

    private static string Place(NotePlace place) => place.Fret.IsOpen ? $"string {place.String}, open" : $"string {place.String}, fret {place.Fret}";

    /// <summary>Bars as a reader wants them: <c>bar 3</c>, <c>bars 1-4, 9</c>.</summary>
    public static string Bars(IEnumerable<int> numbers)
    {
        var list = numbers.Distinct().ToList();
        var spans = new List<(int First, int Last)>();
        foreach (var number in list)
        {
            if (spans.Count > 0 && spans[^1].Last + 1 == number) spans[^1] = (spans[^1].First, number);
            else spans.Add((number, number));
        }
        var words = spans.Select(span => span.First == span.Last ? Text(span.First) : $"{Text(span.First)}-{Text(span.Last)}");
        return (list.Count == 1 ? "bar " : "bars ") + string.Join(", ", words);
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
