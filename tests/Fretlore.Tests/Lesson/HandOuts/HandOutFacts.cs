using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout;
using Fretlore.Guitar;
using Fretlore.Lesson.HandOuts;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Lesson.HandOuts;

public class HandOutFacts
{
    private static readonly FontLibrary Fonts = new();

    [Fact]
    public void TuningSheet_SaysEachStringInHertz_AndHowToBeCareful()
    {
        var texts = Texts(TuningHandOut.Of(DemoSongs.Load("salt-furnace.lore"), Paper.A4, Fonts.Texts));
        // A1 is three octaves below A4, 440 Hz.
        Assert.Contains("55.00", texts);
        Assert.Contains("down a whole step", texts);
        var all = string.Join(' ', texts);
        Assert.Contains("wear eye protection", all, StringComparison.Ordinal);
        Assert.Contains("ask a guitar technician", all, StringComparison.Ordinal);
    }

    [Fact]
    public void ScaleOnTheNeck_HasEveryPlaceOfItsNotes_AndNoOther()
    {
        // A minor pentatonic in the usual tuning: the root on strings 6 and 1 at fret 5, on 5 open and at 12 (common practice).
        NoteName[] notes = [.. "A C D E G".Split(' ').Select(n => NoteName.TryParse(n, out var name) ? name : default)];
        var box = ScaleHandOut.Box(new Neck(Tuning.Standard), notes[0], notes);
        Assert.Equal([(6, 5), (5, 0), (5, 12), (4, 7), (3, 2), (3, 14), (2, 10), (1, 5)], box.Dots.Where(d => d.IsRoot).Select(d => (d.String.Value, d.Fret.Number)).OrderByDescending(d => d.Value));
        Assert.Equal(["1", "4", "5", "b3", "b7"], box.Dots.Select(d => d.Label).Distinct().Order(StringComparer.Ordinal));
        for (var number = 1; number <= 6; number++)
        {
            for (var fret = 0; fret <= 15; fret++)
            {
                var sounds = new Neck(Tuning.Standard).Sounding(new StringNumber(number), new Fret(fret)).PitchClass;
                Assert.Equal(notes.Any(n => n.PitchClass == sounds), box.Dots.Any(d => d.String.Value == number && d.Fret.Number == fret));
            }
        }
    }

    [Fact]
    public void UnderAPartialCapo_ThePicturesHaveIt_AndTheTuningSheetSaysWhatSounds()
    {
        var song = Sheets.Song("title A\ntempo Q = 90\ntuning E2 A2 D3 G3 B3 E4\ncapo 2 on 5-3\nshape lift [0 4 5 4 0 0]\nsection All\n  W #lift |\n");
        var box = Fretlore.Lesson.Diagrams.NeckBox.Of("lift", song.Shapes[0].Shape, song.Shapes[0].Neck.Capo);
        Assert.Equal(((5, 3, 2), 2), (box.Bar!.Value, box.First));
        NoteName[] notes = [.. "E F# G A B C# D".Split(' ').Select(n => NoteName.TryParse(n, out var name) ? name : default)];
        var scale = ScaleHandOut.Box(song.Parts[0].Neck, notes[0], notes);
        // String 4 is E open, and has no fret 1 and 2.
        Assert.Equal([0, 4, 5, 7, 9, 11, 12, 14], scale.Dots.Where(dot => dot.String.Value == 4).Select(dot => dot.Fret.Number));
        var words = string.Join(' ', Texts(TuningHandOut.Of(song, Paper.A4, Fonts.Texts)));
        Assert.Contains("capo at fret 2 on strings 5-3", words, StringComparison.Ordinal);
        Assert.Contains("they sound E B E A B E then", words, StringComparison.Ordinal);
    }

    [Fact]
    public void ScaleSheet_NamesTheScalesOfTheSong()
    {
        var song = DemoSongs.Load("salt-furnace.lore");
        var texts = Texts(ScaleHandOut.Of(song, SongReader.Read(song), Paper.A4, Fonts.Texts)!);
        Assert.Contains("A dorian, on A1 E2 A2 D3 G3 B3 E4", texts);
        Assert.Contains("A phrygian, on A1 E2 A2 D3 G3 B3 E4", texts);
    }

    [Fact]
    public void ShapeSheet_SaysWhatChordAShapeIsAndWhy()
    {
        var song = DemoSongs.Load("salt-furnace.lore");
        var texts = Texts(ShapeHandOut.Of(song, SongReader.Read(song), Paper.A4, Fonts.Texts)!);
        Assert.Contains("ring-a: Am9", texts);
        Assert.Contains("ring-a is Am9: Root A in the bass with a minor third, a fifth and a flat seventh; a ninth is added.", string.Join(' ', texts), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(DemoSongs.Names), MemberType = typeof(DemoSongs))]
    public void EverySheet_StaysWithinItsPaper(string name)
    {
        var song = DemoSongs.Load(name);
        var reading = SongReader.Read(song);
        foreach (var paper in PaperPreset.All.Select(p => p.Paper))
        {
            Document?[] sheets = [TuningHandOut.Of(song, paper, Fonts.Texts), ScaleHandOut.Of(song, reading, paper, Fonts.Texts), ShapeHandOut.Of(song, reading, paper, Fonts.Texts)];
            foreach (var page in sheets.OfType<Document>().SelectMany(d => d.Pages))
            {
                foreach (var text in page.Marks.OfType<Text>())
                {
                    var width = Fonts.Texts.WidthOf(text.Value, text.Face, text.Size);
                    var left = text.At.X - (text.Anchor == Anchor.Middle ? width / 2 : text.Anchor == Anchor.End ? width : 0);
                    Assert.True(left >= 0 && left + width <= paper.Width + 0.01, $"{text.Value} is {left} to {left + width} of {paper.Width}");
                    Assert.InRange(text.At.Y, 0, paper.Height);
                }
                foreach (var line in page.Marks.OfType<Line>())
                {
                    Assert.InRange(line.To.X, 0, paper.Width);
                    Assert.InRange(line.To.Y, 0, paper.Height);
                }
            }
        }
    }

    private static string[] Texts(Document document) => [.. document.Pages.SelectMany(p => p.Marks).OfType<Text>().Select(t => t.Value)];
}
