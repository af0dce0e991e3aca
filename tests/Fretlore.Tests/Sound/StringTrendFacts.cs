using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Sound.Strings;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Sound;

/// <summary>Sound moves the right way with gauge, place on the neck, place and strength of the pick, and mutes.</summary>
public sealed class StringTrendFacts
{
    [Fact]
    public void TheSamePitchOnAShorterNeck_NeedsAThickerString_WhichIsStiffer()
    {
        double[] b = [.. new[] { 686, 648, 628, 610 }.Select(mm => StringBuild.Of(new StringNumber(6), new Neck(Tuning.Standard) { ScaleLength = mm }, BodyLoss.Solid).Stiffness)];
        Assert.Equal(b.Order(), b);
    }

    [Fact]
    public void AmongPlainStrings_TheThickerIsHeardFurtherFromHarmonic()
    {
        // Strings 1 to 3, open: how sharp the tenth partial is.
        double Sharp(int number, int midi)
        {
            var hertz = new Height(midi).Hertz();
            var build = StringBuild.Of(new StringNumber(number), new Neck(Tuning.Standard), BodyLoss.Solid);
            var expected = 10 * hertz * Math.Sqrt((1 + 100 * build.Stiffness) / (1 + build.Stiffness));
            return Heard.Cents(Heard.Frequency(Heard.String(Sheets.Line($"@{number} W 0"), number, 1), 0.1, 0.2, expected), 10 * hertz);
        }
        var (first, second, third) = (Sharp(1, 64), Sharp(2, 59), Sharp(3, 55));
        Assert.True(first < second && second < third, $"{first:0.0} {second:0.0} {third:0.0}");
    }

    [Fact]
    public void AThickerGauge_IsHeardFurtherFromHarmonic_AndAWoundThirdNearerThanAPlainOne()
    {
        // String 3, open, its tenth partial: from .016 plain over .018 and .020 to .020 wound.
        double Sharp(string gauge)
        {
            var song = Sheets.Song($"title T\ntuning E2 A2 D3 G3 B3 E4\ngauges 46w 36w 26w {gauge} 13 10\ntempo Q = 120\nsection A\n  @3 W 0\n");
            var hertz = new Height(55).Hertz();
            var build = StringBuild.Of(new StringNumber(3), song.Parts[0].Neck, BodyLoss.Solid, song.Parts[0].Strings[2]);
            var law = 10 * hertz * Math.Sqrt((1 + 100 * build.Stiffness) / (1 + build.Stiffness));
            return Heard.Cents(Heard.Frequency(Heard.String(song, 3, 1), 0.1, 0.2, law), 10 * hertz);
        }
        double[] plain = [Sharp("16"), Sharp("18"), Sharp("20p")];
        TestContext.Current.SendDiagnosticMessage("partial 10 of G3 on .016, .018, .020: {0:0.0}, {1:0.0}, {2:0.0} cents sharp; .020w {3:0.0}", plain[0], plain[1], plain[2], Sharp("20w"));
        Assert.Equal(plain.Order(), plain);
        Assert.True(plain[2] > plain[0] + 1 && Sharp("20w") < plain[0]);
    }

    [Fact]
    public void HigherOnTheNeck_ANoteDiesAwayFaster()
    {
        double[] falls = [.. new[] { 0, 7, 14, 21 }.Select(fret =>
        {
            var sound = Heard.String(Sheets.Line($"@1 W {fret}"), 1, 2);
            var hertz = new Height(64 + fret).Hertz();
            return Heard.LevelAt(sound, 0.2, 0.2, hertz) / Heard.LevelAt(sound, 1.4, 0.2, hertz);
        })];
        Assert.Equal(falls.Order(), falls);
    }

    [Fact]
    public void HighPartials_DieAwayBeforeLowOnes()
    {
        var sound = Heard.String(Sheets.Line("@6 W 0"), 6, 2);
        var build = StringBuild.Of(new StringNumber(6), new Neck(Tuning.Standard), BodyLoss.Solid);
        double[] falls = [.. new[] { 1, 5, 10, 20 }.Select(n =>
        {
            var hertz = n * build.OpenHertz * Math.Sqrt((1 + build.Stiffness * n * n) / (1 + build.Stiffness));
            return Heard.LevelAt(sound, 0.2, 0.3, hertz) / Heard.LevelAt(sound, 1.4, 0.3, hertz);
        })];
        Assert.Equal(falls.Order(), falls);
    }

    [Fact]
    public void NearerToTheBridge_ThePickBringsBrighterSound()
    {
        double[] bright = [.. new[] { 0.5, 0.3, 0.2, 0.13, 0.08, 0.05 }.Select(place => Brightness(new Push(0.5, place, 5000, 0, true)))];
        Assert.Equal(bright.Order(), bright);
    }

    [Fact]
    public void APickInTheMiddle_LeavesEvenPartialsOut()
    {
        var partials = Partials(new Push(0.5, 0.5, 20_000, 0, true));
        Assert.All(new[] { 2, 4, 6, 8 }, n => Assert.True(partials[n] < partials[n - 1] / 50));
    }

    [Fact]
    public void AHarderStroke_IsLouderAndBrighter()
    {
        string[] dynamics = ["pp", "p", "mp", "mf", "f", "ff"];
        var notes = dynamics.Select(d => Performer.Play(Sheets.Line($"({d}) @5 W 3")).Parts[0].Notes[0]).ToList();
        double[] loud = [.. notes.Select(n => Push.Of(n, 1).Level)];
        double[] bright = [.. notes.Select(n => Brightness(Push.Of(n, 1) with { Scratch = 0 }))];
        Assert.Equal(loud.Order(), loud);
        Assert.Equal(bright.Order(), bright);
        Assert.True(bright[^1] > 1.2 * bright[0]);
    }

    [Fact]
    public void OpenThenMutedThenDead_DieAwayInThatOrder()
    {
        double Fall(string music)
        {
            var sound = Heard.String(Sheets.Line(music), 6, 1);
            return Heard.Rms(sound, 0.06, 0.1) / Heard.Rms(sound, 0, 0.04);
        }
        var (open, muted, dead) = (Fall("@6 W 3"), Fall("@6 W 3m"), Fall("@6 W x3"));
        Assert.True(open > muted && muted > 3 * dead, $"{open} {muted} {dead}");
    }

    // The mean number of a partial, weighted by its level.
    private static double Brightness(Push push)
    {
        var partials = Partials(push);
        return partials.Select((level, n) => n * level).Sum() / partials.Sum();
    }

    private static double[] Partials(Push push)
    {
        const int period = 400;
        var wave = new double[Push.LengthOf(period)];
        var noise = new Noise(NoteSeed.Mixed(1));
        push.Write(wave, period, 1, ref noise);
        var turn = new double[period];
        for (var i = 0; i < wave.Length; i++) turn[i % period] += wave[i];
        return [.. Enumerable.Range(0, 40).Select(n =>
        {
            double re = 0, im = 0;
            for (var i = 0; i < period; i++) (re, im) = (re + turn[i] * Math.Cos(2 * Math.PI * n * i / period), im + turn[i] * Math.Sin(2 * Math.PI * n * i / period));
            return n == 0 ? 0 : Math.Sqrt(re * re + im * im);
        })];
    }
}
