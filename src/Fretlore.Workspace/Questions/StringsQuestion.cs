using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Guitar;
using Fretlore.Hands.Strings;
using Fretlore.Syntax;

namespace Fretlore.Workspace.Questions;

/// <summary>Which strings suit a tuning, and what they pull?</summary>
/// <param name="Tuning">As typed, see <see cref="NeckText"/>; null for the usual one.</param>
/// <param name="ScaleLength">As typed, see <see cref="ScaleLengthText"/>.</param>
/// <param name="Feel">A name of <see cref="StringFeel.Named"/>, or a tension for each string such as <c>16lbf</c> or <c>72N</c>.</param>
/// <param name="Gauges">The strings to use, low to high as the tuning is; null to have them chosen.</param>
/// <param name="NowGauges">The strings on the guitar now; null for the given ones or a usual set.</param>
/// <param name="NowTuning">What they are tuned to now; null for the usual tuning of the usual set.</param>
public sealed record StringsQuestion(
    string? Tuning = null, string ScaleLength = "25.5in", string Feel = "even", string? Gauges = null, string? NowGauges = null, string? NowTuning = null)
{
    public Answer<StringsAdvice> Ask()
    {
        var neck = NeckText.Read(Tuning);
        if (neck.Misread is { } noNeck) return noNeck;
        var tuning = neck.Value.Tuning;
        var lengths = ScaleLengthText.Read(ScaleLength);
        if (lengths.Misread is { } noLength) return noLength;
        var geometry = new NeckGeometry(tuning.StringCount, lengths.Value.High, lengths.Value.Low);
        var feel = FeelText.Read(Feel);
        if (feel.Misread is { } noFeel) return noFeel;

        StringSet set;
        var given = default(ImmutableArray<GuitarString>);
        if (Gauges is null)
        {
            set = StringSet.For(tuning, geometry, feel.Value);
        }
        else
        {
            var gauges = GaugesText.Read(Gauges, tuning);
            if (gauges.Misread is { } noGauges) return noGauges;
            given = gauges.Value;
            set = StringSet.Of(tuning, geometry, given);
        }
        var before = Before(tuning, geometry, given);
        if (before.Misread is { } noBefore) return noBefore;
        var (strings, words) = before.Value;
        return new StringsAdvice(
            set, strings, words, Gauges is null ? feel.Value : null, StringRemarks.On(set, Gauges is null ? feel.Value : null, strings));
    }

    // What is on the guitar now: as told; where nothing is told, a usual set in its tuning.
    private Answer<(StringSet? Set, string? Words)> Before(Tuning tuning, NeckGeometry geometry, ImmutableArray<GuitarString> given)
    {
        var usual = UsualSet.For(tuning.StringCount);
        var nowTuning = usual?.Tuning ?? tuning;
        if (NowTuning is not null)
        {
            var now = NeckText.Read(NowTuning);
            if (now.Misread is { } noTuning) return noTuning;
            nowTuning = now.Value.Tuning;
            if (nowTuning.StringCount != tuning.StringCount)
            {
                return new Misread(NowTuning, 1, NowTuning.Length, "The tuning now and the new one have different numbers of strings.",
                    "Give the same strings in both tunings, low to high.");
            }
        }
        ImmutableArray<GuitarString> gauges;
        if (NowGauges is not null)
        {
            var read = GaugesText.Read(NowGauges, tuning);
            if (read.Misread is { } noGauges) return noGauges;
            gauges = read.Value;
        }
        else if (!given.IsDefault && NowTuning is not null) gauges = given;
        else if (usual is not null) gauges = usual.HighToLow;
        else return (null, null);
        var isUsual = NowGauges is null && usual is not null && gauges == usual.HighToLow;
        var set = StringSet.Of(nowTuning, geometry, gauges);
        return (set, isUsual ? $"a usual {usual!.Name} set in {nowTuning}" : $"now, in {nowTuning}");
    }
}

/// <summary>Strings for a tuning, with what they are compared to.</summary>
/// <param name="Set">The strings, in the new tuning.</param>
/// <param name="Before">What they are compared to, or null.</param>
/// <param name="BeforeWords">What that is, in words.</param>
/// <param name="Feel">What was aimed at; null where the gauges were given.</param>
/// <param name="Remarks">What to be careful about.</param>
public sealed record StringsAdvice(
    StringSet Set, StringSet? Before, string? BeforeWords, StringFeel? Feel, ImmutableArray<StringRemark> Remarks);

/// <summary>How firm strings should be, as typed at the prompt.</summary>
internal static class FeelText
{
    // Below and above, no guitar string of any kind is played (by judgement).
    private const double Least = 5, Most = 60;

    public static Answer<StringFeel> Read(string typed)
    {
        var text = typed.Trim();
        var names = StringFeel.Named.Select(feel => feel.Name).ToList();
        var howTo = $"Type {string.Join(", ", names)}, or a tension for every string: \"16lbf\" or \"72N\".";
        if (StringFeel.Named.FirstOrDefault(feel => feel.Name.Equals(text, StringComparison.OrdinalIgnoreCase)) is { } named) return named;
        var (unit, letters) = text.EndsWith("lbf", StringComparison.OrdinalIgnoreCase) ? (1.0, 3)
            : text.EndsWith('N') ? (1 / Tension.NewtonsPerPoundForce, 1)
            : (0, 0);
        if (unit > 0 && double.TryParse(text[..^letters], NumberStyles.AllowDecimalPoint | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var number))
        {
            if (number * unit is >= Least and <= Most) return StringFeel.Even(new Tension(number * unit));
            return new Misread(typed, 1, typed.Length, $"No string is played at {text}.", $"Give a tension from {Least} to {Most} lbf.");
        }
        var near = Nearest.To(text, names);
        return new Misread(typed, 1, typed.Length, $"\"{text}\" is no feel.", near is null ? howTo : $"Perhaps {near} was meant. {howTo}");
    }
}

/// <summary>Gauges as typed at the prompt, low to high like the tuning.</summary>
internal static class GaugesText
{
    public static Answer<ImmutableArray<GuitarString>> Read(string typed, Tuning tuning)
    {
        var (thinnest, thickest) = GaugeText.Range;
        var howTo = $"Type thousandths of an inch, low string first, w for wound: \"46w 36w 26w 17 13 10\"; from {thinnest} to {thickest}.";
        var words = Word.In(typed);
        var strings = ImmutableArray.CreateBuilder<GuitarString>();
        foreach (var word in words)
        {
            var (gauge, problem) = GaugeText.Read(word.Text);
            if (problem == GaugeProblem.None)
            {
                strings.Insert(0, gauge!);
                continue;
            }
            var message = problem switch
            {
                GaugeProblem.NotANumber => $"\"{word.Text}\" is not a gauge.",
                GaugeProblem.OutOfRange => $"The gauge {word.Text} is out of range.",
                _ => $"The table has no string {word.Text}.",
            };
            return new Misread(typed, word.Column, word.Text.Length, message, gauge is null ? howTo : $"The nearest there is is {gauge}. {howTo}");
        }
        if (strings.Count != tuning.StringCount)
        {
            return new Misread(typed, 1, typed.Length, $"There are {strings.Count} gauges for {tuning.StringCount} strings.", howTo);
        }
        return strings.ToImmutable();
    }
}
