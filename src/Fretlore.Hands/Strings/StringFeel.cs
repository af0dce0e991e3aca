using System.Collections.Immutable;
using Fretlore.Guitar;

namespace Fretlore.Hands.Strings;

/// <summary>How firm strings should be: a target tension for each string.</summary>
/// <param name="Name">What a player asks for.</param>
/// <param name="Targets">From string 1 on; strings beyond the last have the last one's target.</param>
/// <param name="Meaning">In words.</param>
public sealed record StringFeel(string Name, ImmutableArray<Tension> Targets, string Meaning)
{
    /// <summary>The feels that have names.</summary>
    public static ImmutableArray<StringFeel> Named { get; } =
    [
        new("even", [Average(UsualSet.Regular)], "every string as tight as the average of a usual 10-46 set"),
        new("light", Of(UsualSet.Light), "as tight, string by string, as a usual 9-42 set in E standard at 25.5 in"),
        new("regular", Of(UsualSet.Regular), "as tight, string by string, as a usual 10-46 set in E standard at 25.5 in"),
        new("heavy", Of(UsualSet.Heavy), "as tight, string by string, as a usual 11-49 set in E standard at 25.5 in"),
    ];

    public static StringFeel Even(Tension each) => new("even", [each], "every string equally tight");

    public Tension Target(StringNumber number) => Targets[Math.Min(number.Value, Targets.Length) - 1];

    private static ImmutableArray<Tension> Of(UsualSet set) => set.At(Inches(25.5)).Strings.Select(s => s.Tension).ToImmutableArray();

    private static Tension Average(UsualSet set)
    {
        var targets = Of(set);
        return targets.Aggregate(new Tension(0), (sum, next) => sum + next) * (1.0 / targets.Length);
    }

    private static double Inches(double inches) => inches * NeckGeometry.MillimetresPerInch;
}
