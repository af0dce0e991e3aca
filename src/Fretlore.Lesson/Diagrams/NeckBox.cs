using Fretlore.Guitar;
using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Diagrams;

/// <summary>A place on a neck that is played.</summary>
/// <param name="String">The string.</param>
/// <param name="Fret">As written under the capo; 0 is open.</param>
/// <param name="Label">What stands on it, such as a finger or a degree; empty for nothing.</param>
/// <param name="IsRoot">Told apart by its shape: a square.</param>
public readonly record struct NeckDot(StringNumber String, Fret Fret, string Label = "", bool IsRoot = false);

/// <summary>Part of a neck with what is played on it: a shape, the places of a riff, a scale.</summary>
/// <param name="Title">What it shows.</param>
/// <param name="StringCount">Strings of the neck.</param>
/// <param name="First">The lowest fret shown; 1 when the nut is.</param>
/// <param name="Frets">How many frets are shown.</param>
/// <param name="Dots">What is played.</param>
/// <param name="Muted">Strings that must not sound.</param>
public sealed record NeckBox(string Title, int StringCount, int First, int Frets, ValueList<NeckDot> Dots, ValueList<StringNumber> Muted)
{
    private const int FewestFrets = 4;

    // Further from the fingers, a capo is not in the picture.
    private const int MostFrets = 8;

    /// <summary>The capo that is drawn where it covers some strings only; one over all strings is the nut of the picture.</summary>
    public Capo Capo { get; init; }

    /// <summary>A shape as a hand holds it.</summary>
    /// <param name="title">What it is called.</param>
    /// <param name="shape">The shape.</param>
    /// <param name="capo">The capo it is held under.</param>
    public static NeckBox Of(string title, Shape shape, Capo capo = default)
    {
        var count = shape.LowToHigh.Count;
        var dots = new List<NeckDot>();
        var muted = new List<StringNumber>();
        for (var i = 0; i < count; i++)
        {
            if (shape.LowToHigh[i] is { } fret) dots.Add(new NeckDot(new StringNumber(count - i), fret));
            else muted.Add(new StringNumber(count - i));
        }
        return Of(title, count, dots, muted.ToValueList(), capo);
    }

    /// <summary>Every place a riff uses, with the finger that holds it where it is always the same one.</summary>
    public static NeckBox Of(string title, Riff riff, SongHands hands)
    {
        var places = riff.Content.SelectMany(bar => bar.Notes).Where(note => !note.IsDead && note.Harmonic is null)
            .GroupBy(note => (note.String, note.Fret)).OrderByDescending(g => g.Key.String.Value).ThenBy(g => g.Key.Fret.Number);
        var dots = places.Select(place => new NeckDot(place.Key.String, place.Key.Fret, FingerOf(place, hands)));
        return Of(title, riff.Neck.StringCount, dots.ToList(), [], riff.Neck.Capo);
    }

    private static NeckBox Of(string title, int strings, List<NeckDot> dots, ValueList<StringNumber> muted, Capo capo)
    {
        var pressed = dots.Where(d => !d.Fret.IsOpen).Select(d => d.Fret.Number).DefaultIfEmpty(capo.IsPartial ? capo.Fret : 1).ToArray();
        if (capo.IsPartial && pressed.Max() - capo.Fret < MostFrets) pressed = [capo.Fret, .. pressed];
        var first = pressed.Max() <= FewestFrets ? 1 : pressed.Min();
        return new NeckBox(title, strings, first, Math.Max(FewestFrets, pressed.Max() - first + 1), dots.ToValueList(), muted) { Capo = capo };
    }

    /// <summary>The strings and the fret of a partial capo that is within the picture; null where there is none.</summary>
    internal (int Lowest, int Highest, int Fret)? Bar => Capo.IsPartial && Capo.Fret >= First && Capo.Fret < First + Frets ? (Capo.Lowest.Value, Capo.Highest.Value, Capo.Fret) : null;

    private static string FingerOf(IEnumerable<Note> notes, SongHands hands)
    {
        var fingers = notes.Select(note => hands.Of(note.Id).Finger).OfType<Finger>().Distinct().ToArray();
        return fingers is [var one] ? one == Finger.Thumb ? "T" : ((int)one).ToString(System.Globalization.CultureInfo.InvariantCulture) : "";
    }
}
