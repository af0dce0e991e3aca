using System.Globalization;
using System.Text;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Reading.Chords;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>Names for shapes, made of the chord they are: <c>am7</c>, <c>f-sharp-m</c>, <c>am7-2</c> for another way to play it.</summary>
internal static class ShapeNames
{
    /// <summary>The name of the chord that a shape sounds on a neck.</summary>
    public static string Of(Shape shape, Neck neck)
    {
        Height[] heights = [.. shape.On(neck).Select(s => s.Height)];
        return OfChord(ChordNamer.Name(heights).Candidates is [var best, ..] ? best.Symbol : "");
    }

    /// <summary>A chord symbol in a word: small letters, figures and dashes.</summary>
    public static string OfChord(string symbol)
    {
        var name = new StringBuilder();
        for (var i = 0; i < symbol.Length; i++)
        {
            var isFlat = symbol[i] == 'b' && i > 0 && (char.IsAsciiLetterUpper(symbol[i - 1]) || (i + 1 < symbol.Length && char.IsAsciiDigit(symbol[i + 1])));
            name.Append(symbol[i] switch
            {
                '#' or '♯' => "-sharp-",
                '♭' => "-flat-",
                _ when isFlat => "-flat-",
                '/' => "-over-",
                var c when char.IsAsciiLetterOrDigit(c) => char.ToLowerInvariant(c).ToString(),
                _ => "-",
            });
        }
        var text = string.Join('-', name.ToString().Split('-', StringSplitOptions.RemoveEmptyEntries));
        return text.Length is > 0 and <= 40 && char.IsAsciiLetterLower(text[0]) ? text : "chord";
    }

    /// <summary>The name, with a number behind it where it is taken.</summary>
    public static string Unused(string name, HashSet<string> used)
    {
        var unused = name;
        for (var n = 2; !used.Add(unused); n++) unused = string.Create(CultureInfo.InvariantCulture, $"{name}-{n}");
        return unused;
    }

    /// <summary>The shape that notes are at their frets; null where one is on no string of the neck.</summary>
    public static Shape? ShapeOf(ValueList<Note> notes, Neck neck)
    {
        var frets = new Fret?[neck.StringCount];
        foreach (var note in notes)
        {
            if (note.String.Value < 1 || note.String.Value > frets.Length) return null;
            frets[frets.Length - note.String.Value] = note.Fret;
        }
        return new Shape(frets.ToValueList());
    }
}
