using System.Globalization;

namespace Fretlore.Guitar;

/// <summary>A capo: the fret it is at, and the neighbouring strings it covers when these are not all.</summary>
/// <remarks>
/// Frets count from a capo over all strings. Under a partial capo they count from the nut on every string, so that one number is one place
/// on the neck: 0 is the open string, which on a covered string sounds at the capo, and a covered string has no fret up to the capo's own.
/// </remarks>
public readonly record struct Capo
{
    private Capo(int fret, StringNumber lowest, StringNumber highest) => (Fret, Lowest, Highest) = (fret, lowest, highest);

    /// <summary>No capo.</summary>
    public static Capo Off => default;

    /// <summary>The fret it is at; 0 for none.</summary>
    public int Fret { get; }

    /// <summary>The covered string of the largest number; 0 where all are covered.</summary>
    public StringNumber Lowest { get; }

    /// <summary>The covered string of the smallest number; 0 where all are covered.</summary>
    public StringNumber Highest { get; }

    public bool IsOff => Fret == 0;

    /// <summary>True where it covers some strings only.</summary>
    public bool IsPartial => Fret > 0 && Lowest.Value > 0;

    /// <summary>The fret that written frets count from: the capo's over all strings, or the nut.</summary>
    public int CountedFrom => IsPartial ? 0 : Fret;

    /// <summary>A capo over all strings.</summary>
    /// <param name="fret">0 for none.</param>
    /// <exception cref="ArgumentOutOfRangeException">The fret is below 0.</exception>
    public static Capo At(int fret)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(fret);
        return new Capo(fret, default, default);
    }

    /// <summary>A capo over some neighbouring strings, named in either order.</summary>
    /// <param name="fret">From 1.</param>
    /// <param name="from">A string at one end of it, from 1.</param>
    /// <param name="to">The one at the other end.</param>
    /// <exception cref="ArgumentOutOfRangeException">The fret or a string is below 1.</exception>
    public static Capo Over(int fret, StringNumber from, StringNumber to)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(fret, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(Math.Min(from.Value, to.Value), 1);
        return new Capo(fret, new StringNumber(Math.Max(from.Value, to.Value)), new StringNumber(Math.Min(from.Value, to.Value)));
    }

    public static implicit operator Capo(int fret) => At(fret);

    public bool Covers(StringNumber number) => Fret > 0 && (!IsPartial || number.Value <= Lowest.Value && number.Value >= Highest.Value);

    /// <summary>True where it can lie on a neck of so many strings: a partial one covers some of them, and not all.</summary>
    public bool Fits(int strings) => !IsPartial || Lowest.Value <= strings && (Highest.Value > 1 || Lowest.Value < strings);

    /// <summary>The fret an open string sounds at, counted from the nut.</summary>
    public int On(StringNumber number) => Covers(number) ? Fret : 0;

    /// <summary>A written fret counted from the nut, whatever the capo.</summary>
    public int FromNut(StringNumber number, Fret fret) => fret.IsOpen ? On(number) : CountedFrom + fret.Number;

    /// <summary>A written fret counted from where the open string sounds: the semitones above it.</summary>
    public int AboveOpen(StringNumber number, Fret fret) => FromNut(number, fret) - On(number);

    /// <summary>The written fret so many semitones above the open string.</summary>
    public Fret Written(StringNumber number, int aboveOpen) => aboveOpen == 0 ? default : new Fret(On(number) + aboveOpen - CountedFrom);

    /// <summary>True where the fret is on a covered string of a partial capo and not above it: no finger stops the string there.</summary>
    public bool IsBehind(StringNumber number, Fret fret) => IsPartial && !fret.IsOpen && fret.Number <= On(number);

    /// <summary>Reads <c>2</c>, <c>2 on 5-3</c>, <c>2 on 4</c>, <c>off</c>; the strings in either order.</summary>
    public static bool TryParse(string text, out Capo capo)
    {
        capo = Off;
        var words = text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        if (words is ["off"]) return true;
        if (words.Length is not (1 or 3) || !Whole(words[0], 36, out var fret)) return false;
        if (words.Length == 1) capo = At(fret);
        if (words.Length == 1) return true;
        var ends = words[2].Split('-');
        if (words[1] != "on" || fret == 0 || ends.Length > 2) return false;
        if (!Whole(ends[0], 12, out var from) || !Whole(ends[^1], 12, out var to) || from == 0 || to == 0) return false;
        capo = Over(fret, new StringNumber(from), new StringNumber(to));
        return true;
    }

    private static bool Whole(string text, int most, out int number) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number) && number <= most;

    /// <summary>As a sheet has it: <c>off</c>, <c>2</c>, <c>2 on 5-3</c>, <c>2 on 4</c>.</summary>
    public override string ToString() => IsOff ? "off" : IsPartial ? string.Create(CultureInfo.InvariantCulture, $"{Fret} on {Strings}") : Fret.ToString(CultureInfo.InvariantCulture);

    /// <summary>The covered strings of a partial capo from the low one to the high one: <c>5-3</c>, or <c>4</c>.</summary>
    public string Strings => Lowest == Highest ? Lowest.ToString() : $"{Lowest}-{Highest}";

    /// <summary>In words for a page: <c>capo at fret 2</c>, <c>capo at fret 2 on strings 5-3</c>; nothing without one.</summary>
    public string Words => IsOff ? ""
        : string.Create(CultureInfo.InvariantCulture, $"capo at fret {Fret}{(IsPartial ? (Lowest == Highest ? " on string " : " on strings ") + Strings : "")}");
}
