using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Breaking;
using Fretlore.Engraving.Layout.EndMatter;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Systems;
using Fretlore.Music;

namespace Fretlore.Engraving.Layout.Pages;

/// <summary>Puts systems on pages, with title, page numbers and rights line.</summary>
internal sealed class PageAssembler(Ink ink, PageOptions options, FrameRows? frames, double staffSpace)
{
    private const double FootSize = 1.55;

    private readonly double width = options.Paper.Width / staffSpace;
    private readonly double height = options.Paper.Height / staffSpace;
    private readonly double top = options.Paper.TopMargin / staffSpace;
    private readonly double left = options.Paper.SideMargin / staffSpace;

    private double Right => width - left;

    // The foot line stands on the bottom margin.
    private double Foot => height - options.Paper.BottomMargin / staffSpace;

    /// <returns>The pages; null when a system is higher than a page.</returns>
    public Document? Assemble(ScoreModel model, ImmutableArray<EngravedSystem> systems)
    {
        var titlePen = new Pen(ink, new Skyline(0, width, 0, 0));
        var musicTop = new TitleBlock(ink, frames, left, Right).Draw(titlePen, model, options.Subject, top);
        double bottom = Foot - FootSize * 2.4, room = bottom - top;
        var heights = systems.Select(s => s.Height).ToArray();
        if (PageBreaker.Break(heights, bottom - musicTop, room) is not { } starts) return null;

        var info = model.Song.Info;
        var pages = ImmutableArray.CreateBuilder<DrawnPage>();
        var bookmarks = ImmutableArray.CreateBuilder<Bookmark>();
        for (var page = 0; page < starts.Length; page++)
        {
            var end = page + 1 < starts.Length ? starts[page + 1] : systems.Length;
            var marks = new List<Mark>();
            if (page == 0) marks.Add(new Group("title", null, titlePen.Take()));
            var y = page == 0 ? musicTop : top;
            var gap = PageBreaker.GapOf(heights.AsSpan()[starts[page]..end], bottom - y, page + 1 == starts.Length);
            for (var s = starts[page]; s < end; s++)
            {
                var system = systems[s];
                marks.Add(system.First == system.End ? new Group(null, null, system.Marks.Moved(0, y - system.Top)) : new Group("system-" + (s + 1).ToString(CultureInfo.InvariantCulture), null, system.Marks.Moved(0, y - system.Top)));
                foreach (var section in system.Sections) bookmarks.Add(new Bookmark(section.Name, page, new Point(section.X, y)));
                y += system.Height + gap;
            }
            marks.Add(FootOf(page, starts.Length, info.Title, info.Rights));
            pages.Add(new DrawnPage(width, height, staffSpace, marks.ToValueList()));
        }
        return new Document(info.Title, info.Artist, options.Subject, new(pages.ToImmutable()), new(bookmarks.ToImmutable()));
    }

    private Group FootOf(int page, int pages, string title, string? rights)
    {
        var pen = new Pen(ink, new Skyline(0, width, 0, 0));
        if (pages > 1) pen.Text((page + 1).ToString(CultureInfo.InvariantCulture), Right, Foot, FootSize, Face.Serif, Anchor.End);
        if (page > 0)
        {
            var lines = LineWrap.Of(ink, title, Face.SerifItalic, FootSize, (Right - left) * 0.7);
            if (lines.Count > 0) pen.Text(lines.Count > 1 ? lines[0] + " \u2026" : lines[0], left, Foot, FootSize, Face.SerifItalic);
        }
        else if (rights is { Length: > 0 })
        {
            var size = FootSize;
            var wide = ink.TextWidth(rights, Face.Serif, size);
            if (wide > (Right - left) * 0.9) size *= (Right - left) * 0.9 / wide;
            pen.Text(rights, (left + Right) / 2, Foot, size, Face.Serif, Anchor.Middle);
        }
        return new Group("foot-" + (page + 1).ToString(CultureInfo.InvariantCulture), null, pen.Take());
    }
}
