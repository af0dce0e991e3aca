using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Systems;

namespace Fretlore.Engraving.Layout.EndMatter;

/// <summary>The signs this song uses and what they mean, in columns after its last bar.</summary>
internal static class Legend
{
    private const double ColumnWidth = 36;
    private const double SignWidth = 8;
    private const double Size = 1.62;
    private const double LineHeight = Size * 1.25;
    private const double EntryGap = 1.1;
    private const double Tallest = 2.2;

    /// <returns>A block that stands on a page like a system; null when there is nothing to explain.</returns>
    public static EngravedSystem? Of(Ink ink, ScoreModel model, bool degrees, double left, double right, double pageWidth)
    {
        var entries = UsedSigns.Of(model, degrees);
        if (entries.Count == 0) return null;
        var pen = new Pen(ink, new Skyline(0, pageWidth, 0, 0));
        var columns = Math.Max(1, (int)((right - left) / ColumnWidth));
        var width = (right - left) / columns;
        var top = HouseStyle.WordSize;
        pen.Text("Signs in this song", left, top, HouseStyle.WordSize, Face.SerifBold);
        pen.Line(left, top + 0.8, right, top + 0.8, ink.StaffLine);
        var start = top + 1.6;
        var lines = entries.Select(e => LineWrap.Of(ink, e.Words, Face.Serif, Size, width - SignWidth - 1.5)).ToArray();
        var each = (entries.Count + columns - 1) / columns;
        var bottom = start;
        for (var column = 0; column < columns; column++)
        {
            var x = left + column * width;
            var y = start;
            for (var i = column * each; i < Math.Min(entries.Count, (column + 1) * each); i++)
            {
                var baseline = y + Tallest;
                entries[i].Draw(pen, x + SignWidth / 2 - 0.5, baseline);
                for (var line = 0; line < lines[i].Count; line++) pen.Text(lines[i][line], x + SignWidth, baseline + line * LineHeight, Size, Face.Serif);
                y = baseline + (lines[i].Count - 1) * LineHeight + EntryGap;
            }
            bottom = Math.Max(bottom, y);
        }
        var marks = pen.Take();
        return new EngravedSystem(model.Measures.Length, model.Measures.Length, 0, (y, _) => [new Group("legend", "Signs in this song", marks, y)], 0, bottom, []);
    }
}
