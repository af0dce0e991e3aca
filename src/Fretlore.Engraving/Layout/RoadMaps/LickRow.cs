using Fretlore.Score;

namespace Fretlore.Engraving.Layout.RoadMaps;

/// <summary>The licks of a road map side by side over the bars where it begins, in as many rows as they need.</summary>
internal static class LickRow
{
    private const double Between = 2.5;

    /// <param name="pen">The part's upper row.</param>
    /// <param name="map">The road map.</param>
    /// <param name="song">The song with its riffs.</param>
    /// <param name="start">Where the stretch begins.</param>
    /// <param name="left">The system's left edge.</param>
    /// <param name="right">The system's right edge.</param>
    public static void Draw(Pen pen, RoadMap map, Song song, double start, double left, double right)
    {
        var row = new List<LickTab>();
        foreach (var lick in LickTab.Of(pen.Ink, map, song))
        {
            if (lick.Width > right - left) continue;
            if (row.Count > 0 && Width(row) + Between + lick.Width > right - left)
            {
                Draw(pen, row, start, left, right);
                row.Clear();
            }
            row.Add(lick);
        }
        if (row.Count > 0) Draw(pen, row, start, left, right);
    }

    private static double Width(List<LickTab> row) => row.Sum(l => l.Width) + Between * (row.Count - 1);

    private static void Draw(Pen pen, List<LickTab> row, double start, double left, double right)
    {
        var x = Math.Max(left, Math.Min(start, right - Width(row)));
        var bottom = Math.Min(-1, pen.Skyline.Top(x - 1, x + Width(row) + 1)) - HouseStyle.SkylineGap * 2;
        foreach (var lick in row)
        {
            lick.Draw(pen, x, bottom);
            x += lick.Width + Between;
        }
    }
}
