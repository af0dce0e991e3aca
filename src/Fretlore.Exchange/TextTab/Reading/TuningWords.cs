using System.Text.RegularExpressions;
using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Exchange.TextTab.Reading;

/// <summary>Tunings as people write them: notes with or without octaves, together or apart, or words such as "drop D".</summary>
internal static partial class TuningWords
{
    // What notes without octaves are taken to be near to (common practice for so many strings).
    private static readonly string[] Usual =
    [
        "E2 A2 D3 G3 B3 E4", "E1 A1 D2 G2", "B0 E1 A1 D2 G2", "B1 E2 A2 D3 G3 B3 E4", "F#1 B1 E2 A2 D3 G3 B3 E4", "C#1 F#1 B1 E2 A2 D3 G3 B3 E4", "G4 C4 E4 A4",
    ];

    /// <summary>The usual tuning for four to nine strings.</summary>
    public static Tuning UsualFor(int strings) => Parsed(Usual.First(u => u.Split(' ').Length == strings));

    /// <summary>Reads a tuning; null when the words say none for so many strings.</summary>
    /// <param name="words">What follows "Tuning:".</param>
    /// <param name="strings">How many strings there are, or null when that is not known yet.</param>
    public static Tuning? Of(string words, int? strings)
    {
        var text = words.Trim();
        if (Named(text, strings ?? 6) is { } named) return named;
        var exact = Exact().Matches(text).Select(m => m.Value).ToList();
        if (exact.Count is >= TabBlocks.FewestStrings and <= TabBlocks.MostStrings && Tuning.TryParse(string.Join(' ', exact), out var tuning)) return tuning;
        foreach (var flats in (ReadOnlySpan<bool>)[true, false])
        {
            if (Names(text, flats) is { Count: >= TabBlocks.FewestStrings and <= TabBlocks.MostStrings } names && (strings is null || names.Count == strings)) return OfNames(names);
        }
        return null;
    }

    /// <summary>The tuning that has these open strings, low to high or the other way round, in the octaves nearest to a usual one.</summary>
    public static Tuning OfNames(IReadOnlyList<NoteName> names)
    {
        var (up, upCost) = Fit(names);
        var (down, downCost) = Fit([.. names.Reverse()]);
        return upCost <= downCost ? up : down;
    }

    /// <summary>The tuning with these strings from the low one up, and how far it is from a usual one, in semitones.</summary>
    public static (Tuning Tuning, int Cost) Fit(IReadOnlyList<NoteName> lowToHigh)
    {
        (Tuning, int)? best = null;
        foreach (var usual in Usual.Select(Parsed).Where(u => u.StringCount == lowToHigh.Count))
        {
            var pitches = usual.LowToHigh.Select((near, i) => Enumerable.Range(-1, 10).Select(o => new Pitch(lowToHigh[i], o)).MinBy(p => Math.Abs(p.Midi - near.Midi))).ToValueList();
            var cost = pitches.Select((p, i) => Math.Abs(p.Midi - usual.LowToHigh[i].Midi)).Sum();
            if (best is null || cost < best.Value.Item2) best = (new Tuning(pitches), cost);
        }
        return best!.Value;
    }

    // "standard", "drop D", "half a step down".
    private static Tuning? Named(string text, int strings)
    {
        var plain = text.ToLowerInvariant();
        var shift = plain.Contains("half", StringComparison.Ordinal) || plain.Contains("1/2", StringComparison.Ordinal) ? 1
            : plain.Contains("whole step", StringComparison.Ordinal) || plain.Contains("full step", StringComparison.Ordinal) || plain.Contains("one step", StringComparison.Ordinal) ? 2 : 0;
        var isDrop = Drop().Match(plain);
        var isNamed = plain.Contains("standard", StringComparison.Ordinal) || isDrop.Success || (shift > 0 && plain.Contains("down", StringComparison.Ordinal));
        if (!isNamed || !Usual.Any(u => u.Split(' ').Length == strings)) return null;
        var tuning = UsualFor(strings);
        if (Flat().Match(text) is { Success: true } start && NoteName.TryParse(start.Groups[1].Value, out var tonic)) shift = Wrapped(tuning.LowToHigh[0].Name.PitchClass - tonic.PitchClass);
        var down = tuning.LowToHigh.Select(p => Lowered(p, shift)).ToList();
        if (isDrop.Success && NoteName.TryParse(char.ToUpperInvariant(isDrop.Groups[1].Value[0]) + isDrop.Groups[1].Value[1..], out var low))
        {
            // The lowest string a whole step below where it would be; the others with it.
            var steps = Wrapped(tuning.LowToHigh[0].Name.PitchClass - low.PitchClass) - 2;
            if (shift == 0) down = [.. tuning.LowToHigh.Select(p => Lowered(p, steps))];
            var height = down[0].Height - 2;
            down[0] = height.PitchClass == low.PitchClass ? height.Spell(low) : Lowered(down[0], 2);
        }
        return new Tuning(down.ToValueList());
    }

    private static int Wrapped(int semitones) => NoteName.Wrap(semitones, 12);

    // Strings that are let down have flats, as players name them.
    private static Pitch Lowered(Pitch pitch, int semitones)
    {
        if (semitones == 0) return pitch;
        ReadOnlySpan<string> names = ["C", "Db", "D", "Eb", "E", "F", "Gb", "G", "Ab", "A", "Bb", "B"];
        var height = pitch.Height - semitones;
        return NoteName.TryParse(names[height.PitchClass], out var name) ? height.Spell(name) : pitch;
    }

    private static List<NoteName>? Names(string text, bool flats)
    {
        var names = new List<NoteName>();
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (c is ' ' or ',' or '-' or '|' or '/' or '.') continue;
            if (c == '(' || names.Count >= TabBlocks.FewestStrings && !"ABCDEFGabcdefg".Contains(c, StringComparison.Ordinal)) break;
            if (!"ABCDEFGabcdefg".Contains(c, StringComparison.Ordinal)) return null;
            var length = i + 1 < text.Length && (text[i + 1] == '#' || (flats && text[i + 1] == 'b')) ? 2 : 1;
            if (!NoteName.TryParse(text.AsSpan(i, length), out var name)) return null;
            names.Add(name);
            i += length - 1;
        }
        return names;
    }

    private static Tuning Parsed(string text) => Tuning.TryParse(text, out var tuning) ? tuning : throw new InvalidOperationException();

    [GeneratedRegex(@"\b[A-G](?:#|b)?-?\d\b", RegexOptions.NonBacktracking)]
    private static partial Regex Exact();

    [GeneratedRegex(@"drop(?:ped)?[ -]+([a-g](?:#|b)?)\b", RegexOptions.NonBacktracking)]
    private static partial Regex Drop();

    [GeneratedRegex(@"^([A-G](?:#|b)?) standard", RegexOptions.IgnoreCase | RegexOptions.NonBacktracking)]
    private static partial Regex Flat();
}
