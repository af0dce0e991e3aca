using System.Collections.Immutable;
using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Licks;

/// <summary>A lick's versions one after another as a song of its own: what is printed on its card.</summary>
internal static class LickCardSong
{
    /// <param name="song">The song the lick comes from.</param>
    /// <param name="title">The card's title.</param>
    /// <param name="why">Why the lick matters; whole sentences.</param>
    /// <param name="tempo">How fast it is played in the song.</param>
    /// <param name="versions">As played, then the others.</param>
    public static Song Of(Song song, string title, string why, Tempo tempo, ImmutableArray<LickVersion> versions)
    {
        var bars = new List<Bar>();
        var content = new List<PartBar>();
        var sections = new List<Section>();
        var notes = 0;
        foreach (var version in versions)
        {
            var lick = LickCard.Numbered(version.Lick, notes);
            notes += lick.Content.Sum(bar => bar.Notes.Count());
            sections.Add(new Section(version.Title, bars.Count, lick.Bars.Count));
            var first = bars.Count;
            bars.AddRange(lick.Bars);
            content.AddRange(lick.Content);
            bars[^1] = bars[^1] with { EndLine = BarLine.Final };
            var words = first == 0 && why.Length > 0 ? $"{why} {Hand(version.Hand)}" : Hand(version.Hand);
            content[first] = WithWords(content[first], version.Fingers.Length == 0 ? words : $"{words} {version.Fingers}.");
        }
        bars[0] = bars[0] with { Tempos = bars[0].Tempos.Where(mark => !mark.At.IsZero).Prepend(new TempoMark(Beats.Zero, tempo)).ToValueList() };
        return new Song
        {
            Info = song.Info with { Title = $"{title} (from {song.Info.Title})" },
            Bars = bars.Select((bar, i) => bar with { Number = i + 1, Key = i == 0 ? bar.Key : null, FeelChange = i == 0 ? bar.FeelChange : null }).ToValueList(),
            Parts = [new Part { Name = "lick", Title = "Lick", Neck = versions[0].Lick.Neck, Bars = content.ToValueList() }],
            Sections = sections.ToValueList(),
            Shapes = song.Shapes,
            NoteCount = notes,
        };
    }

    private static string Hand(HandLoad load)
    {
        var difficulty = load.Difficulty == Difficulty.None ? "Open strings only" : $"{load.Difficulty} for the fretting hand";
        return load.Reasons.IsDefaultOrEmpty || load.Difficulty < Difficulty.Moderate ? $"{difficulty}." : $"{difficulty}: {load.Reasons[0]}.";
    }

    private static PartBar WithWords(PartBar bar, string words)
    {
        if (bar.Strands.Count == 0 || bar.Strands[0].Events.Count == 0) return bar;
        var strand = bar.Strands[0];
        var first = strand.Events[0] with { Words = words };
        return bar with { Strands = bar.Strands.Items.SetItem(0, strand with { Events = strand.Events.Items.SetItem(0, first).ToValueList() }).ToValueList() };
    }
}
