using System.Globalization;
using System.Text;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>The small words of the sheet language: values, tempos, keys, bends, dynamics, quoted text.</summary>
internal static class SheetWords
{
    private static readonly Jump[] Jumps = Enum.GetValues<Jump>();

    public static char Letter(ValueBase value) => value switch
    {
        ValueBase.Whole => 'W',
        ValueBase.Half => 'H',
        ValueBase.Quarter => 'Q',
        ValueBase.Eighth => 'E',
        ValueBase.Sixteenth => 'S',
        ValueBase.ThirtySecond => 'Y',
        _ => 'Z',
    };

    public static string Of(NoteValue value) => Letter(value.Base) + new string('.', value.Dots);

    public static string Of(Tempo tempo) => string.Create(CultureInfo.InvariantCulture, $"{Of(tempo.Beat)} = {tempo.PerMinute:0.######}");

    public static string Of(Meter meter) =>
        meter.StatedGroups.Count > 0 ? $"{meter} {string.Join('+', meter.StatedGroups)}" : meter.ToString();

    public static string Of(Feel feel) => feel.Swung switch
    {
        null => "straight",
        ValueBase.Sixteenth => "swing S",
        _ => "swing",
    };

    public static string Of(Dynamic dynamic) => dynamic switch
    {
        Dynamic.Pianissimo => "(pp)",
        Dynamic.Piano => "(p)",
        Dynamic.MezzoPiano => "(mp)",
        Dynamic.MezzoForte => "(mf)",
        Dynamic.Forte => "(f)",
        _ => "(ff)",
    };

    public static string Of(Jump jump) => jump switch
    {
        Jump.Fine => "(fine)",
        Jump.ToCoda => "(to coda)",
        Jump.DaCapo => "(D.C.)",
        Jump.DaCapoAlFine => "(D.C. al fine)",
        Jump.DaCapoAlCoda => "(D.C. al coda)",
        Jump.DalSegno => "(D.S.)",
        Jump.DalSegnoAlFine => "(D.S. al fine)",
        Jump.DalSegnoAlCoda => "(D.S. al coda)",
        _ => "",
    };

    /// <summary>The jump that words without their parentheses say; none when they say another thing.</summary>
    public static Jump JumpOf(string words) =>
        Array.Find(Jumps, jump => jump != Jump.None && Of(jump).AsSpan(1..^1).Equals(words, StringComparison.OrdinalIgnoreCase));

    /// <summary>A key; one of more than seven signs by its simpler enharmonic name.</summary>
    public static string Of(Key key)
    {
        while (key.Signature > 7) key = key with { Tonic = NoteName.FromFifths(key.Tonic.Fifths - 12) };
        while (key.Signature < -7) key = key with { Tonic = NoteName.FromFifths(key.Tonic.Fifths + 12) };
        return key.ToString();
    }

    public static string Of(int number) => number.ToString(CultureInfo.InvariantCulture);

    public static string Strings(IEnumerable<StringNumber> lowToHigh) => string.Concat(lowToHigh.Select(s => s.ToString()));

    /// <summary>The sign for a tuplet: <c>:3</c>, or with the second number where it is not the usual one.</summary>
    public static string Of(Tuplet tuplet)
    {
        var usual = Tuplet.UsualTimeOf(tuplet.Count);
        return usual == tuplet.InTimeOf ? $":{tuplet.Count}" : $":{tuplet.Count}/{tuplet.InTimeOf}";
    }

    /// <summary>A raise to so many cents: <c>+</c>, <c>+h</c>, <c>+w20c</c>; 0 is a release.</summary>
    public static string Raise(int cents)
    {
        if (cents <= 0) return "-";
        var (sign, steps) = cents switch { >= 400 => ("ww", 400), >= 300 => ("wh", 300), >= 200 => ("w", 200), >= 100 => ("h", 100), >= 50 => ("q", 50), _ => ("", 0) };
        if (cents == steps) return steps == 200 ? "+" : "+" + sign;
        return string.Create(CultureInfo.InvariantCulture, $"+{sign}{cents - steps}c");
    }

    /// <summary>Text between double quotes on one line; what a sheet can't hold becomes a blank or a single quote.</summary>
    public static string Quoted(string text) => $"\"{OneLine(text)}\"";

    public static string OneLine(string text)
    {
        var line = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            if (rune.Value == '"') line.Append('\'');
            else if (Rune.IsControl(rune) || rune.Value is 0x2028 or 0x2029 or 0xFFFD) line.Append(' ');
            else line.Append(rune.ToString());
        }
        return string.Join(' ', line.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }

    /// <summary>A text as a setting's value: bare where that reads back the same.</summary>
    public static string Value(string text)
    {
        var line = OneLine(text);
        return line.Length == 0 || line.Contains("--", StringComparison.Ordinal) || line.Contains('\'', StringComparison.Ordinal) && line != text ? $"\"{line}\"" : line;
    }
}
