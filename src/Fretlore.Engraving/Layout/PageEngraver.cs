using System.Collections.Immutable;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Breaking;
using Fretlore.Engraving.Layout.EndMatter;
using Fretlore.Engraving.Layout.Fretting;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Pages;
using Fretlore.Engraving.Layout.Reuse;
using Fretlore.Engraving.Layout.Spacing;
using Fretlore.Engraving.Layout.Systems;
using Fretlore.Engraving.Layout.Tab;
using Fretlore.Hands.Plans;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout;

/// <summary>Engraves a song: staff and tablature of the parts asked for, on pages.</summary>
/// <remarks>
/// Passes, each over the whole song: model (columns, heads, beams) → spacing (springs and rods) → system breaks → systems (places, beams' slants,
/// signs against skylines) → page breaks → pages. The result depends on nothing but its inputs. Time grows with the number of bars.
/// </remarks>
public sealed class PageEngraver(IMusicFont music, ITextMetrics texts)
{
    /// <summary>The smallest staff space, in millimetres, at which pages can still be read.</summary>
    private const double SmallestStaffSpace = 0.85;

    private const double FewerPagesStep = 0.97;
    private const int FewPages = 12;

    // Of airiness, for all of the staff's size.
    private const double Airier = 0.35;

    /// <summary>How many stretches of a long song may be drawn at once; pages are the same whatever it is.</summary>
    public int Cores { get; init; } = Environment.ProcessorCount;

    /// <returns>Pages; the staff is set smaller than asked when a bar or a system would not fit the paper otherwise.</returns>
    /// <param name="song">The song.</param>
    /// <param name="reading">Its reading.</param>
    /// <param name="options">How it is put on pages.</param>
    /// <param name="hands">Its hand plan; without one only the fingers the sheet says can be shown.</param>
    /// <param name="earlier">
    /// What the layout before left, with the same fonts: saves the time for systems that have not changed, and changes nothing else. Null where there
    /// will be no next one, to which nothing is left then.
    /// </param>
    public EngravingResult Engrave(Song song, SongReading reading, PageOptions options, SongHands? hands = null, EarlierLayout? earlier = null)
    {
        if (song.Bars.Count == 0 || song.Parts.Count == 0) return Refuse("The song has no bars to print.", "Add a section in which a part plays a riff.");
        if (options.Parts.Any(p => p < 0 || p >= song.Parts.Count)) return Refuse("A part to print is not in the song.", "Name parts of this song.");
        if (options.StaffSpace < SmallestStaffSpace) return Refuse("The staff asked for is too small to read.", $"Ask for a staff space of {SmallestStaffSpace} mm or more.");

        var ink = new Ink(music, texts);
        var model = ModelBuilder.Build(song, reading, hands, options, ink);
        var chords = new ChordRows(model, reading, ink, options);
        var degrees = new DegreeLabels(reading, ink, options.Degrees);
        var clefWidth = model.Staves.Max(s => Math.Max(s.ShowsStaff ? ink.GlyphWidth(s.Clef.CodePoint) : 0, s.ShowsTab ? TabClefWidth(ink, s) : 0));
        var pass = new SpacingPass(ink, model, chords, degrees, clefWidth);
        var spacings = model.Measures.Select(pass.Of).ToImmutableArray();
        var names = new PartNames(ink, model.Staves);

        var showsFingers = hands is not null && options.Hands.Fingers is FingersShown.Needed or FingersShown.All;
        var frames = options.ChordFrames ? new FrameRows(ink, model, reading, options.SymbolStyle, showsFingers) : null;

        var sources = new SystemSources(options, model, reading, chords);
        var unchanged = earlier?.Sources is { } before ? new UnchangedMeasures(earlier, before, sources) : null;
        var run = new SystemRun(music, texts, sources, names, unchanged, Cores);
        var drawn = ImmutableArray.CreateBuilder<DrawnSystem>();

        EngravingResult.Pages? result = null;
        var airiness = 0.0;
        for (var space = options.StaffSpace; space >= SmallestStaffSpace;)
        {
            var paper = options.Paper;
            double left = paper.SideMargin / space, margin = (paper.Width - paper.SideMargin) / space;
            var needed = spacings.Select((s, i) => s.LeastAlone + (i == 0 ? names.FirstIndent : names.Indent)).Max();
            if (margin - left < needed)
            {
                space *= Math.Min(0.98, (margin - left) / needed);
                continue;
            }
            if (Pages(space, left, margin) is var (document, white))
            {
                if (result is null || IsWorthIt(document.Pages.Count, space, result) || IsFuller(document.Pages.Count, white, space))
                {
                    (result, airiness) = (new EngravingResult.Pages(document, space), white);
                }
                if (document.Pages.Count is 1 or > FewPages || space * FewerPagesStep < options.StaffSpace * options.LeastShare) return Leaving(result);
                space *= FewerPagesStep;
                continue;
            }
            space *= 0.93;
        }
        return result is null ? Refuse("A bar, or a system with all its parts, is larger than the paper.", "Use larger paper or print fewer parts on it.") : Leaving(result);

        EngravingResult.Pages Leaving(EngravingResult.Pages pages) => earlier is null ? pages : pages with { Layout = new EarlierLayout(sources, drawn.ToImmutable()) };

        // Of as many pages, those that are filled better by more than they are set smaller: one page of three that is no longer a third empty, say.
        bool IsFuller(int pages, double white, double space) => pages == result!.Document.Pages.Count && white + Airier * (1 - space / result.StaffSpace) < airiness;

        FilledPages? Pages(double space, double left, double margin)
        {
            var width = options.Paper.Width / space;
            var systems = run.Draw([.. Systems(model, names, spacings, left, margin)], width);
            if (earlier is not null) drawn.AddRange(systems);
            return new PageAssembler(ink, options, frames, space).Assemble(
                model, [.. systems.Select(s => s.System), .. AfterTheMusic(ink, model, options, frames, left, margin, width)]);
        }
    }

    // Any music set smaller takes fewer pages, about by the square of its size; that alone is no reason.
    private static bool IsWorthIt(int pages, double space, EngravingResult.Pages before) =>
        pages < before.Document.Pages.Count * Math.Pow(space / before.StaffSpace, 2.5);

    private static IEnumerable<SystemGeometry> Systems(ScoreModel model, PartNames names, ImmutableArray<MeasureSpacing> spacings, double left, double margin)
    {
        var items = new BreakItem[spacings.Length];
        for (var i = 0; i < items.Length; i++) items[i] = spacings[i].ToBreakItem(model.Measures[i], StaysWithNext(model, i));
        var starts = SystemBreaker.Break(items, margin - left - names.FirstIndent, margin - left - names.Indent);
        for (var s = 0; s < starts.Length; s++)
        {
            var end = s + 1 < starts.Length ? starts[s + 1] : items.Length;
            yield return SystemGeometry.Of(model, spacings, starts[s], end, left + (s == 0 ? names.FirstIndent : names.Indent), margin);
        }
    }

    // Frames that are too many for the head, and the legend.
    private static IEnumerable<EngravedSystem> AfterTheMusic(Ink ink, ScoreModel model, PageOptions options, FrameRows? frames, double left, double margin, double pageWidth)
    {
        if (frames?.Rows(margin - left) is { Length: > TitleBlock.MostRows } rows)
        {
            foreach (var row in rows)
            {
                var pen = new Pen(ink, new Skyline(0, pageWidth, 0, 0));
                frames.Draw(pen, row, left, 0);
                var marks = pen.Take();
                yield return new EngravedSystem(model.Measures.Length, model.Measures.Length, 0, (y, _) => [new Group(null, null, marks, y)], 0, frames.HeightOf(row), []);
            }
        }
        if (options.Legend && Legend.Of(ink, model, options.Degrees, left, margin, pageWidth) is { } legend) yield return legend;
    }

    // The sign for two bars again stands on the bar line between them.
    private static bool StaysWithNext(ScoreModel model, int measure)
    {
        foreach (var staff in model.Staves)
        {
            var run = 0;
            while (measure - run >= 0 && model.Measures[measure - run].Parts[staff.Index].Source.Repeats == 2) run++;
            if (run % 2 == 1) return true;
        }
        return false;
    }

    private static double TabClefWidth(Ink ink, StaffPlan staff)
    {
        var (glyph, scale) = TabRow.ClefOf(ink, staff);
        return ink.GlyphWidth(glyph) * scale;
    }

    private static EngravingResult.Refused Refuse(string reason, string remedy) => new(reason, remedy);
}
