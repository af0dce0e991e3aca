using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Sound.Strings;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Sound;

/// <summary>What one string sounds like.</summary>
public sealed class StringFacts
{
    public static TheoryData<string> Tunings =>
    [
        "E2 A2 D3 G3 B3 E4", "D2 A2 D3 G3 B3 E4", "D2 A2 D3 G3 A3 D4", "A1 E2 A2 D3 F#3 B3", "B0 E1 A1 D2 G2 C3 F3 A3 D4",
    ];

    [Theory]
    [MemberData(nameof(Tunings))]
    public void EveryFretOfEveryString_IsInTuneWithinTwoCents(string tuning)
    {
        var worst = 0.0;
        var strings = tuning.Split(' ').Length;
        Parallel.For(1, strings + 1, number =>
        {
            for (var fret = 0; fret <= 24; fret++)
            {
                var song = new SongBuilder().Part("guitar", tuning).Bar(SongBuilder.Play(ValueBase.Whole, (number, fret))).Build();
                var expected = song.Parts[0].Bars[0].Notes.First().Sounding.Hertz();
                var length = Math.Max(0.08, 9 / expected);
                var sound = Heard.String(song, number, 0.2 + length + 0.1);
                var off = Math.Abs(Heard.Cents(Heard.Frequency(sound, 0.2, length, expected), expected));
                lock (song.Info) worst = Math.Max(worst, off);
                Assert.True(off < 2, $"String {number}, fret {fret} is {off:0.00} cents off.");
            }
        });
        TestContext.Current.SendDiagnosticMessage("{0}: at most {1:0.000} cents off", tuning, worst);
    }

    [Fact]
    public void AWholeStepBend_ArrivesAWholeStepHigher_AndItsReleaseReturns()
    {
        var sound = Heard.String(Sheets.Line("@3 H 7+ =-"), 3, 2);
        var (fretted, bent) = (new Height(62).Hertz(), new Height(64).Hertz());
        Assert.InRange(Heard.Cents(Heard.Frequency(sound, 0.3, 0.1, bent), bent), -3, 3);
        Assert.InRange(Heard.Cents(Heard.Frequency(sound, 0.85, 0.1, bent), bent), -3, 3);
        Assert.InRange(Heard.Cents(Heard.Frequency(sound, 1.4, 0.1, fretted), fretted), -3, 3);
    }

    [Theory]
    [InlineData("v", 35)]
    [InlineData("vv", 80)]
    public void Vibrato_SwingsAsFarAndAsFastAsPerformed(string mark, double depth)
    {
        // The performance pushes the string up and lets it come back, five and a half times a second.
        var sound = Heard.String(Sheets.Line($"@1 W 12{mark}"), 1, 2);
        var hertz = new Height(76).Hertz();
        const double window = 0.02;
        double At(double swings) => Heard.Cents(Heard.Frequency(sound, swings / 5.5 - window / 2, window, hertz), hertz);
        Assert.InRange(At(2.5), depth - 0.15 * depth, depth + 2);
        Assert.InRange(At(3), -2, 0.15 * depth);
        Assert.InRange(At(5.5), depth - 0.15 * depth, depth + 2);
    }

    [Fact]
    public void AnOnset_IsAtTheSampleOfItsTime()
    {
        var sound = Heard.String(Sheets.Line("@5 Q R 3 R 5"), 5, 2);
        Assert.All(sound[..24000], value => Assert.Equal(0, value));
        Assert.NotEqual(0, sound[24000]);
        // The second note stands out from what is left of the first.
        var before = sound[(72000 - 480)..72000].Max(Math.Abs);
        Assert.True(sound[72000..(72000 + 48)].Max(Math.Abs) > 20 * before);
    }

    [Fact]
    public void ANaturalHarmonic_SoundsAsItsPartialAndNothingBelow()
    {
        var sound = Heard.String(Sheets.Line("@6 W 7*"), 6, 1);
        var open = new Height(40).Hertz();
        var partial = Heard.Frequency(sound, 0.2, 0.2, 3 * open);
        Assert.InRange(Heard.Cents(partial, 3 * open), -2, 2);
        var level = Heard.LevelAt(sound, 0.2, 0.2, 3 * open);
        Assert.True(Heard.LevelAt(sound, 0.2, 0.2, open) < level / 100);
        Assert.True(Heard.LevelAt(sound, 0.2, 0.2, 2 * open) < level / 100);
    }

    [Fact]
    public void APalmMute_DiesAwayFasterAndIsDuller()
    {
        var open = Heard.String(Sheets.Line("@6 W 0"), 6, 1);
        var muted = Heard.String(Sheets.Line("@6 W 0m"), 6, 1);
        var hertz = new Height(40).Hertz();
        double Fall(double[] s) => Heard.Rms(s, 0.5, 0.7) / Heard.Rms(s, 0.05, 0.25);
        double Brightness(double[] s) => Heard.LevelAt(s, 0.05, 0.1, 12 * hertz) / Heard.LevelAt(s, 0.05, 0.1, hertz);
        Assert.True(Fall(muted) < Fall(open) / 50, $"{Fall(muted)} {Fall(open)}");
        Assert.True(Brightness(muted) < Brightness(open) / 4, $"{Brightness(muted)} {Brightness(open)}");
    }

    [Fact]
    public void ADeadNote_IsGoneAtOnce()
    {
        var sound = Heard.String(Sheets.Line("@6 W x"), 6, 1);
        Assert.True(Heard.Rms(sound, 0.15, 0.25) < Heard.Rms(sound, 0, 0.02) / 300);
    }

    [Theory]
    [InlineData("5,7", 7)]
    [InlineData("7,5", 5)]
    public void ALegatoNote_GoesOnFromTheOneBefore_WithLessThanAPickWouldAdd(string music, int arrives)
    {
        var legato = Heard.String(Sheets.Line($"@3 H {music}"), 3, 2);
        var picked = Heard.String(Sheets.Line($"@3 H {music.Replace(',', ' ')}"), 3, 2);
        var hertz = new Height(55 + arrives).Hertz();
        Assert.InRange(Heard.Cents(Heard.Frequency(legato, 1.15, 0.1, hertz), hertz), -2, 2);
        double Jump(double[] s) => s[48000..48480].Max(Math.Abs) / s[47000..48000].Max(Math.Abs);
        var (unpicked, plucked) = (Jump(legato), Jump(picked));
        Assert.True(unpicked < 1.6 && plucked > unpicked, $"{unpicked:0.00} {plucked:0.00}");
    }

    [Fact]
    public void AStringPlayedAgain_ForgetsItsOldNote()
    {
        var sound = Heard.String(Sheets.Line("@6 H 0 6"), 6, 2);
        var old = new Height(40).Hertz();
        Assert.True(Heard.LevelAt(sound, 1.2, 0.3, old) < Heard.LevelAt(sound, 0.5, 0.3, old) / 100);
    }

    [Fact]
    public void TheSameSong_GivesTheSameSamples()
    {
        var song = Sheets.Line("@3 E 7+ =- x 5,7 9m 7* 5v");
        Assert.Equal(Heard.String(song, 3, 2), Heard.String(song, 3, 2));
    }

    [Theory]
    [InlineData(6, 0)]
    [InlineData(5, 12)]
    [InlineData(1, 17)]
    public void APartial_DiesAwayAsTheStringsOwnLawSays_HighOnesFirst(int number, int fret)
    {
        var song = Sheets.Line($"@{number} W {fret}");
        var sound = Heard.String(song, number, 2);
        var hertz = song.Parts[0].Neck.Sounding(new StringNumber(number), new Fret(fret)).Hertz();
        var build = StringBuild.Of(new StringNumber(number), song.Parts[0].Neck, BodyLoss.Solid);
        double Loss(int partial)
        {
            var at = partial * hertz * Math.Sqrt((1 + build.StiffnessAt(hertz) * partial * partial) / (1 + build.StiffnessAt(hertz)));
            return Math.Log(Heard.LevelAt(sound, 0.2, 0.2, at) / Heard.LevelAt(sound, 1.2, 0.2, at));
        }
        var (first, fifth) = (Loss(1), Loss(5));
        Assert.True(Math.Abs(first / build.LossAt(hertz) - 1) < 0.15, $"{first} {build.LossAt(hertz)}");
        Assert.True(fifth > first * 1.1, $"{fifth} {first}");
    }

    [Fact]
    public void AThickerString_IsFurtherFromHarmonic_AndPartialsAreStretchedAsItsStiffnessSays()
    {
        var song = Sheets.Line("@3 W 0");
        var build = StringBuild.Of(new StringNumber(3), song.Parts[0].Neck, BodyLoss.Solid);
        Assert.True(build.Stiffness > 5 * StringBuild.Of(new StringNumber(1), song.Parts[0].Neck, BodyLoss.Solid).Stiffness);
        var hertz = new Height(55).Hertz();
        var sound = Heard.String(song, 3, 1);
        var stretched = 10 * hertz * Math.Sqrt((1 + build.Stiffness * 100) / (1 + build.Stiffness));
        Assert.True(Heard.Cents(stretched, 10 * hertz) > 3, $"{stretched}");
        // Two allpasses follow the law within a few cents, where it moves the partial by nine.
        Assert.InRange(Heard.Cents(Heard.Frequency(sound, 0.1, 0.2, stretched), stretched), -4, 4);
    }
}
