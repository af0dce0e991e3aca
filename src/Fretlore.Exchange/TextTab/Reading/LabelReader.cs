using System.Globalization;
using System.Text.RegularExpressions;
using Fretlore.Exchange.Sheets;
using Fretlore.Music;

namespace Fretlore.Exchange.TextTab.Reading;

/// <summary>Reads the lines above and below the strings of a system.</summary>
internal static partial class LabelReader
{
    private const int LongestLabel = 60;
    private const int MostTimes = 64;
    private const int MostRests = 999;

    private static readonly string[] Stretches = ["let ring", "P.M.", "P.M", "PM", "p.m.", "ring", "trem", "arm", "wah", "cresc", "dim", "vib", "L.R."];

    private enum Sort
    {
        Other,
        Value,
        Count,
        Hand,
        Chord,
        Mixed,
    }

    public static SystemLabels Read(IEnumerable<TabLine> nearestFirst)
    {
        var labels = new SystemLabels();
        foreach (var line in nearestFirst) ReadLine(line, labels);
        return labels;
    }

    private static void ReadLine(TabLine line, SystemLabels labels)
    {
        var tokens = Tokens(line.Text);
        if (tokens.Count == 0) return;
        // A line of E's alone is values where it stands next to the strings, and else chords.
        if (labels.Values.Count == 0 && labels.Rests.Count == 0 && tokens.TrueForAll(t => IsValue(t.Text))) AddValues(tokens, labels);
        else if (labels.Counts.Count == 0 && IsCount(tokens)) AddCounts(tokens, labels);
        else if (tokens.TrueForAll(t => t.Text is "d" or "u" or "p" or "i" or "m" or "a" or "c")) labels.Hand.AddRange(tokens);
        else if (tokens.TrueForAll(t => IsChord(t.Text))) labels.Chords.AddRange(tokens);
        else if (tokens.TrueForAll(t => IsMixed(t.Text))) foreach (var token in tokens) AddMixed(token, labels);
        else labels.Rest.Add(line);
    }

    /// <summary>True for a line of nothing but note values, such as <c>E. E. Q.</c>, which might else be taken for a string.</summary>
    public static bool IsValues(string text) => Tokens(text) is { Count: > 0 } tokens && tokens.TrueForAll(t => IsValue(t.Text));

    // Words between blanks; what stands in quotes or parentheses, "let ring", "riff name" and "rest 8" are one.
    private static List<ReadLabel> Tokens(string text)
    {
        var tokens = new List<ReadLabel>();
        for (var i = 0; i < text.Length;)
        {
            if (text[i] == ' ')
            {
                i++;
                continue;
            }
            var end = EndOfToken(text, i);
            tokens.Add(new ReadLabel(i, text[i..end]));
            i = end;
        }
        return tokens;
    }

    private static int EndOfToken(string text, int at)
    {
        var close = text[at] switch { '"' => text.IndexOf('"', at + 1), '(' => text.IndexOf(')', at + 1), _ => -1 };
        if (close > 0) return close + 1;
        var end = at;
        foreach (var word in (ReadOnlySpan<string>)["let ring", "riff ", "rest "])
        {
            if (string.CompareOrdinal(text, at, word, 0, word.Length) == 0 && (word != "rest " || (at + 5 < text.Length && char.IsAsciiDigit(text[at + 5])))) end = at + word.Length;
        }
        while (end < text.Length && text[end] != ' ') end++;
        return end;
    }

    private static bool IsValue(string text) => text.Length <= 12 && (Value().IsMatch(text) || RestBars().IsMatch(text));

    private static void AddValues(List<ReadLabel> tokens, SystemLabels labels)
    {
        foreach (var token in tokens)
        {
            if (RestBars().Match(token.Text) is { Success: true } rest)
            {
                var count = rest.Groups[1].Success ? int.Parse(rest.Groups[1].ValueSpan, CultureInfo.InvariantCulture) : 1;
                labels.Rests.Add((token.Column, Math.Clamp(count, 1, MostRests)));
                continue;
            }
            var match = Value().Match(token.Text);
            var value = new NoteValue(ValueOf(match.Groups[1].ValueSpan[0]), match.Groups[2].Length);
            labels.Values.Add(new ReadValue(token.Column, value, TupletOf(match, value.Base)));
        }
    }

    private static Tuplet? TupletOf(Match match, ValueBase unit)
    {
        if (!match.Groups[3].Success) return null;
        var count = int.Parse(match.Groups[3].ValueSpan, CultureInfo.InvariantCulture);
        var usual = count switch { 2 => 3, 3 => 2, 4 => 3, <= 7 => 4, <= 15 => 8, _ => 16 };
        var inTimeOf = match.Groups[4].Success ? int.Parse(match.Groups[4].ValueSpan, CultureInfo.InvariantCulture) : usual;
        return count is < 2 or > 32 || inTimeOf is < 1 or > 32 || count == inTimeOf || inTimeOf > 4 * count || count > 4 * inTimeOf ? null : new Tuplet(count, inTimeOf, unit);
    }

    private static ValueBase ValueOf(char letter) => letter switch
    {
        'W' => ValueBase.Whole,
        'H' => ValueBase.Half,
        'Q' => ValueBase.Quarter,
        'E' => ValueBase.Eighth,
        'S' => ValueBase.Sixteenth,
        'Y' or 'T' => ValueBase.ThirtySecond,
        _ => ValueBase.SixtyFourth,
    };

    // "1 & 2 &", "1 e + a 2": at least the first two beats.
    private static bool IsCount(List<ReadLabel> tokens) =>
        tokens.TrueForAll(t => t.Text is "&" or "+" or "e" or "a" or "and" || (t.Text.Length <= 2 && t.Text.All(char.IsAsciiDigit)))
        && tokens[0].Text == "1" && tokens.Exists(t => t.Text == "2");

    private static void AddCounts(List<ReadLabel> tokens, SystemLabels labels)
    {
        var beat = 0;
        foreach (var (column, text) in tokens)
        {
            if (char.IsAsciiDigit(text[0])) beat = int.Parse(text, CultureInfo.InvariantCulture) - 1;
            var part = text switch { "e" => Beats.Of(1, 4), "&" or "+" or "and" => Beats.Of(1, 2), "a" => Beats.Of(3, 4), _ => Beats.Zero };
            labels.Counts.Add((column, Beats.Of(beat) + part));
        }
    }

    /// <summary>True for a chord symbol: a root and pieces that symbols are made of.</summary>
    public static bool IsChord(string text) => text is [>= 'A' and <= 'N', ..] && text.Length <= 20 && (text is "N.C." or "NC" || Chord().IsMatch(text));

    private static bool IsMixed(string text) =>
        text[0] is '"' or '(' || IsMark(text) || text.StartsWith("riff ", StringComparison.Ordinal) || IsStretch(text)
        || (text[0] is '|' or (>= '0' and <= '9') && Ending().IsMatch(text)) || (text[0] is 'x' or 'X' or (>= '0' and <= '9') && Times().IsMatch(text))
        || text.AsSpan().Trim('~').IsEmpty;

    private static bool IsMark(string text) => text is ">" or "." or "roll" or "roll-down" or "rake" or "fermata" || (text[0] is 't' or 'd' && NumberedMark().IsMatch(text));

    /// <summary>A mark with a number: a trill's other fret, or the whole steps of a dip.</summary>
    public static (bool IsTrill, decimal Number)? Numbered(string text) => NumberedMark().Match(text) is { Success: true } match
        ? (match.Groups[1].Value == "tr", decimal.Parse(match.Groups[2].ValueSpan, CultureInfo.InvariantCulture)) : null;

    private static bool IsStretch(string text)
    {
        if (text.Length > LongestLabel * 8) return false;
        var word = Array.Find(Stretches, s => text.StartsWith(s, StringComparison.OrdinalIgnoreCase));
        return word is not null && StretchEnd().IsMatch(text[word.Length..]);
    }

    private static void AddMixed(ReadLabel token, SystemLabels labels)
    {
        var (column, text) = token;
        if (text[0] == '"') labels.Words.Add(token with { Text = SheetWords.OneLine(text.Trim('"')) });
        else if (Times().Match(text) is { Success: true } times) labels.Times.Add((column, Math.Clamp(int.Parse(times.Groups[1].Success ? times.Groups[1].ValueSpan : times.Groups[2].ValueSpan, CultureInfo.InvariantCulture), 1, MostTimes)));
        else if (text[0] == '(') labels.Changes.Add(token with { Text = text.Trim('(', ')').Trim() });
        else if (IsMark(text)) labels.Marks.Add(token);
        else if (text.StartsWith("riff ", StringComparison.Ordinal)) labels.NamesRiffs = true;
        else if (Ending().Match(text) is { Success: true } ending) labels.Endings.Add((column, column + text.Length, Passes(ending.Groups[1].Value)));
        else
        {
            var word = Array.Find(Stretches, s => text.StartsWith(s, StringComparison.OrdinalIgnoreCase)) ?? "vib";
            var value = text.Length > word.Length + 1 && text[word.Length] == ':' ? text[(word.Length + 1)..(word.Length + 2)] : "";
            labels.Stretches.Add(new ReadStretch(Plain(word) + value, column, word == "vib" || text.AsSpan(word.Length).IndexOfAny("-|_") >= 0 ? column + text.Length - 1 : column));
        }
    }

    private static string Plain(string word) => word.ToUpperInvariant() switch
    {
        "P.M." or "P.M" or "PM" => "palm",
        "LET RING" or "RING" or "L.R." => "ring",
        _ => word,
    };

    private static ValueList<int> Passes(string text)
    {
        var passes = new SortedSet<int>();
        foreach (var piece in text.Split(','))
        {
            if (int.TryParse(piece, NumberStyles.None, CultureInfo.InvariantCulture, out var pass) && pass is >= 1 and <= MostTimes) passes.Add(pass);
        }
        return passes.Count > 0 ? passes.ToValueList() : [1];
    }

    [GeneratedRegex(@"^([WHQESYZT])(\.{0,2})(?::(\d{1,2})(?:/(\d{1,2}))?)?$")]
    private static partial Regex Value();

    [GeneratedRegex(@"^rest(?: (\d{1,3}))?$")]
    private static partial Regex RestBars();

    [GeneratedRegex(@"^[A-G][#b♯♭]?(?:maj|min|mi|ma|m|M|dim|aug|sus|add|no|omit|alt|[Δ°øo+\-#b♯♭0-9(),])*(?:/(?:[A-G][#b♯♭]?|\d{1,2}))*(?:add\d+|sus\d?|\(.{0,8}\))?$", RegexOptions.NonBacktracking)]
    private static partial Regex Chord();

    [GeneratedRegex(@"^\|?(\d{1,2}(?:,\d{1,2})*)(?:\.|st|nd|rd)[-_. ]*\|?$", RegexOptions.NonBacktracking)]
    private static partial Regex Ending();

    [GeneratedRegex(@"^(tr|dip)\((\d{1,2}(?:\.\d{1,3})?)\)$")]
    private static partial Regex NumberedMark();

    [GeneratedRegex(@"^\(?(?:[xX](\d{1,2})|(\d{1,2})[xX])\)?$")]
    private static partial Regex Times();

    [GeneratedRegex(@"^(?::[WHQESYZ])?\.?[-_. ]*[|>]?$", RegexOptions.NonBacktracking)]
    private static partial Regex StretchEnd();
}
