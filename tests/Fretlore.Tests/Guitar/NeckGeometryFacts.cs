using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using Fretlore.Guitar;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Necks;

/// <summary>Frets and strings in millimetres.</summary>
public sealed partial class NeckGeometryFacts
{
    /// <summary>Equal temperament: L (1 - 2^(-n/12)); values of the worked examples (worked_examples.csv), in the unit of the scale length.</summary>
    [Theory]
    [InlineData(25.5, 1, 1.4312)]
    [InlineData(25.5, 12, 12.75)]
    [InlineData(25.5, 24, 19.125)]
    [InlineData(24.75, 5, 6.2084)]
    [InlineData(24.75, 22, 17.8048)]
    [InlineData(648, 1, 36.3694)]
    [InlineData(648, 7, 215.5119)]
    [InlineData(648, 19, 431.7559)]
    [InlineData(650, 9, 263.5077)]
    [InlineData(650, 24, 487.5)]
    public void AFret_StandsWhereTheWorkedExamplesPutIt(double scaleLength, int fret, double fromNut) =>
        Assert.Equal(fromNut, NeckGeometry.FromNut(scaleLength, fret), 0.00006);

    [Fact]
    public void EveryFretOfTheWorkedExamples_IsWithinAHundredthOfAMillimetre()
    {
        var path = Repository.Check("worked_examples.csv");
        Assert.SkipWhen(path is null, "worked_examples.csv of the check values is not there.");
        var rows = File.ReadLines(path).Select(line => FretRow().Match(line)).Where(row => row.Success).ToList();
        Assert.Equal(44, rows.Count);
        foreach (var row in rows)
        {
            var scaleLength = Number(row.Groups["scale"].Value);
            var inMillimetres = scaleLength < 100 ? NeckGeometry.MillimetresPerInch : 1;
            var geometry = new NeckGeometry(6, scaleLength * inMillimetres);
            var fret = int.Parse(row.Groups["fret"].Value, CultureInfo.InvariantCulture);
            Assert.Equal(Number(row.Groups["at"].Value) * inMillimetres, geometry.FromNut(new StringNumber(1), new Fret(fret)), 0.01);
        }
    }

    /// <summary>The fret constant 1 / (1 - 2^(-1/12)) is 17.817154 (worked_examples.csv).</summary>
    [Fact]
    public void TheFirstFret_IsTheScaleLengthOverTheFretConstant() => Assert.Equal(17.817154, 1 / NeckGeometry.FromNut(1, 1), 0.000001);

    [Fact]
    public void TwelveFretsUp_HalvesWhatSounds_OnAnyString() => Gen.Select(Gen.Int[1, 12], Gen.Double[300, 900], Gen.Double[300, 900], Gen.Int[0, 12]).Sample(
        (strings, high, low, fret) =>
        {
            var geometry = new NeckGeometry(strings, high, low) { Capo = 3 };
            for (var i = 1; i <= strings; i++)
            {
                var number = new StringNumber(i);
                Assert.Equal(geometry.SoundingLength(number, new Fret(fret)) / 2, geometry.SoundingLength(number, new Fret(fret + 12)), 1e-9);
            }
        });

    [Fact]
    public void ACapo_MakesTheOpenStringStartAtItsFret()
    {
        var geometry = new NeckGeometry(6, 648) { Capo = 5 };
        Assert.Equal(162.5485, geometry.FromNut(new StringNumber(3), Fret.Open), 0.0001);
        Assert.Equal(262.6969, geometry.FromNut(new StringNumber(3), new Fret(4)), 0.0001);
    }

    [Fact]
    public void TwoScaleLengths_FanTheFretsOut_AroundTheSquareOne()
    {
        var geometry = new NeckGeometry(7, 648, 686) { SquareFret = 7 };
        Assert.Equal(686, geometry.ScaleLength(new StringNumber(7)), 1e-9);
        Assert.Equal(667, geometry.ScaleLength(new StringNumber(4)), 1e-9);
        var (low, high) = (new StringNumber(7), new StringNumber(1));
        Assert.Equal(geometry.Crossing(high, new Fret(7)).Along, geometry.Crossing(low, new Fret(7)).Along, 1e-9);
        Assert.True(geometry.Crossing(low, Fret.Open).Along < geometry.Crossing(high, Fret.Open).Along);
        Assert.True(geometry.Crossing(low, new Fret(24)).Along > geometry.Crossing(high, new Fret(24)).Along);
    }

    [Fact]
    public void Strings_SpreadFromTheNutToTheBridge()
    {
        var geometry = new NeckGeometry(6, 648) { NutSpacing = 7, BridgeSpacing = 10.4 };
        Assert.Equal(35, geometry.Crossing(new StringNumber(6), Fret.Open).Across, 1e-9);
        Assert.Equal(5 * 8.7, geometry.Crossing(new StringNumber(6), new Fret(12)).Across, 1e-9);
        Assert.Equal(8.7, geometry.Distance(new StringNumber(2), new Fret(12), new StringNumber(1), new Fret(12)), 1e-9);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-648)]
    public void AScaleLengthOfNothing_IsNoNeck(double scaleLength) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new NeckGeometry(6, scaleLength));

    [Fact]
    public void TheGeometryOfANeck_HasItsCapoAndLength()
    {
        var geometry = NeckGeometry.Of(new Neck(Tuning.Standard, Capo: 2, ScaleLength: 650));
        Assert.Equal(NeckGeometry.FromNut(650, 5), geometry.FromNut(new StringNumber(1), new Fret(3)), 1e-9);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^""fret"",""scale (?<scale>[\d.]+) fret (?<fret>\d+)"",""(?<at>[\d.]+)""")]
    private static partial Regex FretRow();
}
