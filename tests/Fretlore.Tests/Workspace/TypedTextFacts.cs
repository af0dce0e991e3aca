using CsCheck;
using Fretlore.Guitar;
using Fretlore.Workspace.Questions;

namespace Fretlore.Tests.Workspace;

/// <summary>What can be typed at the prompt: shapes, tunings, keys, notes.</summary>
public sealed class TypedTextFacts
{
    private static readonly Neck Usual = new(Tuning.Standard);

    [Theory]
    [InlineData("x 3 2 0 1 0", "x 3 2 0 1 0")]
    [InlineData("x32010", "x 3 2 0 1 0")]
    [InlineData("X,3,2,0,1,0", "x 3 2 0 1 0")]
    [InlineData("[. 3 2 0 1 0]", "x 3 2 0 1 0")]
    [InlineData("  x  x 12  14 13 12 ", "x x 12 14 13 12")]
    [InlineData("[7 7 9 9 . .]", "7 7 9 9 x x")]
    public void Shape_IsReadHoweverItIsTyped(string typed, string shape) =>
        Assert.Equal(shape, ShapeText.Read(typed, Usual).Value.ToString());

    [Theory]
    [InlineData("x 3 2 0 1", 1, 9, "5 strings")]
    [InlineData("x 3 2 0 1 0 0", 1, 13, "7 strings")]
    [InlineData("x 3 two 0 1 0", 5, 3, "\"two\"")]
    [InlineData("x 3 25 0 1 0", 5, 2, "Fret 25")]
    [InlineData("x 3 -2 0 1 0", 5, 2, "\"-2\"")]
    [InlineData("x 3 99999999999 0 1 0", 5, 11, "neither")]
    [InlineData("x x x x x x", 1, 11, "No string")]
    [InlineData("", 1, 0, "empty")]
    [InlineData(" , ", 1, 0, "empty")]
    public void Shape_ThatCannotBe_IsPointedAt(string typed, int column, int length, string message)
    {
        var misread = ShapeText.Read(typed, Usual).Misread;
        Assert.NotNull(misread);
        Assert.Equal((column, length), (misread.Column, misread.Length));
        Assert.Contains(message, misread.Message, StringComparison.Ordinal);
        Assert.NotEmpty(misread.Remedy);
    }

    [Fact]
    public void Shape_CountsFretsFromTheCapo()
    {
        Assert.NotNull(ShapeText.Read("x x x x x 21", Usual with { Capo = 4 }).Misread);
        Assert.Null(ShapeText.Read("x x x x x 20", Usual with { Capo = 4 }).Misread);
    }

    [Theory]
    [InlineData("A1 E2 A2 D3 G3 B3 E4", 7)]
    [InlineData("D2,A2,D3,F#3,A3,D4", 6)]
    [InlineData("Bb0 E1 A1 D2", 4)]
    public void Tuning_HasAsManyStringsAsPitches(string typed, int strings) =>
        Assert.Equal(strings, NeckText.Read(typed).Value.StringCount);

    [Theory]
    [InlineData("E2 A2 D3 G3 B E4", 13, "no octave")]
    [InlineData("E2 A2 H3", 7, "not a pitch")]
    [InlineData("", 1, "empty")]
    [InlineData("E2 E2 E2 E2 E2 E2 E2 E2 E2 E2 E2 E2 E2", 37, "at most 12")]
    public void Tuning_ThatCannotBe_IsPointedAt(string typed, int column, string message)
    {
        var misread = NeckText.Read(typed).Misread;
        Assert.NotNull(misread);
        Assert.Equal(column, misread.Column);
        Assert.Contains(message, misread.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("-1")]
    [InlineData("24")]
    [InlineData("99999999999")]
    [InlineData("two")]
    [InlineData("2 on 7-5")]
    [InlineData("2 on 6-1")]
    [InlineData("0 on 5-3")]
    public void Capo_OffTheNeck_IsRefused(string capo) => Assert.NotNull(NeckText.Read(null, capo).Misread);

    [Theory]
    [InlineData("A dorian", "A dorian")]
    [InlineData("Eb", "Eb major")]
    [InlineData("f# MINOR", "F# minor")]
    public void Key_IsReadInAnyCase(string typed, string key) => Assert.Equal(key, KeyText.Read(typed).Value.ToString());

    [Theory]
    [InlineData("A dorain", 3)]
    [InlineData("H minor", 1)]
    [InlineData("", 1)]
    [InlineData("A minor blues", 3)]
    public void Key_ThatCannotBe_IsPointedAt(string typed, int column) => Assert.Equal(column, KeyText.Read(typed).Misread!.Column);

    [Fact]
    public void Notes_KeepTheirOrderAndRepeats() =>
        Assert.Equal(["A", "C", "A", "Eb"], NotesText.Read("A c, A Eb").Value.Select(n => n.ToString()));

    [Fact]
    public void AnythingTyped_IsAnsweredWithoutAnException() => Gen.String.Sample(typed =>
    {
        _ = ShapeText.Read(typed, Usual);
        _ = NeckText.Read(typed);
        _ = KeyText.Read(typed);
        _ = NotesText.Read(typed);
        _ = NotesText.ReadOne(typed);
    });

    [Fact]
    public void AWrittenShape_ReadsBackAsItself() => Gen.Int[-1, 24].Array[6].Where(frets => frets.Any(f => f >= 0)).Sample(frets =>
    {
        var typed = string.Join(' ', frets.Select(f => f < 0 ? "x" : f.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        Assert.Equal(typed, ShapeText.Read(typed, Usual).Value.ToString());
    });
}
