using System.Globalization;
using System.Xml.Linq;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml.Reading;

/// <summary>Numbers and words of MusicXML; what makes no sense reads as null.</summary>
internal static class XmlWords
{
    private const double MostNumber = 1_000_000;

    public static string? Text(this XElement? element, string child) => element?.Element(child) is { } found ? Line(found.Value) : null;

    /// <summary>A text on one line with single blanks.</summary>
    public static string Line(string text)
    {
        foreach (var c in text)
        {
            if (char.IsWhiteSpace(c)) return string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        }
        return text;
    }

    public static string? Said(this XElement element, string attribute) => element.Attribute(attribute)?.Value;

    public static double? Number(string? text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && Math.Abs(number) <= MostNumber ? number : null;

    public static int? Whole(string? text) => Number(text) is { } number && number == Math.Truncate(number) ? (int)number : null;

    public static int? Whole(this XElement? element, string child) => Whole(element.Text(child));

    /// <summary>A duration in divisions, exact for up to four decimals; null when it is none.</summary>
    public static Beats? Duration(this XElement element, long divisions)
    {
        if (Number(element.Text("duration")) is not { } number || number < 0) return null;
        return Beats.Of((long)Math.Round(number * 10_000), 10_000 * divisions);
    }

    /// <summary>A fretting finger: 1 to 4, or T or 0 for the thumb.</summary>
    public static Finger? Finger(string? text) => text is "T" or "t" or "0" ? Score.Finger.Thumb : Whole(text) is >= 1 and <= 4 and var number ? (Finger)number : null;

    public static ValueBase? Value(string? type) => type switch
    {
        "whole" => ValueBase.Whole,
        "half" => ValueBase.Half,
        "quarter" => ValueBase.Quarter,
        "eighth" => ValueBase.Eighth,
        "16th" => ValueBase.Sixteenth,
        "32nd" => ValueBase.ThirtySecond,
        "64th" => ValueBase.SixtyFourth,
        _ => null,
    };

    public static Dynamic? Dynamic(string name) => name switch
    {
        "pp" or "ppp" or "pppp" or "ppppp" or "pppppp" => Score.Dynamic.Pianissimo,
        "p" => Score.Dynamic.Piano,
        "mp" => Score.Dynamic.MezzoPiano,
        "mf" => Score.Dynamic.MezzoForte,
        "f" => Score.Dynamic.Forte,
        "ff" or "fff" or "ffff" or "fffff" or "ffffff" => Score.Dynamic.Fortissimo,
        _ => null,
    };

    /// <summary>Semitones above C-1 of a written pitch, and its name.</summary>
    public static (NoteName Name, int Midi)? Pitch(XElement? pitch, string prefix = "")
    {
        if (pitch.Text(prefix + "step") is not { Length: 1 } letter || !NoteName.TryParse(letter, out var natural)) return null;
        if (pitch.Whole(prefix + "octave") is not { } octave || octave is < -1 or > 10) return null;
        var alter = Number(pitch.Text(prefix + "alter")) ?? 0;
        if (Math.Abs(alter) > 3) return null;
        var name = natural with { Alteration = (int)Math.Round(alter) };
        return (name, new Pitch(name, octave).Midi);
    }

    /// <summary>A key from its signature and mode; null for no key stated.</summary>
    public static Key? Key(int fifths, string? mode)
    {
        if (Math.Abs(fifths) > 7 || (mode is null or "none" && fifths == 0)) return null;
        for (var tonic = -14; tonic <= 14; tonic++)
        {
            var name = NoteName.FromFifths(tonic);
            if (Math.Abs(name.Alteration) > 2 || !Music.Key.TryParse(name.ToString(), mode is null or "none" ? "major" : mode, out var key)) continue;
            if (key.Signature == fifths) return key;
        }
        return null;
    }
}
