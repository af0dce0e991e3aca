using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Syntax;

namespace Fretlore.Binding.Settings;

/// <summary>Reads the settings that make a neck: tuning, capo, frets, scale length and gauges.</summary>
internal static class NeckReader
{
    private const int FewestStrings = 4;
    private const int MostStrings = 9;
    private const int FewestFrets = 12;
    private const int MostFrets = 36;

    /// <summary>The settings with one more read; unchanged when it is not about the neck.</summary>
    public static NeckSettings Read(NeckSettings neck, SettingSyntax setting, DiagnosticBag problems)
    {
        var words = SheetWord.From(setting.Values);
        return setting.Word.Text switch
        {
            "tuning" => neck with { Tuning = Tuning(words, setting.Span, problems) ?? neck.Tuning },
            "capo" => neck with { Capo = CapoReader.Read(words, setting.Span, problems) ?? neck.Capo },
            "frets" => neck with { FretCount = Frets(words, setting.Span, problems) ?? neck.FretCount },
            "gauges" => neck with { Strings = Gauges(words, setting.Span, problems) ?? neck.Strings },
            "scale-length" => neck with { ScaleLength = ScaleLength(words, setting.Span, problems) ?? neck.ScaleLength },
            _ => neck,
        };
    }

    private static Tuning? Tuning(ImmutableArray<SheetWord> words, TextSpan span, DiagnosticBag problems)
    {
        var pitches = new List<Pitch>();
        foreach (var word in words)
        {
            if (!Pitch.TryParse(word.Text, out var pitch) || pitch.Midi is < 12 or > 100)
            {
                problems.Add(SettingProblems.NoPitch(word.Span, word.Text));
                return null;
            }
            pitches.Add(pitch);
        }
        if (pitches.Count is < FewestStrings or > MostStrings)
        {
            problems.Add(SettingProblems.StringCount(span, pitches.Count, FewestStrings, MostStrings));
            return null;
        }
        if (pitches[0].Midi > pitches[^1].Midi) problems.Add(SettingProblems.TuningFromHighToLow(span));
        return new Tuning(pitches.ToValueList());
    }

    /// <summary>Finds gauges that are more or fewer than the strings they are for.</summary>
    public static void CheckGauges(NeckSettings said, Tuning tuning, TextSpan span, DiagnosticBag problems)
    {
        if (said.Strings is { } strings && strings.Count != tuning.StringCount) problems.Add(SettingProblems.GaugeCount(span, strings.Count, tuning.StringCount));
    }

    // Low to high like the tuning; kept high to low like strings are numbered.
    private static ValueList<GuitarString>? Gauges(ImmutableArray<SheetWord> words, TextSpan span, DiagnosticBag problems)
    {
        var strings = new List<GuitarString>();
        foreach (var word in words)
        {
            var (gauge, problem) = GaugeText.Read(word.Text);
            if (problem != GaugeProblem.None)
            {
                problems.Add(SettingProblems.NoGauge(word.Span, word.Text, gauge?.ToString()));
                return null;
            }
            strings.Insert(0, gauge!);
        }
        if (strings.Count > 0) return strings.ToValueList();
        problems.Add(SettingProblems.NothingSaid(span, "gauges"));
        return null;
    }

    private static int? Frets(ImmutableArray<SheetWord> words, TextSpan span, DiagnosticBag problems)
    {
        if (words.Length == 1 && Numerals.Of(words[0].Text) is { } count and >= FewestFrets and <= MostFrets) return count;
        problems.Add(SettingProblems.FretCount(span, FewestFrets, MostFrets));
        return null;
    }

    // One length, or two with a dash between them: the longer one is the low string's, whichever comes first.
    private static (double High, double? Low)? ScaleLength(ImmutableArray<SheetWord> words, TextSpan span, DiagnosticBag problems)
    {
        var text = string.Concat(words.Select(w => w.Text));
        var unit = text.EndsWith("in", StringComparison.Ordinal) ? "in" : text.EndsWith("mm", StringComparison.Ordinal) ? "mm" : null;
        var lengths = unit is null ? [] : text.Split('-').Select(length => Millimetres(length, unit)).ToList();
        if (lengths is [{ } only]) return (only, null);
        if (lengths is [{ } one, { } other]) return one == other ? (one, null) : (Math.Min(one, other), Math.Max(one, other));
        problems.Add(SettingProblems.NoScaleLength(span, SheetWord.Join(words)));
        return null;
    }

    // The first of two lengths may leave its unit to the second.
    private static double? Millimetres(string text, string unit)
    {
        var isSaid = text.EndsWith("in", StringComparison.Ordinal) || text.EndsWith("mm", StringComparison.Ordinal);
        var factor = (isSaid ? text[^2..] : unit) == "in" ? NeckGeometry.MillimetresPerInch : 1;
        var isRead = double.TryParse(isSaid ? text[..^2] : text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number);
        return isRead && number * factor is >= NeckGeometry.ShortestScale and <= NeckGeometry.LongestScale ? number * factor : null;
    }
}
