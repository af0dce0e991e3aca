using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Lesson.Diagrams;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Lesson.HandOuts;

/// <summary>The song's named shapes with what chord each is and why.</summary>
internal static class ShapeHandOut
{
    /// <returns>Null when the song names no shapes.</returns>
    public static Document? Of(Song song, SongReading reading, Paper paper, ITextMetrics texts)
    {
        if (song.Shapes.Count == 0) return null;
        var pages = new HandOutPages(song, "Shapes", paper, texts);
        pages.Title("Shapes of the song");
        pages.Paragraph("String 1, the highest, is on top, as tablature is read. Circles left of the nut are open strings, crosses strings that must not sound; the number below is the fret."
            + (song.Shapes.Any(s => s.Neck.Capo.IsPartial) ? " The thick bar is the capo, and frets count from the nut." : ""));
        var marks = new NeckMarks(5);
        foreach (var neck in song.Shapes.GroupBy(s => s.Neck))
        {
            pages.Heading($"{neck.Key.Tuning}{(neck.Key.Capo.IsOff ? "" : $", capo {neck.Key.Capo}")}");
            pages.Pictures(neck.Select(shape =>
            {
                var box = NeckBox.Of(SpokenName.OfShape(shape.Name), shape.Shape, neck.Key.Capo);
                var chord = reading.ChordOf(shape.Name);
                var title = chord is null ? shape.Name : $"{shape.Name}: {chord.Symbol}";
                return (title, marks.WidthOf(box), marks.HeightOf(box), (Func<double, double, IEnumerable<Mark>>)((x, y) => marks.Draw(box, x, y)));
            }));
            foreach (var shape in neck)
            {
                if (reading.ChordOf(shape.Name) is { } chord) pages.Paragraph($"{shape.Name} is {chord.Symbol}: {chord.Reason}{(chord.Reason.EndsWith('.') ? "" : ".")}");
            }
        }
        return pages.ToDocument();
    }
}
