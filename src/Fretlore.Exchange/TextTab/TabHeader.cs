using System.Text;
using Fretlore.Exchange.Sheets;
using Fretlore.Score;

namespace Fretlore.Exchange.TextTab;

/// <summary>The lines of plain-text tab that say what the song is and how a part is tuned, each a word, a colon and a value.</summary>
internal static class TabHeader
{
    public static void Write(Song song, StringBuilder text)
    {
        var first = song.Bars[0];
        Line("Title", song.Info.Title);
        Line("Artist", song.Info.Artist);
        Line("Credits", song.Info.Credits);
        Line("Rights", song.Info.Rights);
        Line("Metre", SheetWords.Of(first.Meter));
        Line("Tempo", SheetWords.Of(HeaderText.TempoOf(song)));
        Line("Key", first.Key is { } key ? SheetWords.Of(key) : null);
        Line("Feel", first.FeelChange is { } feel && feel != Feel.Straight ? SheetWords.Of(feel) : null);
        text.Append('\n');

        void Line(string word, string? value)
        {
            if (value is not null && SheetWords.OneLine(value) is { Length: > 0 } line) text.Append(word).Append(": ").Append(line).Append('\n');
        }
    }

    public static void Write(Part part, StringBuilder text)
    {
        text.Append("Part: ").Append(SheetWords.OneLine(part.Title)).Append('\n');
        text.Append("Tuning: ").Append(part.Neck.Tuning).Append(" (low to high)\n");
        if (!part.Neck.Capo.IsOff) text.Append("Capo: ").Append(part.Neck.Capo).Append('\n');
        text.Append('\n');
    }

    /// <summary>The names of the open strings, string 1 first, all of one width; the highest in a small letter where the lowest has its name (common practice).</summary>
    public static string[] StringNames(Guitar.Tuning tuning)
    {
        var names = tuning.LowToHigh.Reverse().Select(p => p.Name.ToString()).ToArray();
        if (names[0] == names[^1]) names[0] = char.ToLowerInvariant(names[0][0]) + names[0][1..];
        var width = names.Max(n => n.Length);
        return [.. names.Select(n => n.PadRight(width))];
    }
}
