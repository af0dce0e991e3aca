using System.Globalization;
using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Workspace.Questions;

/// <summary>A shape as typed at the prompt: <c>x 3 2 0 1 0</c>, <c>x32010</c>, <c>[7 7 9 . . .]</c>; low string first.</summary>
public static class ShapeText
{
    private const string HowTo = "Type a fret for each string from low to high, x where it is not sounded: \"x 3 2 0 1 0\".";

    /// <summary>Reads one fret, or none, for each string of a neck.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="neck">Says how many strings and frets there are; frets are written under its capo.</param>
    public static Answer<Shape> Read(string typed, Neck neck)
    {
        var words = Slots(typed);
        if (words.Count == 0) return new Misread(typed, 1, 0, "The shape is empty.", HowTo);

        var frets = new List<Fret?>();
        foreach (var word in words)
        {
            if (word.Text is "x" or "X" or ".")
            {
                frets.Add(null);
                continue;
            }
            if (!int.TryParse(word.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var fret))
            {
                return new Misread(typed, word.Column, word.Text.Length, $"\"{word.Text}\" is neither a fret nor x.", HowTo);
            }
            if (fret > neck.HighestFret.Number)
            {
                return new Misread(
                    typed, word.Column, word.Text.Length, $"Fret {fret} is beyond the neck, which ends at fret {neck.HighestFret}.",
                    neck.Capo.CountedFrom == 0 ? "Leave blanks between the frets." : "Frets count from the capo; leave blanks between them.");
            }
            frets.Add(new Fret(fret));
        }
        for (var i = 0; i < frets.Count && frets.Count == neck.StringCount; i++)
        {
            var number = new StringNumber(frets.Count - i);
            if (frets[i] is { } behind && neck.Capo.IsBehind(number, behind))
            {
                return new Misread(
                    typed, words[i].Column, words[i].Text.Length, $"Fret {behind} of string {number} is not above the {neck.Capo.Words}.",
                    $"Under a partial capo frets count from the nut: type 0 for the string as the capo stops it, or a fret from {neck.Capo.Fret + 1} on.");
            }
        }
        if (frets.Count != neck.StringCount)
        {
            return new Misread(
                typed, 1, typed.Length, $"The shape has {Strings(frets.Count)}, the tuning {neck.Tuning} has {neck.StringCount}.",
                "Type one fret or x for each string, or give the tuning with --tuning, low to high.");
        }
        if (frets.TrueForAll(f => f is null)) return new Misread(typed, 1, typed.Length, "No string sounds in this shape.", HowTo);
        return new Shape(frets.ToValueList());
    }

    /// <summary>The slots of a shape; one long word without blanks has a slot a character.</summary>
    private static List<Word> Slots(string typed)
    {
        var words = Word.In(typed.Replace('[', ' ').Replace(']', ' '));
        if (words is not [{ Text.Length: > 2 } only]) return [.. words];
        return [.. only.Text.Select((slot, i) => new Word(slot.ToString(), only.Column + i))];
    }

    private static string Strings(int count) => count == 1 ? "1 string" : $"{count} strings";
}
