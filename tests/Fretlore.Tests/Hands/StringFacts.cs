using System.Globalization;
using CsCheck;
using Fretlore.Guitar;
using Fretlore.Hands.Strings;
using Fretlore.Music;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Hands;

/// <summary>Tensions, breaking loads, stiffness and the choice of gauges.</summary>
public sealed class StringFacts
{
    private const double Inch = 25.4;

    /// <summary>Worked examples (worked_examples.csv), computed from the published chart's unit weights.</summary>
    [Theory]
    [InlineData("9", "E4", 25.5, 13.12, 58.4)]
    [InlineData("10", "E4", 25.5, 16.20, 72.1)]
    [InlineData("13", "B3", 25.5, 15.37, 68.4)]
    [InlineData("17", "G3", 25.5, 16.55, 73.6)]
    [InlineData("26w", "D3", 25.5, 18.39, 81.8)]
    [InlineData("36w", "A2", 25.5, 19.52, 86.8)]
    [InlineData("46w", "E2", 25.5, 17.47, 77.7)]
    [InlineData("52w", "D2", 25.5, 17.45, 77.6)]
    [InlineData("56w", "B1", 25.5, 14.78, 65.7)]
    [InlineData("10", "E4", 24.75, 15.26, 67.9)]
    [InlineData("56w", "B1", 24.75, 13.92, 61.9)]
    [InlineData("10", "E4", 27, 18.16, 80.8)]
    [InlineData("46w", "E2", 27, 19.58, 87.1)]
    public void ATension_IsTheWorkedExamples(string gauge, string pitch, double scaleInches, double poundsForce, double newtons)
    {
        var tension = At(gauge, pitch, scaleInches);
        Assert.Equal(poundsForce, tension.PoundsForce, 0.006);
        Assert.Equal(newtons, tension.Newtons, 0.06);
    }

    /// <summary>A string maker's published chart of 437 tensions at 25.5 in (string_unit_weights.csv).</summary>
    [Fact]
    public void EveryTensionOfTheChart_IsWithinATenthOfAPound()
    {
        var path = Repository.Check("string_unit_weights.csv");
        Assert.SkipWhen(path is null, "string_unit_weights.csv of the check values is not there.");
        var rows = File.ReadLines(path).Skip(1).Where(line => line.Length > 0).Select(line => line.Split(',')).ToList();
        Assert.Equal(437, rows.Count);
        var gauges = new HashSet<GuitarString>();
        foreach (var row in rows)
        {
            var gauge = Gauge(row[1] + (row[0] == "plain steel" ? "p" : "w"));
            gauges.Add(gauge);
            Assert.Equal(double.Parse(row[2], CultureInfo.InvariantCulture), gauge.UnitWeight, 1e-9);
            var expected = double.Parse(row[4], CultureInfo.InvariantCulture);
            Assert.True(Pitch.TryParse(row[3], out var pitch));
            Assert.Equal(expected, Tension.At(gauge.UnitWeight, 25.5 * Inch, pitch.Height.Hertz()).PoundsForce, 0.1);
        }
        Assert.Equal(55, gauges.Count);
    }

    [Fact]
    public void Tension_GivesBackTheFrequencyItWasMadeFrom() => Gen.Select(Gen.Double[1e-5, 1e-3], Gen.Double[300, 900], Gen.Double[20, 500]).Sample(
        (weight, length, hertz) => Assert.Equal(hertz, Tension.At(weight, length, hertz).HertzOf(weight, length), hertz * 1e-9));

    /// <summary>ASTM A228 tensile strengths times the wire's area (worked_examples.csv).</summary>
    [Theory]
    [InlineData("7", 15.7, 17.3)]
    [InlineData("9", 25.0, 27.6)]
    [InlineData("10", 30.4, 33.6)]
    [InlineData("13", 49.5, 54.7)]
    [InlineData("16", 72.8, 80.4)]
    [InlineData("18", 90.6, 100.0)]
    [InlineData("20", 110.0, 121.6)]
    [InlineData("26p", 178.9, 198.0)]
    public void APlainString_BreaksWhereTheStandardSays(string gauge, double least, double greatest)
    {
        var load = MusicWire.BreakingLoad(Gauge(gauge))!.Value;
        Assert.Equal(least, load.Least.PoundsForce, 0.06);
        Assert.Equal(greatest, load.Greatest.PoundsForce, 0.06);
    }

    /// <summary>B = pi^3 E d^4 / (64 T L^2) with E = 200 GPa (worked_examples.csv).</summary>
    [Theory]
    [InlineData("10", "E4", 1.33e-5, 1.14)]
    [InlineData("13", "B3", 4.01e-5, 3.43)]
    [InlineData("17", "G3", 1.09e-4, 9.29)]
    public void Inharmonicity_IsTheWorkedExamples(string gauge, string pitch, double b, double tenthPartialCents)
    {
        var found = MusicWire.Inharmonicity(Gauge(gauge), 25.5 * Inch, At(gauge, pitch, 25.5))!.Value;
        Assert.Equal(b, found, b * 0.005);
        Assert.Equal(tenthPartialCents, MusicWire.PartialSharpCents(found, 10), 0.02);
        Assert.Equal(4 * found, MusicWire.Inharmonicity(Gauge(gauge), 12.75 * Inch, At(gauge, pitch, 25.5))!.Value, b * 1e-6);
    }

    /// <summary>f goes with the square root of T: two semitones take 2^(1/3), 16.20 lbf becomes 20.41 (worked_examples.csv).</summary>
    [Fact]
    public void ABendOfAWholeStep_RaisesTensionByTheThirdRootOfTwo()
    {
        Assert.Equal(20.41, MusicWire.Bent(At("10", "E4", 25.5), 2).PoundsForce, 0.01);
        Assert.Equal(1.1225, MusicWire.Bent(new Tension(1), 1).PoundsForce, 0.0001);
    }

    [Fact]
    public void ABendsPush_GrowsWithTheStep_AndIsLargestNearTheNut()
    {
        var tension = At("10", "E4", 25.5);
        double Push(double fret, double semitones) =>
            MusicWire.BendPush(Gauge("10"), 647.7, NeckGeometry.FromNut(647.7, fret), tension, semitones)!.Value.Newtons;
        Assert.InRange(Push(12, 2), 8, 14);
        Assert.True(Push(12, 1) < Push(12, 2) && Push(12, 2) < Push(12, 3));
        Assert.True(Push(1, 2) > Push(5, 2) && Push(5, 2) > Push(12, 2));
        Assert.Null(MusicWire.BendPush(Gauge("46w"), 647.7, 300, tension, 2));
    }

    [Theory]
    [InlineData("10", ".010")]
    [InlineData(".0095", ".0095")]
    [InlineData("9.5", ".0095")]
    [InlineData("0.046", ".046w")]
    [InlineData("20", ".020")]
    [InlineData("20W", ".020w")]
    [InlineData("24p", ".024")]
    [InlineData("24", ".024w")]
    public void AGauge_IsReadAsPlayersWriteIt(string typed, string gauge) => Assert.Equal(gauge, Gauge(typed).ToString());

    [Theory]
    [InlineData("", GaugeProblem.NotANumber)]
    [InlineData("ten", GaugeProblem.NotANumber)]
    [InlineData("-10", GaugeProblem.NotANumber)]
    [InlineData("0", GaugeProblem.OutOfRange)]
    [InlineData("6", GaugeProblem.OutOfRange)]
    [InlineData("130", GaugeProblem.OutOfRange)]
    [InlineData("47w", GaugeProblem.NotMade)]
    [InlineData("50p", GaugeProblem.NotMade)]
    public void AGaugeThatIsNone_IsSaidToBe(string typed, GaugeProblem problem) => Assert.Equal(problem, GaugeText.Read(typed).Problem);

    [Fact]
    public void AnEvenFeel_InTheUsualTuning_LeadsToUsualGauges()
    {
        var set = StringSet.For(Tuning.Standard, new NeckGeometry(6, 25.5 * Inch), StringFeel.Named.Single(f => f.Name == "regular"));
        Assert.Equal(UsualSet.Regular.HighToLow, set.Strings.Select(s => s.Gauge));
        Assert.Empty(StringRemarks.On(set, StringFeel.Named[0], UsualSet.Regular.At(25.5 * Inch)));
    }

    [Fact]
    public void NoGaugeOfTheTable_ComesNearerToTheTarget_ThanTheChosenOne() => Gen.Select(Gen.Int[30, 66], Gen.Double[550, 720], Gen.Double[10, 25]).Sample(
        (midi, length, target) =>
        {
            var tuning = new Tuning([new Height(midi).Spell(SpelledAs(midi))]);
            var set = StringSet.For(tuning, new NeckGeometry(1, length), StringFeel.Even(new Tension(target)));
            double Off(Tension tension) => Math.Abs(Math.Log(tension.PoundsForce / target));
            var best = UnitWeightTable.All.Where(s => s.Make == StringMake.Wound == s.Gauge > 0.0201)
                .Min(s => Off(Tension.At(s.UnitWeight, length, new Height(midi).Hertz())));
            Assert.Equal(best, Off(set.Strings[0].Tension), 1e-9);
        });

    [Theory]
    [InlineData("E4", null)]
    [InlineData("G#4", StringConcern.NearBreaking)]
    [InlineData("B4", StringConcern.Breaks)]
    public void AHighString_IsWarnedAbout_BeforeItBreaks(string pitch, StringConcern? concern)
    {
        Assert.True(Tuning.TryParse(pitch, out var tuning));
        var set = StringSet.Of(tuning, new NeckGeometry(1, 25.5 * Inch), [Gauge("9")]);
        var remarks = StringRemarks.On(set, null, null);
        Assert.Equal(concern, remarks.FirstOrDefault()?.Concern);
        if (concern is not null) Assert.Contains("eye protection", remarks[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void ALoadThatMovesByMoreThanATenth_CallsForASetup()
    {
        var geometry = new NeckGeometry(6, 25.5 * Inch);
        var before = UsualSet.Regular.At(25.5 * Inch);
        Assert.True(Tuning.TryParse("B1 E2 A2 D3 F#3 B3", out var baritone));
        var remark = Assert.Single(StringRemarks.On(StringSet.Of(baritone, geometry, UsualSet.Heavy.HighToLow), null, before), r => r.Concern == StringConcern.LoadMoves);
        Assert.Contains("less", remark.Text, StringComparison.Ordinal);
        Assert.Contains("setup", remark.Text, StringComparison.Ordinal);
        Assert.Contains("technician", remark.Text, StringComparison.Ordinal);
        Assert.Contains("eye protection", remark.Text, StringComparison.Ordinal);
        Assert.Empty(StringRemarks.On(UsualSet.Light.At(25.5 * Inch), null, UsualSet.Light.At(26 * Inch)));
    }

    [Fact]
    public void ATwoScaleNeck_GivesEachStringItsOwnLength()
    {
        var set = StringSet.Of(Tuning.Standard, new NeckGeometry(6, 25.5 * Inch, 27 * Inch), UsualSet.Regular.HighToLow);
        Assert.Equal(At("10", "E4", 25.5).PoundsForce, set.Strings[0].Tension.PoundsForce, 1e-9);
        Assert.Equal(At("46w", "E2", 27).PoundsForce, set.Strings[5].Tension.PoundsForce, 1e-9);
    }

    private static GuitarString Gauge(string text)
    {
        var (gauge, problem) = GaugeText.Read(text);
        Assert.Equal(GaugeProblem.None, problem);
        return gauge!;
    }

    private static Tension At(string gauge, string pitch, double scaleInches)
    {
        Assert.True(Pitch.TryParse(pitch, out var parsed));
        return Tension.At(Gauge(gauge).UnitWeight, scaleInches * Inch, parsed.Height.Hertz());
    }

    private static NoteName SpelledAs(int midi)
    {
        var pitchClass = midi % 12;
        for (var fifths = -5; fifths <= 6; fifths++)
        {
            if (NoteName.FromFifths(fifths).PitchClass == pitchClass) return NoteName.FromFifths(fifths);
        }
        throw new InvalidOperationException();
    }
}
