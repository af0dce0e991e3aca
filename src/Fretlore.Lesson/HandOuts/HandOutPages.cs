using System.Globalization;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.HandOuts;

/// <summary>Pages of text and pictures, filled from the top down; lengths in millimetres.</summary>
internal sealed class HandOutPages(Song song, string subject, Paper paper, ITextMetrics texts)
{
    private const double Leading = 1.4;

    // Set for A4; narrower paper, such as a phone, is held nearer.
    private readonly double scale = Math.Clamp(paper.Width / 190, 0.5, 1);

    private readonly List<List<Mark>> pages = [];
    private double y = double.MaxValue;

    private double TitleSize => 7 * scale;

    private double HeadingSize => 4.6 * scale;

    private double TextSize => 3.3 * scale;

    private double FootSize => 2.6 * scale;

    private double Left => paper.SideMargin;

    public double Width => paper.Width - 2 * paper.SideMargin;

    private double Bottom => paper.Height - paper.BottomMargin - 2 * FootSize;

    /// <summary>What is printed once at the top.</summary>
    public void Title(string text)
    {
        NewPage();
        Add(new Text(text, new(paper.Width / 2, y + TitleSize * 0.8), TitleSize, Face.SerifBold, Anchor.Middle), TitleSize * 1.25);
        var by = song.Info.Artist is { Length: > 0 } artist ? $"{song.Info.Title}, {artist}" : song.Info.Title;
        Add(new Text(by, new(paper.Width / 2, y + TextSize), TextSize * 1.15, Face.Serif, Anchor.Middle), TextSize * 2.4);
    }

    public void Heading(string text)
    {
        Need(HeadingSize * 4);
        y += HeadingSize * 0.6;
        foreach (var line in Wrap(text, Face.SerifBold, HeadingSize)) Add(new Text(line, new(Left, y + HeadingSize * 0.8), HeadingSize, Face.SerifBold), HeadingSize * Leading);
    }

    public void Paragraph(string text)
    {
        foreach (var line in Wrap(text, Face.Serif, TextSize))
        {
            Need(TextSize * Leading);
            Add(new Text(line, new(Left, y + TextSize * 0.8), TextSize, Face.Serif), TextSize * Leading);
        }
        y += TextSize * 0.5;
    }

    /// <summary>Rows of cells that stand below each other; the first row is their heading.</summary>
    /// <param name="columns">Where each column begins, as a share of the width.</param>
    /// <param name="rows">The cells.</param>
    public void Table(double[] columns, IEnumerable<string[]> rows)
    {
        var isHead = true;
        foreach (var row in rows)
        {
            Need(TextSize * Leading);
            for (var i = 0; i < row.Length; i++)
            {
                if (row[i].Length == 0) continue;
                pages[^1].Add(new Text(row[i], new(Left + columns[i] * Width, y + TextSize * 0.8), TextSize, isHead ? Face.SansBold : Face.Sans));
            }
            y += TextSize * Leading;
            isHead = false;
        }
        y += TextSize * 0.5;
    }

    /// <summary>Pictures side by side, with a title above each; a row breaks where the next would not fit.</summary>
    public void Pictures(IEnumerable<(string Title, double Width, double Height, Func<double, double, IEnumerable<Mark>> Draw)> pictures)
    {
        const double Gap = 6;
        var (x, row) = (0.0, 0.0);
        foreach (var (title, width, height, draw) in pictures)
        {
            var shown = Wrap(title, Face.SansBold, TextSize, Math.Max(width, 30));
            var room = Math.Max(width, shown.Count > 0 ? shown.Max(l => texts.WidthOf(l, Face.SansBold, TextSize)) : 0);
            var tall = shown.Count * TextSize * Leading + height;
            if (x > 0 && x + room > Width) (x, y, row) = (0, y + row + Gap, 0);
            if (x == 0) Need(tall);
            for (var i = 0; i < shown.Count; i++) pages[^1].Add(new Text(shown[i], new(Left + x, y + TextSize * (0.8 + i * Leading)), TextSize, Face.SansBold));
            pages[^1].AddRange(draw(Left + x, y + shown.Count * TextSize * Leading));
            (x, row) = (x + room + Gap, Math.Max(row, tall));
        }
        y += row + Gap;
    }

    public Document ToDocument()
    {
        var drawn = pages.Select((marks, i) => new DrawnPage(paper.Width, paper.Height, 1, marks.Concat(Foot(i)).ToValueList()));
        return new Document(song.Info.Title, song.Info.Artist, subject, drawn.ToValueList(), []) { Language = song.Info.Language };
    }

    private IEnumerable<Mark> Foot(int page)
    {
        var foot = paper.Height - paper.BottomMargin;
        if (song.Info.Rights is { Length: > 0 } rights)
        {
            var line = Wrap(rights, Face.Serif, FootSize, Width * 0.85);
            yield return new Text(line[0] + (line.Count > 1 ? " …" : ""), new(paper.Width / 2, foot), FootSize, Face.Serif, Anchor.Middle);
        }
        if (pages.Count > 1) yield return new Text((page + 1).ToString(CultureInfo.InvariantCulture), new(paper.Width - paper.SideMargin, foot), FootSize, Face.Serif, Anchor.End);
    }

    private void Add(Mark mark, double height)
    {
        pages[^1].Add(mark);
        y += height;
    }

    private void Need(double height)
    {
        if (pages.Count == 0 || y + height > Bottom) NewPage();
    }

    private void NewPage()
    {
        pages.Add([]);
        y = paper.TopMargin;
    }

    private List<string> Wrap(string text, Face face, double size, double width = 0)
    {
        if (width <= 0) width = Width;
        var lines = new List<string>();
        foreach (var word in text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        {
            if (lines.Count > 0 && texts.WidthOf(lines[^1] + " " + word, face, size) <= width) lines[^1] += " " + word;
            else lines.Add(word);
        }
        return lines;
    }
}
