using System.Collections.Immutable;
using Fretlore.Guitar;

namespace Fretlore.Hands.Strings;

/// <summary>A set of strings as many guitars leave the shop with, and its tuning (common practice; gauges from memory).</summary>
public sealed record UsualSet
{
    private UsualSet(string name, string tuning, string gaugesHighToLow)
    {
        Name = name;
        Tuning = Tuning.TryParse(tuning, out var read) ? read : throw new FormatException(tuning);
        HighToLow = [.. gaugesHighToLow.Split(' ').Select(gauge => GaugeText.Read(gauge) is { Problem: GaugeProblem.None } read
            ? read.String!
            : throw new FormatException(gauge))];
    }

    public static UsualSet Light { get; } = new("9-42", "E2 A2 D3 G3 B3 E4", "9 11 16 24w 32w 42w");

    public static UsualSet Regular { get; } = new("10-46", "E2 A2 D3 G3 B3 E4", "10 13 17 26w 36w 46w");

    public static UsualSet Heavy { get; } = new("11-49", "E2 A2 D3 G3 B3 E4", "11 14 18 28w 38w 49w");

    public static UsualSet SevenString { get; } = new("seven-string 10-56", "B1 E2 A2 D3 G3 B3 E4", "10 13 17 26w 36w 46w 56w");

    public static UsualSet EightString { get; } = new("eight-string 10-74", "F#1 B1 E2 A2 D3 G3 B3 E4", "10 13 17 30w 42w 54w 64w 74w");

    public string Name { get; }

    public Tuning Tuning { get; }

    /// <summary>String 1 first.</summary>
    public ImmutableArray<GuitarString> HighToLow { get; }

    /// <summary>The usual set for a number of strings, or null where there is none.</summary>
    public static UsualSet? For(int stringCount) => stringCount switch
    {
        6 => Regular,
        7 => SevenString,
        8 => EightString,
        _ => null,
    };

    /// <summary>This set on a neck of one scale length, in its own tuning.</summary>
    public StringSet At(double scaleLength) => StringSet.Of(Tuning, new NeckGeometry(Tuning.StringCount, scaleLength), HighToLow);
}
