using System.Globalization;
using System.Text.RegularExpressions;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.TextTab.Reading;

/// <summary>What the lines between the systems say of the song: a word, a colon and a value, and headings of sections.</summary>
internal static partial class HeaderWords
{
    private const int LongestHeading = 60;

    // Words for the parts of a song's form (trade words).
    private static readonly string[] Forms =
    [
        "intro", "verse", "chorus", "bridge", "solo", "outro", "interlude", "prechorus", "pre-chorus", "pre chorus", "postchorus", "refrain", "breakdown", "break", "ending", "end", "coda", "main riff",
        "riff", "lead", "theme", "part", "middle", "hook", "turnaround", "fill", "lick", "instrumental", "introduction", "vamp", "tag", "section",
    ];

    /// <summary>Reads "Word: value" into a song's header.</summary>
    /// <returns>False when the line is none that is known.</returns>
    public static bool Read(string line, TabHeading heading)
    {
        if (line.AsSpan().IndexOfAny(':', '=') < 0 || KeyValue().Match(line) is not { Success: true } match) return ReadBare(line.Trim(), heading);
        var (word, value) = (match.Groups[1].Value.Trim().ToLowerInvariant(), match.Groups[2].Value.Trim());
        switch (word)
        {
            case "title" or "song" or "song title" or "song name":
                heading.Title ??= value;
                return true;
            case "artist" or "band" or "by" or "performed by":
                heading.Artist ??= value;
                return true;
            case "credits" or "composer" or "written by" or "words and music" or "music by" or "music":
                heading.Credits ??= value;
                return true;
            case "rights" or "copyright":
                heading.Rights ??= value;
                return true;
            case "part":
                heading.Part = value;
                return true;
            case "tuning" or "tuned" or "tune" or "guitar tuning":
                heading.Tuning = value;
                return true;
            case "capo":
                return ReadCapo(value, heading);
            case "tempo" or "bpm" or "speed":
                return ReadTempo(value, heading);
            case "metre" or "meter" or "time" or "time signature" or "time sig" or "timing":
                heading.Metre ??= MetreOf(value);
                return MetreOf(value) is not null;
            case "key":
                heading.Key ??= KeyOf(value);
                return KeyOf(value) is not null;
            case "feel":
                heading.Feel ??= FeelOf(value);
                return FeelOf(value) is not null;
            default:
                return false;
        }
    }

    /// <summary>The name of a section when a line is its heading; null otherwise.</summary>
    public static string? SectionOf(string line)
    {
        var text = line.Trim();
        if (text.Length is 0 or > LongestHeading) return null;
        // "[A]" alone on its line is a section; with words after it, it is a chord.
        if (text[0] == '[' && text.IndexOf(']', StringComparison.Ordinal) is var close and > 1 && (close == text.Length - 1 || !LabelReader.IsChord(text[1..close]))) return Name(text[1..close]);
        var bare = text.Trim('-', '=', '*', '_', '~', ':', '.', '<', '>', '{', '}', '#', ' ');
        if (bare.Length > 2 && bare[0] == '(' && bare[^1] == ')') bare = bare[1..^1];
        var word = Array.Find(Forms, f => bare.StartsWith(f, StringComparison.OrdinalIgnoreCase) && (bare.Length == f.Length || !char.IsLetter(bare[f.Length])));
        if (word is null) return null;
        // "Verse 2", "Chorus x2", "Solo (clean)": a heading has few words, or a colon before what is said of it.
        var colon = bare.IndexOf(':', StringComparison.Ordinal);
        if (colon > 0) bare = bare[..colon].TrimEnd();
        var rest = bare[word.Length..];
        return rest.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length <= 3 ? Name(bare) : null;
    }

    /// <summary>A metre such as <c>7/8 2+2+3</c>; null for other text.</summary>
    public static Meter? MetreOf(string text)
    {
        if (MetreWords().Match(text) is not { Success: true } match) return null;
        var (count, unit) = (Number(match.Groups[1]), Number(match.Groups[2]));
        var groups = match.Groups[3].Success ? match.Groups[3].Value.Split('+').Select(g => int.Parse(g, CultureInfo.InvariantCulture)).ToValueList() : default;
        return Meter.IsValid(count, unit, groups) ? new Meter(count, unit, groups) : Meter.IsValid(count, unit) ? new Meter(count, unit) : null;
    }

    /// <summary>A tempo such as <c>Q. = 54</c>; null for other text.</summary>
    public static Tempo? TempoOf(string text)
    {
        if (TempoWords().Match(text) is not { Success: true } match) return null;
        if (!decimal.TryParse(match.Groups[3].ValueSpan, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var perMinute) || perMinute is < 5 or > 1000) return null;
        var unit = match.Groups[1].Value.ToUpperInvariant() switch { "W" => ValueBase.Whole, "H" or "HALF" => ValueBase.Half, "E" or "EIGHTH" => ValueBase.Eighth, "S" => ValueBase.Sixteenth, "Y" => ValueBase.ThirtySecond, "Z" => ValueBase.SixtyFourth, _ => ValueBase.Quarter };
        return new Tempo(new NoteValue(unit, match.Groups[2].Length), perMinute);
    }

    /// <summary>A key such as <c>D dorian</c>, <c>Am</c>, <c>F# minor</c>; null for other text.</summary>
    public static Key? KeyOf(string text)
    {
        if (KeyWords().Match(text) is not { Success: true } match) return null;
        var mode = match.Groups[2].Value.ToLowerInvariant() switch { "m" or "min" => "minor", "maj" => "major", var other => other };
        return Key.TryParse(match.Groups[1].Value, mode, out var key) && Math.Abs(key.Signature) <= 7 ? key : null;
    }

    /// <summary>A feel: <c>swing</c>, <c>swing S</c>, <c>straight</c>; null for other text.</summary>
    public static Feel? FeelOf(string text) => text.Trim().ToLowerInvariant() switch
    {
        "swing" or "swung" or "shuffle" => new Feel(ValueBase.Eighth),
        "swing s" => new Feel(ValueBase.Sixteenth),
        "straight" => Feel.Straight,
        _ => null,
    };

    /// <summary>A capo: <c>3</c>, <c>2nd fret</c>, <c>2 on 5-3</c>, <c>none</c>; null for other text.</summary>
    public static Capo? CapoOf(string text)
    {
        var plain = text.Trim().ToLowerInvariant();
        if (Capo.TryParse(plain.Replace("strings ", "", StringComparison.Ordinal).Replace("string ", "", StringComparison.Ordinal), out var capo)) return capo.Fret <= HighestCapo ? capo : null;
        if (plain.Contains("none", StringComparison.Ordinal) || plain is "no" or "-") return Capo.Off;
        var digits = new string([.. plain.SkipWhile(c => !char.IsAsciiDigit(c)).TakeWhile(char.IsAsciiDigit)]);
        return digits.Length is 1 or 2 && int.Parse(digits, CultureInfo.InvariantCulture) is >= 0 and <= HighestCapo and var fret ? fret : null;
    }

    private const int HighestCapo = 12;

    private static bool ReadCapo(string value, TabHeading heading)
    {
        if (CapoOf(value) is not { } capo) return false;
        heading.Capo = capo;
        return true;
    }

    private static bool ReadTempo(string value, TabHeading heading)
    {
        heading.Tempo ??= TempoOf(value);
        return TempoOf(value) is not null;
    }

    /// <summary>The player a heading such as "Gtr. 2" or "Bass" names; null for other lines.</summary>
    public static string? PlayerOf(string line)
    {
        if (PlayerWords().Match(line) is not { Success: true } match) return null;
        var word = match.Groups[1].Value.ToLowerInvariant() switch { "gtr" or "guitar" or "gt" => "Guitar", "bass" => "Bass", "lead" => "Lead guitar", _ => "Rhythm guitar" };
        return match.Groups[2].Success ? $"{word} {match.Groups[2].Value}" : word;
    }

    // Lines such as "Capo 2nd fret", "Standard tuning", "120 bpm".
    private static bool ReadBare(string line, TabHeading heading)
    {
        var plain = line.ToLowerInvariant();
        if (plain.Length > LongestHeading) return false;
        if (plain.StartsWith("capo ", StringComparison.Ordinal)) return ReadCapo(plain[5..], heading);
        if (plain.EndsWith("bpm", StringComparison.Ordinal) && plain.Length < 12) return ReadTempo(plain, heading);
        if (plain.EndsWith(" tuning", StringComparison.Ordinal) && TuningWords.Of(line[..^7], null) is not null) heading.Tuning = line[..^7];
        else if (plain.StartsWith("tuning ", StringComparison.Ordinal) && TuningWords.Of(line[7..], null) is not null) heading.Tuning = line[7..];
        else if (plain.StartsWith("tuned ", StringComparison.Ordinal)) heading.Tuning = line[6..];
        else return false;
        return true;
    }

    private static string Name(string text)
    {
        var words = Sheets.SheetWords.OneLine(text);
        return words.Any(char.IsLower) || words.Length < 3 ? words : words[..1] + words[1..].ToLowerInvariant();
    }

    private static int Number(Group group) => int.Parse(group.ValueSpan, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^\s*([A-Za-z][A-Za-z ]{1,20}?)\s*[:=]\s*(\S.{0,199})$", RegexOptions.NonBacktracking)]
    private static partial Regex KeyValue();

    [GeneratedRegex(@"^\s*(\d{1,2})\s*/\s*(\d{1,2})(?:\s+(\d{1,2}(?:\+\d{1,2}){1,20}))?\s*(?:time)?\s*$", RegexOptions.IgnoreCase | RegexOptions.NonBacktracking)]
    private static partial Regex MetreWords();

    [GeneratedRegex(@"^\s*(?:(W|H|Q|E|S|Y|Z|quarter|half|eighth)(\.{0,2})\s*=\s*)?(?:ca\.?|about|~)?\s*(\d{1,4}(?:\.\d{1,6})?)\s*(?:bpm)?\.?\s*$", RegexOptions.IgnoreCase | RegexOptions.NonBacktracking)]
    private static partial Regex TempoWords();

    [GeneratedRegex(@"^\W*(gtr|gt|guitar|bass|lead|rhythm)(?:\.|s)?(?: guitar)?[ .#]*(\d)?\W*$", RegexOptions.IgnoreCase | RegexOptions.NonBacktracking)]
    private static partial Regex PlayerWords();

    [GeneratedRegex(@"^\s*([A-Ga-g][#b]{0,2})\s*(m|min|maj|minor|major|ionian|dorian|phrygian|lydian|mixolydian|aeolian|locrian)?\s*$", RegexOptions.IgnoreCase | RegexOptions.NonBacktracking)]
    private static partial Regex KeyWords();
}

/// <summary>What the head of a tab says.</summary>
internal sealed class TabHeading
{
    public string? Title { get; set; }

    public string? Artist { get; set; }

    public string? Credits { get; set; }

    public string? Rights { get; set; }

    public Meter? Metre { get; set; }

    public Tempo? Tempo { get; set; }

    public Key? Key { get; set; }

    public Feel? Feel { get; set; }

    /// <summary>The tuning last said, as typed.</summary>
    public string? Tuning { get; set; }

    /// <summary>The capo last said.</summary>
    public Capo? Capo { get; set; }

    /// <summary>The part that begins, until it is taken.</summary>
    public string? Part { get; set; }
}
