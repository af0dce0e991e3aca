using CsCheck;
using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Tests.Necks;

/// <summary>Capos over all strings and over some: what sounds, and what a written fret is.</summary>
public sealed class CapoFacts
{
    private static readonly Neck Standard = new(Tuning.Standard);
    private static readonly Neck HalfShut = Standard with { Capo = Capo.Over(2, new StringNumber(5), new StringNumber(3)) };

    [Fact]
    public void OverAllStrings_FretsCountFromIt() =>
        Assert.Equal(["F#2", "G2"], Sounding(Standard with { Capo = 2 }, 6, 0, 1));

    /// <summary>The open strings under a capo over strings 5 to 3 at fret 2 are E B E A B E: a fourth chord on E (worked out by hand).</summary>
    [Fact]
    public void OverSomeStrings_OpenOnesSoundAtIt_AndTheOthersFree()
    {
        string[] open = ["E2", "B2", "E3", "A3", "B3", "E4"];
        Assert.Equal(open, Enumerable.Range(1, 6).Reverse().SelectMany(number => Sounding(HalfShut, number, 0)));
    }

    [Fact]
    public void OverSomeStrings_FretsCountFromTheNut_OnEveryString()
    {
        Assert.Equal(["F#2", "A2"], Sounding(HalfShut, 6, 2, 5));
        Assert.Equal(["F3", "G3"], Sounding(HalfShut, 4, 3, 5));
        Assert.Equal(24, HalfShut.HighestFret.Number);
    }

    [Fact]
    public void NoFinger_StopsAStringBehindIt()
    {
        Assert.Equal([true, false, false, true], Enumerable.Range(0, 4).Select(fret => HalfShut.Has(new StringNumber(4), new Fret(fret))));
        Assert.All(Enumerable.Range(0, 4), fret => Assert.True(HalfShut.Has(new StringNumber(6), new Fret(fret))));
    }

    /// <summary>Halfway between a capo at fret 2 and the bridge is fret 14.</summary>
    [Fact]
    public void Harmonics_LieWhereTheStringIsDivided_CapoOrNot()
    {
        Assert.Equal(12, HalfShut.Harmonic(new StringNumber(4), Fret.Open, new Fret(14)));
        Assert.Null(HalfShut.Harmonic(new StringNumber(4), Fret.Open, new Fret(8)));
        Assert.Equal(12, HalfShut.Harmonic(new StringNumber(6), Fret.Open, new Fret(12)));
    }

    [Theory]
    [InlineData("off")]
    [InlineData("3")]
    [InlineData("2 on 5-3")]
    [InlineData("7 on 1")]
    public void ACapo_IsReadAsItIsWritten(string text) => Assert.Equal(text, Capo.TryParse(text, out var capo) ? capo.ToString() : "");

    [Theory]
    [InlineData("2 on")]
    [InlineData("2 on 0-3")]
    [InlineData("0 on 5-3")]
    [InlineData("2 over 5-3")]
    [InlineData("2 on 5-3-1")]
    [InlineData("40")]
    [InlineData("")]
    public void OtherWords_AreNoCapo(string text) => Assert.False(Capo.TryParse(text, out _));

    private static readonly Gen<Neck> Necks = Gen.Select(Gen.Int[0, 7], Gen.Int[1, 6], Gen.Int[1, 6], Gen.Bool)
        .Select((fret, a, b, isPartial) => Standard with { Capo = isPartial && fret > 0 ? Capo.Over(fret, new StringNumber(a), new StringNumber(b)) : fret });

    [Fact]
    public void EveryPlaceTheNeckHas_IsFoundAgainByItsPitch_AndRisesAlongTheString() => Gen.Select(Necks, Gen.Int[1, 6]).Sample((neck, n) =>
    {
        var number = new StringNumber(n);
        var frets = Enumerable.Range(0, 30).Select(fret => new Fret(fret)).Where(fret => neck.Has(number, fret)).ToList();
        Assert.Equal(frets.Cast<Fret?>(), frets.Select(fret => neck.FretOf(number, neck.Sounding(number, fret))));
        // From the open string on every semitone is there, up to the last fret.
        Assert.Equal(Enumerable.Range(0, frets.Count), frets.Select(fret => neck.Sounding(number, fret) - neck.Open(number)));
        Assert.Equal(24, neck.Capo.FromNut(number, frets[^1]));
        Assert.Null(neck.FretOf(number, neck.Open(number) + -1));
    });

    /// <summary>Where the string is stopped is what sounds, whatever the capo is called.</summary>
    [Fact]
    public void ThePlaceOnTheNeck_SaysThePitch() => Gen.Select(Necks, Gen.Int[1, 6], Gen.Int[0, 17]).Sample((neck, n, fret) =>
    {
        var (number, at) = (new StringNumber(n), new Fret(fret));
        if (!neck.Has(number, at)) return;
        var fromNut = NeckGeometry.Of(neck).FromNut(number, at);
        var semitones = 12 * Math.Log2(neck.ScaleLength / (neck.ScaleLength - fromNut));
        Assert.Equal(neck.Sounding(number, at).Midi - neck.Tuning[number].Midi, semitones, 6);
    });

    private static IEnumerable<string> Sounding(Neck neck, int number, params int[] frets) =>
        frets.Select(fret => neck.Tuning[new StringNumber(number)] is var open && neck.Sounding(new StringNumber(number), new Fret(fret)) is var height
            ? Named(height, open) : "");

    private static string Named(Height height, Pitch open) => open.Transpose(Interval.Chromatic((height - open.Height) % 12)).ToString() is var name && height - open.Height < 12 ? name : "";
}
