using System.Text;
using Fretlore.Exchange.Reports;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>Makes names that a sheet can hold: short ones for parts, one of its own for each section, and a section for every bar.</summary>
internal static class SheetNames
{
    // The words that no part or riff can be called, as the language has them.
    private static readonly string[] Reserved =
    [
        "pm", "let", "trem", "arm", "wah", "cresc", "dim", "bass", "drone", "top", "by", "times", "on", "off", "upbeat", "rest", "again", "pick",
        "roll", "roll-down", "roadmap", "lo", "hi", "with", "without", "as", "meter", "tempo", "key", "feel",
    ];

    public static Song Fitted(Song song, Remarks remarks)
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        return song with
        {
            Info = song.Info with { Title = SheetWords.OneLine(song.Info.Title) is { Length: > 0 } title ? title : "Untitled" },
            Parts = song.Parts.Select(p => p with { Name = Unique(IsName(p.Name) || p.Name == "bass" ? p.Name : Short(p.Title), names) }).ToValueList(),
            Sections = Sections(song, remarks),
        };
    }

    /// <summary>A name for a riff or part: a lowercase letter, then letters, digits, dots and dashes.</summary>
    public static string Short(string title)
    {
        var name = new StringBuilder();
        foreach (var c in title.ToLowerInvariant().Normalize(NormalizationForm.FormD))
        {
            if (char.IsAsciiLetterOrDigit(c)) name.Append(c);
            else if (name.Length > 0 && name[^1] != '-' && !char.IsLetter(c) && char.GetUnicodeCategory(c) != System.Globalization.UnicodeCategory.NonSpacingMark) name.Append('-');
        }
        var text = name.ToString().Trim('-');
        if (text.Length > 16) text = text[..16].TrimEnd('-');
        return IsName(text) ? text : IsName("part-" + text) ? "part-" + text : "guitar";
    }

    private static bool IsName(string text) =>
        text.Length >= 2 && char.IsAsciiLetterLower(text[0]) && text.All(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '-')
        && !Reserved.Contains(text) && !ReadsLikeMusic(text) && text.Trim('d', 'u').Length > 0;

    // Names that begin as a note does, such as d5 or x7.
    private static bool ReadsLikeMusic(string text)
    {
        var i = 0;
        if (text[i] == 'g') i++;
        if (i < text.Length && text[i] is 'd' or 'u') i++;
        if (i < text.Length && text[i] is 't' or 'x') i++;
        return i >= text.Length || char.IsAsciiDigit(text[i]) || (text[0] == 'x' && text.Skip(1).All(c => c is 'v' or 'm' or '-' or 'f' || char.IsAsciiDigit(c)));
    }

    private static string Unique(string name, HashSet<string> names)
    {
        var unique = name;
        for (var n = 2; !names.Add(unique); n++) unique = $"{name}-{n}";
        return unique;
    }

    // A section begins where no repeat is open, and every bar is in one.
    private static ValueList<Section> Sections(Song song, Remarks remarks)
    {
        var repeats = Repeat.In(song.Bars);
        var starts = new SortedDictionary<int, string>();
        foreach (var section in song.Sections.OrderBy(s => s.FirstBar))
        {
            if (repeats.Any(r => r.First < section.FirstBar && section.FirstBar < r.End))
                remarks.Add(RemarkKind.LeftOut, $"Section {section.Name} begins within a repeat.", null, section.FirstBar + 1);
            else starts.TryAdd(section.FirstBar, section.Name);
        }
        if (!starts.ContainsKey(0)) starts[0] = starts.Count == 0 ? "Song" : "Start";
        var names = new HashSet<string>(StringComparer.Ordinal);
        var list = starts.ToList();
        return list.Select((s, i) =>
        {
            var end = i + 1 < list.Count ? list[i + 1].Key : song.Bars.Count;
            var name = SheetWords.OneLine(s.Value) is { Length: > 0 } text ? text : "Section";
            var unique = name;
            for (var n = 2; !names.Add(unique); n++) unique = $"{name} {n}";
            return new Section(unique, s.Key, end - s.Key);
        }).ToValueList();
    }
}
