using System.Collections.Immutable;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Music;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lines;

/// <summary>A rhythm cell: values that cycle over the events, starting anew at each bar line.</summary>
/// <param name="Values">At least one.</param>
/// <param name="Tuplet">The tuplet all its values stand in, or null.</param>
internal sealed record TimeCell(ImmutableArray<NoteValue> Values, Tuplet? Tuplet)
{
    private const int LargestTuplet = 32;

    private static readonly ImmutableArray<TimeCell> Singles = [.. "WHQESYZ".Select(l => new TimeCell(ReadValues([l]), null))];

    public static TimeCell Quarters { get; } = new([new NoteValue(ValueBase.Quarter)], null);

    /// <summary>Reads a time; null when the parser had to make it up or a tuplet makes no sense, which is then reported.</summary>
    public static TimeCell? Read(TimeSyntax time, DiagnosticBag problems)
    {
        var isPlain = time.Count is null || time.Count.IsMissing;
        if (isPlain && time.Values.Text is [var letter] && "WHQESYZ".IndexOf(letter, StringComparison.Ordinal) is >= 0 and var single) return Singles[single];
        var values = ReadValues(time.Values.Text);
        if (values.Length == 0) return null;
        if (isPlain) return new TimeCell(values, null);
        var count = Numerals.Of(time.Count!) ?? 0;
        var inTimeOf = time.InTimeOf is null || time.InTimeOf.IsMissing ? Music.Tuplet.UsualTimeOf(count) : Numerals.Of(time.InTimeOf) ?? 0;
        if (count is < 2 or > LargestTuplet || inTimeOf is < 1 or > LargestTuplet || count == inTimeOf || inTimeOf > 4 * count || count > 4 * inTimeOf)
        {
            problems.Add(TimeProblems.NoSuchTuplet(time.Span));
            return new TimeCell(values, null);
        }
        return new TimeCell(values, new Tuplet(count, inTimeOf, values.Max(v => v.Base)));
    }

    public static ImmutableArray<NoteValue> ReadValues(ReadOnlySpan<char> letters)
    {
        var values = ImmutableArray.CreateBuilder<NoteValue>(letters.Length);
        foreach (var letter in letters)
        {
            if (letter == '.')
            {
                if (values.Count > 0 && values[^1].Dots < 2) values[^1] = values[^1] with { Dots = values[^1].Dots + 1 };
            }
            else if (ReadBase(letter) is { } value) values.Add(new NoteValue(value));
            else return [];
        }
        return values.DrainToImmutable();
    }

    public static ValueBase? ReadBase(char letter) => letter switch
    {
        'W' => ValueBase.Whole,
        'H' => ValueBase.Half,
        'Q' => ValueBase.Quarter,
        'E' => ValueBase.Eighth,
        'S' => ValueBase.Sixteenth,
        'Y' => ValueBase.ThirtySecond,
        'Z' => ValueBase.SixtyFourth,
        _ => null,
    };
}
