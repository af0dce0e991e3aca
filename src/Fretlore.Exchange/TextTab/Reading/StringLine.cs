namespace Fretlore.Exchange.TextTab.Reading;

/// <summary>A line of text that shows one string.</summary>
/// <param name="Line">The line.</param>
/// <param name="Label">The string's name as typed, without an octave; empty when it has none.</param>
/// <param name="Start">Where the string begins: at its first bar line, or at the first sign after the name.</param>
/// <param name="End">After the last sign of the string; what follows are words.</param>
/// <param name="Filler">The sign that stands where nothing is played.</param>
internal sealed record StringLine(TabLine Line, string Label, int Start, int End, char Filler)
{
    private const string Fillers = "-=_.·";
    private const string Signs = "0123456789|:!hpbrstvxgoHPBRSTVXO/\\~()<>[]{}^*'\"+=_.,·#% ";

    // Words that stand in the strings of some tabs.
    private static readonly string[] Inner = ["PM", "P.M.", "NH", "AH", "PH", "TP", "tr", "full", "bfull", "bFull", "let ring", "n.h."];

    /// <summary>False when it is a string only if the lines around it are.</summary>
    public bool IsSure { get; private init; }

    /// <summary>What follows the string on its line, such as <c>x4</c>.</summary>
    public string Words => Line.Text[End..].Trim();

    /// <summary>The string of a line, or null when the line shows none.</summary>
    public static StringLine? Of(TabLine line)
    {
        var text = line.Text;
        var start = 0;
        while (start < text.Length && text[start] == ' ') start++;
        var (label, body) = LabelAt(text, start);
        if (body >= text.Length) return null;
        var filler = Fillers.MaxBy(f => text.AsSpan(body).Count(f));
        var isSure = text.AsSpan(body).Count(filler) >= 3;
        if (!isSure && (label.Length == 0 || filler != '-')) return null;
        // A name without a bar line after it has to be followed by the string at once.
        if (text[body] is not ('|' or ':' or '!') && text[body] != filler && !char.IsAsciiDigit(text[body]) && text[body] is not ('[' or '(' or '<' or '/' or '\\' or 'x' or 'X')) return null;
        if ((label.Length == 0 && IsEnding(text, body)) || LabelReader.IsValues(text)) return null;
        var end = EndOf(text, body);
        var (fill, other) = (0, 0);
        for (var i = body; i < end; i++)
        {
            if (text[i] == filler || text[i] is '|') fill++;
            else if (text[i] == ' ') continue;
            else if (text[i] != '-' && !Signs.Contains(text[i], StringComparison.Ordinal)) other += 3;
            else other++;
        }
        // A bar cut short may have next to nothing on a string but its signs.
        var crowded = label.Length > 0 ? 8 : 4;
        return fill * crowded >= other && fill >= (isSure ? 3 : 2) ? new StringLine(line, label, body, end, filler) { IsSure = isSure } : null;
    }

    // "1.------|" is the line over an ending.
    private static bool IsEnding(string text, int at)
    {
        var i = at;
        while (i < text.Length && (char.IsAsciiDigit(text[i]) || text[i] == ',')) i++;
        return i > at && i < text.Length && text[i] is '.' or ')';
    }

    private static (string Label, int Body) LabelAt(string text, int at)
    {
        if (at >= text.Length || !"ABCDEFGabcdefg".Contains(text[at], StringComparison.Ordinal)) return ("", at);
        var i = at + 1;
        if (i < text.Length && text[i] is '#' or 'b') i++;
        var label = text[at..i];
        if (i < text.Length && char.IsAsciiDigit(text[i]) && i + 1 < text.Length && text[i + 1] is '|' or ' ') i++;
        while (i < text.Length && text[i] is ' ') i++;
        // "E:3" is a note value.
        if (i + 1 < text.Length && text[i] == ':' && char.IsAsciiDigit(text[i + 1])) return ("", at);
        if (i < text.Length && text[i] is '|' or ':' or '-' or '=' or '_' or '!' or '.') return (label, i);
        // "E) ---" and "E: |---" as some type it.
        if (i + 1 < text.Length && text[i] is ')' or '>') return (label, i + 1);
        return ("", at);
    }

    // Up to the last bar line or filler that no words come before.
    private static int EndOf(string text, int body)
    {
        var end = body;
        for (var i = body; i < text.Length; i++)
        {
            if (char.IsLetter(text[i]) && (i == body || !char.IsLetter(text[i - 1])) && Word(text, i) is var word && word > 1 && !Inner.Any(w => string.CompareOrdinal(text, i, w, 0, w.Length) == 0) && !IsSigns(text, i, word)) break;
            // A blank after a bar line ends the string, unless it goes on after it.
            if (text[i] == ' ' && i > body && text[i - 1] == '|' && !GoesOn(text, i)) break;
            if (text[i] != ' ') end = i + 1;
        }
        // "|x4" with nothing between.
        var bar = text.AsSpan(0, end).LastIndexOf('|');
        return bar > body && end - bar is > 2 and <= 4 && text[bar + 1] is 'x' or 'X' && text.AsSpan(bar + 2, end - bar - 2).ContainsAnyExceptInRange('0', '9') == false ? bar + 1 : end;
    }

    private static int Word(string text, int at)
    {
        var i = at;
        while (i < text.Length && char.IsLetter(text[i])) i++;
        return i - at;
    }

    // Several letters that are signs one by one, such as "pb" or "xx".
    private static bool IsSigns(string text, int at, int length)
    {
        for (var i = at; i < at + length; i++)
        {
            if (!"hpbrstvxgHPBRSTVX".Contains(text[i], StringComparison.Ordinal)) return false;
        }
        return length <= 3 || text.AsSpan(at, length).Trim("xX").IsEmpty;
    }

    private static bool GoesOn(string text, int at)
    {
        var rest = text.AsSpan(at).TrimStart();
        return rest.Length > 0 && (rest[0] is '|' or '-' || (char.IsAsciiDigit(rest[0]) && rest.Length > 1 && rest[1] == '-'));
    }
}
