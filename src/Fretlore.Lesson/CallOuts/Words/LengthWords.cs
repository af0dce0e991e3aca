using Fretlore.Music;

namespace Fretlore.Lesson.CallOuts.Words;

/// <summary>Lengths in beats as a teacher counts them: "for two beats", "for three counts" in compound metres.</summary>
internal static class LengthWords
{
    /// <summary>The words for a length of a beat or more that comes out in halves; null for others.</summary>
    public static string? Beats(Beats length, Meter meter)
    {
        var compound = meter.Unit >= 8;
        var halves = length * 2 / Music.Beats.Of(4, compound ? 8 : meter.Unit);
        if (halves.Denominator != 1 || halves.Numerator < 2) return null;
        var name = compound ? "count" : "beat";
        var (whole, half) = (halves.Numerator / 2, halves.Numerator % 2 == 1);
        if (compound && whole < 2) return null;
        if (whole == 1) return half ? $"for a {name} and a half" : $"for a {name}";
        return $"for {NumberWords.Of(whole)}{(half ? " and a half" : "")} {name}s";
    }

    /// <summary>A place counted from the bar's start, in a way that can be read back: "three eighths".</summary>
    public static string Offset(Beats offset) => (offset.Denominator, offset.Numerator) switch
    {
        (1, var n) => Many(n, "quarter"),
        (2, var n) => Many(n, "eighth"),
        (4, var n) => Many(n, "sixteenth"),
        (8, var n) => Many(n, "thirty-second"),
        (var d, var n) => $"{NumberWords.Of(n)} in {NumberWords.Of(d)} of a quarter",
    };

    /// <summary>Reads what <see cref="Offset"/> says, articles taken out.</summary>
    public static bool TryReadOffset(IReadOnlyList<string> words, ref int at, out Beats offset)
    {
        offset = default;
        var place = at;
        if (!NumberWords.TryRead(words, ref place, out var count) || place >= words.Count) return false;
        if (words[place] == "in")
        {
            place++;
            if (!NumberWords.TryRead(words, ref place, out var parts) || parts == 0 || place + 1 >= words.Count) return false;
            if (words[place++] != "of" || words[place++] != "quarter") return false;
            offset = Music.Beats.Of(count, parts);
        }
        else
        {
            if (!ValueWords.TryRead(words, ref place, out var unit)) return false;
            offset = unit.Value.Length * count;
        }
        at = place;
        return true;
    }

    private static string Many(long count, string unit) => $"{NumberWords.Of(count)} {unit}{(count == 1 ? "" : "s")}";
}
