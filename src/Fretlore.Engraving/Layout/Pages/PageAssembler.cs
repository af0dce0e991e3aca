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

/// <summary>Pages with how airy they are.</summary>
/// <param name="Document">The pages.</param>
/// <param name="Airiness">The mean over all but the last of the square of the share of their height that systems don't need.</param>
internal sealed record FilledPages(Document Document, double Airiness);

/// <summary>Puts systems on pages, with title, page numbers and rights line.</summary>
internal sealed class PageAssembler(Ink ink, PageOptions options, FrameRows? frames, double staffSpace)
{
    private const double FootSize = 1.55;
    private const double RightsPitch = FootSize * 1.25;

    private readonly double width = options.Paper.Width / staffSpace;
    private readonly double height = options.Paper.Height / staffSpace;
    private readonly double top = options.Paper.TopMargin / staffSpace;
    private readonly double left = options.Paper.SideMargin / staffSpace;

    private double Right => width - left;

    // The foot line stands on the bottom margin.
    private double Foot => height - options.Paper.BottomMargin / staffSpace;

    /// <returns>The pages; null when a system is higher than a page.</returns>
    public FilledPages? Assemble(ScoreModel model, ImmutableArray<EngravedSystem> systems)
    {
        var titlePen = new Pen(ink, new Skyline(0, width, 0, 0));
        var musicTop = new TitleBlock(ink, frames, left, Right).Draw(titlePen, model, options.Subject, top);
        var rights = LineWrap.Of(ink, model.Song.Info.Rights ?? "", Face.Serif, FootSize, (Right - left) * 0.85);
        double bottom = Foot - FootSize * 2.4 - Math.Max(0, rights.Count - 1) * RightsPitch, room = bottom - top;
        var heights = systems.Select(s => s.Height).ToArray();
        if (musicTop > bottom + HouseStyle.SystemGap) return null;
        // A long head takes a page of its own where no system fits below it.
        var quietEnds = systems.Select(s => IsQuietEnd(model, s.End)).ToArray();
        var broken = PageBreaker.Break(heights, bottom - musicTop, room, quietEnds);
        var isHeadAlone = broken is null;
        broken ??= PageBreaker.Break(heights, room, room, quietEnds);
        if (broken is not { } starts) return null;

        var info = model.Song.Info;
        var pages = ImmutableArray.CreateBuilder<DrawnPage>();
        var bookmarks = ImmutableArray.CreateBuilder<Bookmark>();
        if (isHeadAlone)
        {
            var down = options.Paper.IsFrame ? Math.Max(0, (bottom - musicTop) / 2) : 0;
            pages.Add(new DrawnPage(width, height, staffSpace, [new Group("title", null, titlePen.Take(), down), FootOf(0, starts.Length + 1, info.Title, rights)]));
        }
        var before = pages.Count;
        for (var page = 0; page < starts.Length; page++)
        {
            var end = page + 1 < starts.Length ? starts[page + 1] : systems.Length;
            var marks = new List<Mark>();
            var hasHead = page == 0 && !isHeadAlone;
            if (hasHead) marks.Add(new Group("title", null, titlePen.Take()));
            var y = hasHead ? musicTop : top;
            var (gap, wider) = PageBreaker.WhiteOf(
                heights.AsSpan()[starts[page]..end], systems[starts[page]..end].Sum(s => s.PartGaps), bottom - y, page + 1 == starts.Length);
            if (options.Paper.IsFrame)
            {
                (var above, gap) = PageBreaker.FrameWhiteOf(heights.AsSpan()[starts[page]..end], bottom - y);
                (y, wider) = (y + above, 0);
            }
            for (var s = starts[page]; s < end; s++)
            {
                var system = systems[s];
                var id = system.First == system.End ? null : "system-" + (s + 1).ToString(CultureInfo.InvariantCulture);
                marks.Add(new Group(id, null, system.MarksAt(y - system.Top, wider)));
                foreach (var section in system.Sections) bookmarks.Add(new Bookmark(section.Name, page + before, new Point(section.X, y)));
                y += system.Height + system.PartGaps * wider + gap;
            }
            marks.Add(FootOf(page + before, starts.Length + before, info.Title, rights));
            pages.Add(new DrawnPage(width, height, staffSpace, marks.ToValueList()));
        }
        var document = new Document(info.Title, info.Artist, options.Subject, new(pages.ToImmutable()), new(bookmarks.ToImmutable())) { Language = info.Language };
        return new FilledPages(document, PageBreaker.AirinessOf(heights, starts.AsSpan(), isHeadAlone ? room : bottom - musicTop, room));
    }

    // Where hands are free to turn the page, or the eye expects a break: before a section, or where the last thing in every part is a rest.
    private static bool IsQuietEnd(ScoreModel model, int end) => end >= model.Measures.Length || model.Measures[end].Section is not null
        || model.Measures[end - 1].Parts.All(part => part.IsRest || part.Voices.All(voice => voice.Slots.Length > 0 && voice.Slots[^1].IsRest));

    private Group FootOf(int page, int pages, string title, List<string> rights)
    {
        var pen = new Pen(ink, new Skyline(0, 0, 0, 0));
        if (pages > 1) pen.Text((page + 1).ToString(CultureInfo.InvariantCulture), Right, Foot, FootSize, Face.Serif, Anchor.End);
        if (page > 0)
        {
            var lines = LineWrap.Of(ink, title, Face.SerifItalic, FootSize, (Right - left) * 0.7);
            if (lines.Count > 0) pen.Text(lines.Count > 1 ? lines[0] + " \u2026" : lines[0], left, Foot, FootSize, Face.SerifItalic);
        }
        else
        {
            for (var i = 0; i < rights.Count; i++)
            {
                pen.Text(rights[i], (left + Right) / 2, Foot - (rights.Count - 1 - i) * RightsPitch, FootSize, Face.Serif, Anchor.Middle);
            }
        }
        return new Group("foot-" + (page + 1).ToString(CultureInfo.InvariantCulture), null, pen.Take());
    }
}
