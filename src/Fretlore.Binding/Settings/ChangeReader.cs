using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Binding.Draft;
using Fretlore.Binding.Lines;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Settings;

/// <summary>Reads metres, tempos, keys, feels and dynamics, in a setting or between parentheses.</summary>
internal static class ChangeReader
{
    /// <summary>The first words a change may have.</summary>
    public static ImmutableArray<string> Words { get; } =
        ["meter", "tempo", "key", "capo", "feel", "swing", "straight", "chord", "fermata", "pp", "p", "mp", "mf", "f", "ff", .. JumpWords.Written];

    /// <summary>Reads what stands between parentheses; null, with a finding, when it is no change.</summary>
    public static Change? Read(ImmutableArray<SheetWord> words, TextSpan span, DiagnosticBag problems)
    {
        if (words.Length == 0) return null;
        var first = words[0];
        var rest = words.RemoveAt(0);
        return first.Text switch
        {
            "meter" => Meter(rest, span, problems) is { } meter ? new MeterChange(meter) : null,
            "tempo" => Tempo(rest, span, problems) is { } tempo ? new TempoChange(tempo) : null,
            "key" => Key(rest, span, problems) is { } key ? new KeyChange(key) : null,
            "capo" => CapoReader.Read(rest, span, problems) is { } capo ? new CapoChange(capo) : null,
            "feel" => Feel(rest, span, problems) is { } feel ? new FeelChange(feel) : null,
            "swing" or "straight" => Feel(words, span, problems) is { } feel ? new FeelChange(feel) : null,
            "chord" => rest.Length == 1 ? new ChordSymbolMark(rest[0].Text) : Odd(SettingProblems.NoChordSymbol(span), problems),
            "fermata" => new FermataMark(),
            "pp" => new DynamicMark(Dynamic.Pianissimo),
            "p" => new DynamicMark(Dynamic.Piano),
            "mp" => new DynamicMark(Dynamic.MezzoPiano),
            "mf" => new DynamicMark(Dynamic.MezzoForte),
            "f" => new DynamicMark(Dynamic.Forte),
            "ff" => new DynamicMark(Dynamic.Fortissimo),
            _ when JumpWords.Begins(first.Text) =>
                JumpWords.Read(SheetWord.Join(words)) ?? Odd(SettingProblems.NoJump(span, SheetWord.Join(words), JumpWords.Written), problems),
            _ when TimeCell.ReadValues(first.Text).Length == 1 => Tempo(words, span, problems) is { } tempo ? new TempoChange(tempo) : null,
            _ => Odd(SettingProblems.UnknownChange(span, first.Text, Words), problems),
        };
    }

    /// <summary>Reads <c>7/8</c> or <c>7/8 2+2+3</c>.</summary>
    public static Meter? Meter(ImmutableArray<SheetWord> words, TextSpan span, DiagnosticBag problems)
    {
        if (words.Length is 1 or 2)
        {
            var numbers = words[0].Text.Split('/');
            var count = numbers.Length == 2 ? Numerals.Of(numbers[0]) : null;
            var unit = numbers.Length == 2 ? Numerals.Of(numbers[1]) : null;
            var groups = words.Length == 2 ? words[1].Text.Split('+').Select(g => Numerals.Of(g) ?? 0).ToArray() : [];
            var small = groups.All(g => g is > 0 and <= 64);
            if (count is { } c && unit is { } u && small && Music.Meter.IsValid(c, u, groups.ToValueList()))
            {
                return new Meter(c, u, groups.ToValueList());
            }
        }
        problems.Add(SettingProblems.NoMeter(span, SheetWord.Join(words)));
        return null;
    }

    /// <summary>Reads <c>Q = 96</c> or <c>Q. = 54</c>, with or without blanks.</summary>
    public static Tempo? Tempo(ImmutableArray<SheetWord> words, TextSpan span, DiagnosticBag problems)
    {
        var sides = string.Concat(words.Select(w => w.Text)).Split('=');
        if (sides.Length == 2 && TimeCell.ReadValues(sides[0]) is [var beat]
            && decimal.TryParse(sides[1], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var perMinute))
        {
            var tempo = new Tempo(beat, perMinute);
            if (perMinute is >= 5 and <= 1000) return tempo;
        }
        problems.Add(SettingProblems.NoTempo(span, SheetWord.Join(words)));
        return null;
    }

    /// <summary>Reads <c>D dorian</c>, <c>E minor</c>, <c>Bb</c>.</summary>
    public static Key? Key(ImmutableArray<SheetWord> words, TextSpan span, DiagnosticBag problems)
    {
        if (words.Length is 1 or 2 && Music.Key.TryParse(words[0].Text, words.Length == 2 ? words[1].Text : "", out var key)
            && Math.Abs(key.Signature) <= 7)
        {
            return key;
        }
        problems.Add(SettingProblems.NoKey(span, SheetWord.Join(words)));
        return null;
    }


    /// <summary>Reads <c>straight</c>, <c>swing</c> (eighths) or <c>swing S</c> (16ths).</summary>
    public static Feel? Feel(ImmutableArray<SheetWord> words, TextSpan span, DiagnosticBag problems)
    {
        if (words is [var only] && only.Is("straight")) return Score.Feel.Straight;
        if (words.Length is 1 or 2 && words[0].Is("swing"))
        {
            if (words.Length == 1 || words[1].Text == "E") return new Feel(ValueBase.Eighth);
            if (words[1].Text == "S") return new Feel(ValueBase.Sixteenth);
        }
        problems.Add(SettingProblems.NoFeel(span, SheetWord.Join(words)));
        return null;
    }

    private static Change? Odd(Diagnostic problem, DiagnosticBag problems)
    {
        problems.Add(problem);
        return null;
    }
}
