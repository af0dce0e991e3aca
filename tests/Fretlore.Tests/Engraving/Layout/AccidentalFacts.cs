using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Staff;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Tests.Engraving.Layout;

public class AccidentalFacts
{
    private readonly AccidentalMemory memory = new();

    [Fact]
    public void Accidental_HoldsToTheBarLine_ForItsOwnOctave()
    {
        memory.StartBar(0);
        Assert.Equal(1, Print("F#4"));
        Assert.Null(Print("F#4"));
        Assert.Equal(1, Print("F#5"));
        Assert.Equal(0, Print("F4"));
        memory.StartBar(0);
        Assert.Null(Print("F4"));
        Assert.Equal(1, Print("F#4"));
    }

    [Fact]
    public void KeySignature_IsUnderstood_AndCancelledByNaturals()
    {
        memory.StartBar(3); // A major
        Assert.Null(Print("C#4"));
        Assert.Equal(0, Print("C4"));
        Assert.Equal(1, Print("C#4"));
        memory.StartBar(-2); // B flat major
        Assert.Null(Print("Eb4"));
        Assert.Equal(0, Print("E4"));
    }

    [Fact]
    public void TiedNote_NeedsNoAccidental_AndSaysNothingAboutTheNextOne()
    {
        memory.StartBar(0);
        Assert.Equal(1, Print("G#3"));
        memory.StartBar(0);
        Assert.Null(memory.Print(Parse("G#3"), tied: true));
        Assert.Equal(1, Print("G#3"));
    }

    [Fact]
    public void AccidentalsOfAnyChord_TouchNeitherEachOtherNorTheHeads()
    {
        var fonts = new FontLibrary();
        var ink = new Ink(fonts.Music, fonts.Texts);
        var shapes = new ChordShapes(ink);
        for (var mask = 1; mask < 512; mask++)
        {
            var heads = Enumerable.Range(0, 9).Where(i => (mask >> i & 1) == 1)
                .Select(i => new Head(new Note { String = new(1), Fret = new(0), Sounding = default }, i - 1, HeadShape.Black, i % 3 == 0 ? -1 : i % 3 == 1 ? 1 : 0))
                .ToArray();
            var shape = shapes.Of([.. heads], mask % 2 == 0 ? StemSide.Up : StemSide.Down, 1, 0, false);
            var boxes = new List<Box>();
            for (var i = 0; i < heads.Length; i++)
            {
                boxes.Add(ink.Glyph(Smufl.NoteheadBlack, shape.HeadX[i], heads[i].Y));
                boxes.Add(ink.Glyph(Signs.AccidentalOf(heads[i].Accidental!.Value), shape.AccidentalX[i], heads[i].Y));
            }
            boxes.AddRange(shape.Dots.Select(d => ink.Glyph(Smufl.AugmentationDot, d.X, 4 - d.Position / 2.0)));
            for (var a = 0; a < boxes.Count; a++)
            {
                for (var b = a + 1; b < boxes.Count; b++)
                {
                    // Heads a second apart share the stem's width.
                    Assert.False(InkBoxes.Overlap(boxes[a], boxes[b], 0.15), $"mask {mask}: {boxes[a]} and {boxes[b]}");
                }
            }
        }
    }

    private int? Print(string pitch) => memory.Print(Parse(pitch), tied: false);

    private static Pitch Parse(string text) => Pitch.TryParse(text, out var pitch) ? pitch : throw new ArgumentException(text);
}
