using Fretlore.Music;

namespace Fretlore.Tests.Music;

public class PitchFacts
{
    [Theory]
    [InlineData("A4", 69)]
    [InlineData("C4", 60)]
    [InlineData("B#3", 60)]
    [InlineData("Cb4", 59)]
    [InlineData("E2", 40)]
    public void Midi_OfASpelledPitch_CountsFromItsLetterAndOctave(string text, int midi)
    {
        Assert.True(Pitch.TryParse(text, out var pitch));
        Assert.Equal(midi, pitch.Midi);
        Assert.Equal(text, pitch.ToString());
        Assert.Equal(pitch, pitch.Height.Spell(pitch.Name));
    }

    [Theory]
    [InlineData("D dorian", 0)]
    [InlineData("A major", 3)]
    [InlineData("E minor", 1)]
    [InlineData("G mixolydian", 0)]
    [InlineData("F lydian", 0)]
    [InlineData("Eb minor", -6)]
    public void Signature_OfAMode_IsThatOfItsParentMajorScale(string text, int sharps)
    {
        var words = text.Split(' ');
        Assert.True(Key.TryParse(words[0], words[1], out var key));
        Assert.Equal(sharps, key.Signature);
        Assert.Equal(text, key.ToString());
    }

    [Fact]
    public void Notes_OfAModeStartAtItsTonicInLetterOrder()
    {
        Assert.True(Key.TryParse("F#", "dorian", out var key));
        Assert.Equal("F# G# A B C# D# E", string.Join(' ', key.Notes));
    }

    [Fact]
    public void FromFifths_IsTheInverseOfFifths()
    {
        for (var fifths = -15; fifths <= 19; fifths++) Assert.Equal(fifths, NoteName.FromFifths(fifths).Fifths);
    }

    [Theory]
    [InlineData("A", "C", "b3")]
    [InlineData("C", "F#", "#4")]
    [InlineData("B", "A", "b7")]
    [InlineData("E", "E", "1")]
    [InlineData("Gb", "F", "7")]
    public void Degree_OfANameAboveARoot_SaysLetterAndAlteration(string root, string note, string degree)
    {
        Assert.True(NoteName.TryParse(root, out var low));
        Assert.True(NoteName.TryParse(note, out var high));
        Assert.Equal(degree, Interval.Between(low, high).ToDegree());
        Assert.Equal(high, low.Transpose(Interval.Between(low, high)));
    }
}
