using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Hands.Grips;
using Fretlore.Hands.Shapes;
using Fretlore.Music.Chords;

namespace Fretlore.Workspace.Questions;

/// <summary>How can this chord be played?</summary>
/// <param name="Chord">A chord symbol as typed.</param>
/// <param name="Tuning">As typed, see <see cref="NeckText"/>; null for the usual one.</param>
/// <param name="Capo">As typed, see <see cref="CapoText"/>; null for none. The symbol is of what sounds.</param>
/// <param name="From">The fret the index finger is at now; null when it does not matter.</param>
/// <param name="Hand">As typed, see <see cref="HandText"/>.</param>
public sealed record ShapesQuestion(string Chord, string? Tuning = null, string? Capo = null, int? From = null, string Hand = "average")
{
    public Answer<ShapesFound> Ask()
    {
        var neck = NeckText.Read(Tuning, Capo);
        if (neck.Misread is { } noNeck) return noNeck;
        var typed = Chord.Trim();
        if (!ChordSymbol.TryParse(typed, out var symbol, out var unread))
        {
            var what = typed.Length == 0 ? "The chord is empty." : unread == 0 ? "A chord begins with its root." : $"\"{typed[unread..]}\" is not understood.";
            return new Misread(typed, unread + 1, typed.Length - unread, what,
                "Type a chord symbol: \"F#m11\", \"Bbmaj7#11\", \"C7(b9,b13)\", \"D/F#\", \"E5\"; the root in capitals.");
        }
        var hand = HandText.Read(Hand);
        if (hand.Misread is { } noHand) return noHand;
        if (From is { } from && (from < 1 || from > neck.Value.HighestFret.Number))
        {
            var text = from.ToString(CultureInfo.InvariantCulture);
            return new Misread(text, 1, text.Length, $"There is no position {from}.", $"Give the fret of the index finger, from 1 to {neck.Value.HighestFret}.");
        }
        return new ShapesFound(symbol.Name, ShapeFinder.Find(symbol, neck.Value, hand.Value, From));
    }
}

/// <summary>A chord and the shapes that play it, best first.</summary>
public sealed record ShapesFound(ChordName Chord, ImmutableArray<ShapeChoice> Choices);

/// <summary>The size of a hand as typed at the prompt: small, average or large.</summary>
public static class HandText
{
    public static Answer<HandSize> Read(string typed) => typed.Trim().ToLowerInvariant() switch
    {
        "small" => HandSize.Small,
        "average" => HandSize.Average,
        "large" => HandSize.Large,
        _ => new Misread(typed, 1, typed.Length, $"\"{typed}\" is no size of hand.", "Type small, average or large."),
    };
}
