using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Lesson.Kit;

/// <summary>A song's riffs one after another as a song of its own, each with its name and where it comes, for a page to practise from.</summary>
internal static class RiffSheet
{
    /// <returns>The riffs as a song whose sections are the riffs; null when the song has none.</returns>
    public static (Song Song, SongReading Reading)? Of(Song song, SongReading reading)
    {
        if (song.Riffs.Count == 0) return null;
        var necks = song.Riffs.Select(r => r.Neck).Distinct().ToArray();
        var bars = new List<Bar>();
        var sections = new List<Section>();
        var contents = necks.Select(_ => new List<PartBar>()).ToArray();
        foreach (var riff in song.Riffs)
        {
            sections.Add(new Section(riff.Name, bars.Count, riff.Bars.Count));
            for (var bar = 0; bar < riff.Bars.Count; bar++)
            {
                bars.Add(bar + 1 == riff.Bars.Count ? riff.Bars[bar] with { EndLine = BarLine.Final } : riff.Bars[bar]);
                var content = bar == 0 ? WithWords(riff.Content[0], Whereabouts(song, riff)) : riff.Content[bar];
                for (var n = 0; n < necks.Length; n++) contents[n].Add(necks[n] == riff.Neck ? content : new PartBar(necks[n], []));
            }
        }
        var sheet = song with
        {
            Bars = bars.ToValueList(),
            Sections = sections.ToValueList(),
            Parts = necks.Select((neck, n) => PartOf(neck, n, contents[n], necks.Length)).ToValueList(),
            RiffUses = [],
            RoadMapUses = [],
            Lesson = null,
            Recordings = [],
        };
        var own = SongReader.Read(sheet);
        return (sheet, reading with { Parts = own.Parts, Keys = own.Keys });
    }

    private static Part PartOf(Neck neck, int index, List<PartBar> content, int count) => new()
    {
        Name = "riffs" + (index + 1),
        Title = count == 1 ? "Riffs" : $"Riffs {index + 1}",
        Neck = neck,
        Bars = content.ToValueList(),
    };

    private static PartBar WithWords(PartBar bar, string words)
    {
        if (bar.Strands.Count == 0 || bar.Strands[0].Events.Count == 0) return bar;
        var strand = bar.Strands[0];
        var first = strand.Events[0];
        first = first with { Words = first.Words is { Length: > 0 } own ? $"{words}. {own}" : words };
        return bar with { Strands = bar.Strands.Items.SetItem(0, strand with { Events = strand.Events.Items.SetItem(0, first).ToValueList() }).ToValueList() };
    }

    // For example "Rhythm guitar: Intro x3, Interlude".
    private static string Whereabouts(Song song, Riff riff)
    {
        var places = new List<string>();
        foreach (var part in song.RiffUses.Where(u => u.Riff == riff.Name).GroupBy(u => u.Part))
        {
            var sections = part.GroupBy(use => SectionOf(song, use.FirstBar)).Select(s => s.Count() > 1 ? $"{s.Key} \u00D7{s.Count()}" : s.Key);
            places.Add($"{song.Parts[part.Key].Title}: {string.Join(", ", sections)}");
        }
        var text = places.Count == 0 ? "Not in the song as it stands" : string.Join("; ", places);
        return riff.VariationOf is { } model ? $"{text} (varies {model})" : text;
    }

    private static string SectionOf(Song song, int bar)
    {
        foreach (var section in song.Sections)
        {
            if (bar >= section.FirstBar && bar < section.FirstBar + section.BarCount) return section.Name;
        }
        return $"bar {song.Bars[bar].Number}";
    }
}
