using Fretlore.Music;

namespace Fretlore.Binding.Words;

/// <summary>Lengths of musical time in a player's words: "an eighth", "a dotted quarter", "5/16".</summary>
internal static class LengthWords
{
    public static string Of(Beats length)
    {
        var wholes = length / 4;
        var (count, unit) = (wholes.Numerator, wholes.Denominator);
        if (unit > 64 && !IsTriplet(unit)) return $"{count}/{unit} of a whole note";
        if (IsTriplet(unit)) return count == 1 ? $"a triplet {Name(unit * 2 / 3)}" : $"{count} triplet {Name(unit * 2 / 3)}s";
        if (!IsPowerOfTwo(unit)) return $"{count}/{unit} of a whole note";
        if (count == 1) return Article(Name(unit));
        if (count == 3 && unit >= 2) return "a dotted " + Name(unit / 2);
        return unit == 1 ? $"{count} whole notes" : $"{count}/{unit}";
    }

    private static bool IsTriplet(long unit) => unit % 3 == 0 && IsPowerOfTwo(unit / 3) && unit is >= 6 and <= 96;

    private static bool IsPowerOfTwo(long number) => number > 0 && (number & (number - 1)) == 0;

    private static string Article(string name) => (name is "eighth" ? "an " : "a ") + name;

    private static string Name(long unit) => unit switch
    {
        1 => "whole note",
        2 => "half",
        4 => "quarter",
        8 => "eighth",
        16 => "16th",
        32 => "32nd",
        _ => "64th",
    };
}
