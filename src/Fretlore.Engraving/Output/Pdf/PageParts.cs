using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Music;

namespace Fretlore.Engraving.Output.Pdf;

/// <summary>What a piece of a page is to somebody who has it read aloud.</summary>
internal enum PartKind
{
    /// <summary>Nothing to be read: staff lines, brackets, page numbers.</summary>
    Artifact,

    /// <summary>The song's title.</summary>
    Title,

    /// <summary>A section's name.</summary>
    Heading,

    /// <summary>Words that stand over a system: tempos, chord symbols.</summary>
    Words,

    /// <summary>A bar, read as what is played in it.</summary>
    Bar,

    /// <summary>Other words: what stands under the title, frames, the legend, the rights line.</summary>
    Text,
}

/// <summary>A piece of a page that is read, or passed over, in one go.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="System">Which of the page's systems it belongs to; -1 for none.</param>
/// <param name="Spoken">What is read instead of its signs; null where nothing is.</param>
/// <param name="Marks">What is drawn.</param>
/// <param name="X">Where a bar ends and where a section's name stands, in staff spaces.</param>
internal sealed record PagePart(PartKind Kind, int System, string? Spoken, ValueList<Mark> Marks, double X = 0);

/// <summary>Divides a page into what is read, in the order it is drawn.</summary>
/// <param name="fonts">What it is drawn with.</param>
/// <param name="sections">Names of the sections that begin on the page.</param>
/// <param name="isFirst">Whether it is the first page, whose foot is read: it has the rights line.</param>
internal sealed class PageParts(FontLibrary fonts, IReadOnlySet<string> sections, bool isFirst)
{
    private readonly List<PagePart> parts = [];
    private readonly List<Mark> open = [];
    private PartKind openKind;
    private int openSystem;

    public List<PagePart> Of(DrawnPage page)
    {
        var systems = 0;
        foreach (var mark in page.Marks)
        {
            switch (mark)
            {
                case Group { Id: { } id } system when id.StartsWith("system-", StringComparison.Ordinal): AddSystem(system, systems++); break;
                case Group { Id: "title" } title: AddTitle(title); break;
                case Group { Id: { } id } foot when id.StartsWith("foot-", StringComparison.Ordinal): Add(isFirst ? PartKind.Text : PartKind.Artifact, -1, foot); break;
                default: Add(PartKind.Text, -1, mark); break;
            }
        }
        Close();
        return parts;
    }

    private void AddTitle(Group title)
    {
        var first = title.Marks.Count > 0 ? title.Marks[0] as Text : null;
        var isTitle = first is not null;
        foreach (var mark in title.InPlace)
        {
            isTitle = isTitle && mark is Text text && text.Size == first!.Size && text.Face == first.Face;
            Add(isTitle ? PartKind.Title : PartKind.Text, -1, mark);
        }
    }

    private void AddSystem(Group system, int number)
    {
        var isAfterBars = false;
        foreach (var mark in Opened(system))
        {
            if (mark is Group { Title: { } title } bar)
            {
                Close();
                parts.Add(new PagePart(PartKind.Bar, number, SpokenBar.Of(title, bar), [bar], EndOf(bar)));
                isAfterBars = true;
            }
            else if (mark is Text { Face: Face.SerifBold } text && sections.Contains(text.Value))
            {
                Close();
                parts.Add(new PagePart(PartKind.Heading, number, text.Value, [text], text.At.X));
            }
            else Add(isAfterBars ? PartKind.Words : PartKind.Artifact, number, mark);
        }
        Close();
    }

    private static IEnumerable<Mark> Opened(Group system) => system.InPlace.SelectMany(mark => mark is Group { Id: null, Title: null } row ? Opened(row) : [mark]);

    private void Add(PartKind kind, int system, Mark mark)
    {
        if (openKind != kind || openSystem != system) Close();
        (openKind, openSystem) = (kind, system);
        open.Add(mark);
    }

    private void Close()
    {
        if (open.Count == 0) return;
        var spoken = openKind == PartKind.Artifact ? null : SpokenWords.Of(open, fonts, openKind == PartKind.Words ? ", " : " ");
        // Slurs and frames' lines without a word are seen, not read.
        parts.Add(new PagePart(spoken is "" ? PartKind.Artifact : openKind, openSystem, spoken is "" ? null : spoken, open.ToValueList()));
        open.Clear();
    }

    // The bar line's right end.
    private static double EndOf(Group group)
    {
        var end = 0.0;
        foreach (var mark in group.Marks)
        {
            if (mark is Line line) end = Math.Max(end, Math.Max(line.From.X, line.To.X));
            else if (mark is Group inner) end = Math.Max(end, EndOf(inner));
        }
        return end;
    }
}
