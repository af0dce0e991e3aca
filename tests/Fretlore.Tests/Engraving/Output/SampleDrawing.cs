using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;

namespace Fretlore.Tests.Engraving.Output;

/// <summary>Drawings made by hand, with every kind of mark.</summary>
internal static class SampleDrawing
{
    /// <summary>A staff with one note over a string line with one fret number.</summary>
    public static Document Small() => new("Ash & Ember", "The Quiet Nines", "Small drawing",
    [
        new DrawnPage(20, 10, 1.75,
        [
            new Group("bar-1", "Bar 1",
            [
                new Line(new Point(1, 2), new Point(19, 2), 0.13),
                new Line(new Point(1, 3), new Point(19, 3), 0.13),
                new Glyph(Smufl.NoteheadBlack, new Point(4, 2.5)),
                new Line(new Point(5.12, 2.332), new Point(5.12, -1), 0.12),
                new Glyph(Smufl.NoteheadBlack, new Point(8, 2.5), 0.66),
                new Fill(new Box(3.9, 6.4, 5.2, 7.6)),
                new Polygon([new Point(10, 4), new Point(12, 3.5), new Point(12, 4), new Point(10, 4.5)]),
                new Curve(new Point(13, 5), new Point(14, 5), new Point(15, 4), new Point(15, 3), 0.16),
                new Slur(new Point(4, 8), new Point(5, 9), new Point(7, 9), new Point(8, 8), 0.1, 0.22),
                new Line(new Point(9, 8), new Point(14, 8), 0.16, LineStyle.Dashed),
                new Line(new Point(9, 9), new Point(14, 9), 0.16, LineStyle.Dotted),
            ]),
        ]),
    ], []);

    /// <summary>A whole page: title block, staff and strings, and rows of the signs we draw.</summary>
    public static Document Page()
    {
        var marks = new List<Mark>
        {
            new Text("Ash & Ember – «Größe» fi ffl", new Point(60, 9), 4.2, Face.SerifBold, Anchor.Middle),
            new Text("words and music by The Quiet Nines", new Point(115, 12), 1.9, Face.SerifItalic, Anchor.End),
            new Text("Tuning: C G C F A D, capo 2", new Point(5, 15), 1.9, Face.Serif),
            new Text("B♭m7(♯9)/E♭", new Point(12, 18.5), 2.2, Face.SansBold),
            new Text("Verse 1", new Point(5, 18.5), 2.2, Face.SerifBold),
        };
        for (var line = 0; line < 5; line++) marks.Add(new Line(new Point(5, 22 + line), new Point(115, 22 + line), 0.13));
        for (var line = 0; line < 6; line++) marks.Add(new Line(new Point(5, 32 + 1.5 * line), new Point(115, 32 + 1.5 * line), 0.13));
        marks.Add(new Glyph(Smufl.GClef8vb, new Point(5.7, 25)));
        marks.Add(new Glyph(Smufl.SixStringTabClef, new Point(5.7, 35.75)));
        marks.Add(new Glyph(Smufl.AccidentalSharp, new Point(9, 22)));
        marks.Add(new Glyph(Smufl.TimeSig6, new Point(10.8, 23)));
        marks.Add(new Glyph(Smufl.TimeSig8, new Point(10.8, 25)));
        for (var i = 0; i < 12; i++) marks.Add(Note(i));
        marks.Add(new Slur(new Point(15.5, 27.5), new Point(18, 29), new Point(22, 29), new Point(24.5, 27.5), 0.1, 0.22));
        marks.Add(new Polygon([new Point(16.6, 18.6), new Point(33.9, 18.1), new Point(33.9, 18.6), new Point(16.6, 19.1)]));
        marks.Add(new Curve(new Point(96, 34), new Point(98, 34), new Point(99, 32), new Point(99, 29.5), 0.16));
        marks.Add(new Polygon([new Point(98.6, 29.5), new Point(99.4, 29.5), new Point(99, 28.6)]));
        marks.Add(new Text("P.M.", new Point(15, 42.6), 1.7, Face.SerifItalic));
        marks.Add(new Line(new Point(19, 42.1), new Point(50, 42.1), 0.13, LineStyle.Dashed));
        marks.Add(new Line(new Point(60, 42.1), new Point(90, 42.1), 0.16, LineStyle.Dotted));
        marks.Add(new Fill(new Box(95, 41, 110, 43), 0.85));
        var codes = SmuflNames.CodePoints().Values.Order().ToArray();
        for (var i = 0; i < codes.Length; i++)
        {
            var at = new Point(6 + i % 23 * 4.8, 52 + i / 23 * 8.2);
            marks.Add(new Glyph(codes[i], at, 0.8));
            marks.Add(new Text($"{codes[i]:X4}", new Point(at.X, at.Y + 3.9), 0.9, Face.Sans));
        }

        return new Document("Ash & Ember", "The Quiet Nines", "Full transcription", [new DrawnPage(120, 169.714, 1.75, [.. marks])], [new Bookmark("Verse 1", 0, new Point(5, 17))]);
    }

    private static Group Note(int index)
    {
        var x = 15 + index * 8.0;
        var y = 32 + index % 6 * 1.5;
        var fret = (index * 5 % 25).ToString(System.Globalization.CultureInfo.InvariantCulture);
        return new Group($"note-{index}", $"fret {fret}",
        [
            new Glyph(Smufl.NoteheadBlack, new Point(x, 25.5 - index % 4 * 0.5)),
            new Line(new Point(x + 1.12, 25.3 - index % 4 * 0.5), new Point(x + 1.12, 18.5), 0.12),
            new Fill(new Box(x - 0.2, y - 0.8, x + 1.5, y + 0.8)),
            new Text(fret, new Point(x + 0.6, y + 0.6), 1.8, Face.SansBold, Anchor.Middle),
        ]);
    }
}
