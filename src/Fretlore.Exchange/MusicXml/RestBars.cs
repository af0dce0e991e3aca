using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>Bars of rest that can be drawn as one.</summary>
internal static class RestBars
{
    /// <summary>How many bars of rest begin at a bar in all parts, with nothing to mark within them; 0 when it continues such a stretch.</summary>
    /// <remarks>Only where all parts rest: a reader of the whole score would otherwise draw one part's bars as one above bars that another plays.</remarks>
    public static int From(Song song, int bar)
    {
        if (bar > 0 && Rests(song, bar - 1) && Continues(song, bar)) return 0;
        var end = bar;
        while (end < song.Bars.Count && Rests(song, end) && (end == bar || Continues(song, end))) end++;
        return end - bar;
    }

    private static bool Rests(Song song, int bar) => song.Parts.All(p => p.Bars[bar].IsRest && p.Bars[bar].RoadMap is null);

    private static bool Continues(Song song, int bar)
    {
        var (now, before) = (song.Bars[bar], song.Bars[bar - 1]);
        return Rests(song, bar) && now.Meter == before.Meter && now.Key == before.Key && now.Length == before.Length
            && now.Tempos.Count == 0 && now.FeelChange is null && !now.StartsRepeat && !now.StartsEnding
            && before.RepeatCount == 0 && !before.EndsEnding && before.EndLine == BarLine.Single
            && song.Parts.All(p => p.Bars[bar].Neck == p.Bars[bar - 1].Neck)
            && song.Sections.All(s => s.FirstBar != bar);
    }
}
