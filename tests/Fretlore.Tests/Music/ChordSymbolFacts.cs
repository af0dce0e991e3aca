using CsCheck;
using Fretlore.Music;
using Fretlore.Music.Chords;

namespace Fretlore.Tests.Music;

/// <summary>Chord symbols as lead sheets write them.</summary>
public sealed class ChordSymbolFacts
{
    [Theory]
    [InlineData("C", "C E G", "0 4")]
    [InlineData("Am", "A C E", "0 3")]
    [InlineData("A-", "A C E", "0 3")]
    [InlineData("F#m11", "F# A C# E G# B", "0 3 5 10")]
    [InlineData("Bbmaj7#11", "Bb D F A E", "0 4 6 11")]
    [InlineData("E5", "E B", "0 7")]
    [InlineData("C7", "C E G Bb", "0 4 10")]
    [InlineData("C13", "C E G Bb D A", "0 4 9 10")]
    [InlineData("Cmaj9", "C E G B D", "0 2 4 11")]
    [InlineData("CM7", "C E G B", "0 4 11")]
    [InlineData("C△", "C E G B", "0 4 11")]
    [InlineData("Cm(maj7)", "C Eb G B", "0 3 11")]
    [InlineData("CmMaj7", "C Eb G B", "0 3 11")]
    [InlineData("Bm7b5", "B D F A", "0 3 6 10")]
    [InlineData("Bø7", "B D F A", "0 3 6 10")]
    [InlineData("Bdim7", "B D F Ab", "0 3 6 9")]
    [InlineData("B°", "B D F", "0 3 6")]
    [InlineData("C+7", "C E G# Bb", "0 4 8 10")]
    [InlineData("Caug", "C E G#", "0 4 8")]
    [InlineData("Dsus4", "D G A", "0 5")]
    [InlineData("Dsus", "D G A", "0 5")]
    [InlineData("D9sus4", "D G A C E", "0 2 5 10")]
    [InlineData("G6/9", "G B D E A", "0 2 4 9")]
    [InlineData("Gm6", "G Bb D E", "0 3 9")]
    [InlineData("Cadd9", "C E G D", "0 2 4")]
    [InlineData("Cmadd9", "C Eb G D", "0 2 3")]
    [InlineData("C7(b9,b13)", "C E G Bb Db Ab", "0 1 4 8 10")]
    [InlineData("C7#9", "C E G Bb D#", "0 3 4 10")]
    [InlineData("C7(no3)", "C G Bb", "0 10")]
    public void ASymbol_MeansItsTones_AndSaysWhichMustSound(string text, string notes, string needed)
    {
        Assert.True(ChordSymbol.TryParse(text, out var symbol, out _), text);
        var root = symbol.Name.Root;
        Assert.Equal(notes.Split(' ').Order(), symbol.Name.Kind.Degrees.Items.Select(degree => root.Transpose(degree).ToString()).Order());
        Assert.Equal($"{{{needed}}}", symbol.Needed.ToString());
        Assert.Equal(root, symbol.Name.Bass);
    }

    [Theory]
    [InlineData("D/F#", "D", "F#")]
    [InlineData("Am7/G", "A", "G")]
    [InlineData("G6/9/B", "G", "B")]
    [InlineData("Bb/Ab", "Bb", "Ab")]
    public void ABass_StandsAfterTheStroke(string text, string root, string bass)
    {
        Assert.True(ChordSymbol.TryParse(text, out var symbol, out _));
        Assert.Equal((root, bass), (symbol.Name.Root.ToString(), symbol.Name.Bass.ToString()));
    }

    [Theory]
    [InlineData("", 0)]
    [InlineData("H7", 0)]
    [InlineData("Cwow", 1)]
    [InlineData("C7x", 2)]
    [InlineData("Cm77777", 2)]
    [InlineData("C/", 1)]
    [InlineData("C/x", 2)]
    [InlineData("C8", 1)]
    public void WhatIsNoSymbol_IsNotRead(string text, int unread)
    {
        Assert.False(ChordSymbol.TryParse(text, out _, out var stopped));
        Assert.Equal(unread, stopped);
    }

    [Fact]
    public void EverySymbolWeWrite_IsReadBack_AsTheSameChord() => Gen.Select(
        Gen.Int[0, ChordFamilies.All.Length - 1], Gen.Int[0, 0xFFF], Gen.Int[-5, 6]).Sample((family, bits, fifths) =>
        {
            var frame = ChordFamilies.All[family];
            var tensions = new PitchClassSet(bits & bits >> 3 & 0xFFF).Without(0).Except(frame.Tones); // few at a time
            // A symbol has one word for these: an 11 or 13 that implies the ninth below it, and sevenths beside sevenths are no chord a player writes.
            if (tensions.Contains(2) && (tensions.Contains(1) || tensions.Contains(3)) || tensions.Contains(10) || tensions.Contains(11)) return;
            if (frame.HasSixth && (tensions.Contains(2) || tensions.Contains(9))) return;
            var written = new ChordName(NoteName.FromFifths(fifths), new ChordKind(frame, tensions), NoteName.FromFifths(fifths));
            var text = written.Symbol();
            Assert.True(ChordSymbol.TryParse(text, out var read, out _), text);
            Assert.Equal(written.Root, read.Name.Root);
            Assert.Same(frame, read.Name.Kind.Family);
            Assert.True(tensions.IsWithin(read.Name.Kind.Tensions), $"{text}: {tensions} became {read.Name.Kind.Tensions}");
            Assert.Equal(text, read.Name.Symbol());
        });

    [Fact]
    public void AnyText_IsReadOrRefused_AndNeverThrows() => Gen.String[Gen.Char["ABCDEFGmMajdimsuopb#+-/()0123456789 ,°ø△"], 0, 10].Sample(
        text => { _ = ChordSymbol.TryParse(text, out _, out var unread); Assert.InRange(unread, 0, text.Length); });
}
