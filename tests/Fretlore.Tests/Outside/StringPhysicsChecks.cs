using Fretlore.Guitar;
using Fretlore.Sound.Strings;
using Fretlore.Tests.Songs;
using Fretlore.Tests.Sound;

namespace Fretlore.Tests.Outside;

/// <summary>What is published about real strings, held against ours.</summary>
public sealed class StringPhysicsChecks
{
    private static readonly Neck Bass = new(Tuning.TryParse("B0 E1 A1 D2 G2", out var five) ? five : Tuning.Standard, ScaleLength: 864);

    // J. A. Kemp, On inharmonicity in bass guitar strings, SN Applied Sciences 2 (2020) 636: a five-string bass's B0 is about 100 cents sharp at
    // its 10th partial when stopped at the 12th fret, and at its 6th when stopped at the 21st; open it is nearly harmonic.
    [Theory]
    [InlineData(12, 10, 70, 130)]
    [InlineData(21, 6, 70, 130)]
    [InlineData(0, 10, 0, 40)]
    public void ABassLowestString_IsAsInharmonicAsMeasured(int fret, int partial, double least, double most)
    {
        var build = StringBuild.Of(new StringNumber(5), Bass, BodyLoss.Solid);
        var b = build.StiffnessAt(build.OpenHertz * Math.Pow(2, fret / 12.0));
        var sharp = Heard.Cents(Math.Sqrt((1 + b * partial * partial) / (1 + b)), 1);
        TestContext.Current.SendDiagnosticMessage("fret {0}: partial {1} is {2:0} cents sharp", fret, partial, sharp);
        Assert.InRange(sharp, least, most);
    }

    // H. Fastl and F. Völk, Inharmonicity of Sounds from Electric Guitars, ICMPC 10 (2008): wound low strings are further from harmonic than
    // the highest, and a plain G3 further than a wound D3.
    [Fact]
    public void LowStringsAndAPlainThird_AreTheInharmonicOnesOfAGuitar()
    {
        double Of(int number) => StringBuild.Of(new StringNumber(number), new Neck(Tuning.Standard), BodyLoss.Solid).Stiffness;
        TestContext.Current.SendDiagnosticMessage("B of strings 6 to 1: {0}", string.Join(", ", Enumerable.Range(1, 6).Reverse().Select(n => Of(n).ToString("0.0e0", System.Globalization.CultureInfo.InvariantCulture))));
        Assert.True(Of(6) > Of(1) && Of(5) > Of(1));
        Assert.True(Of(3) > Of(4));
    }

    [Fact]
    public void WhatIsHeard_FollowsTheStiffnessOfTheString()
    {
        // The bass's B0 at its 12th fret, as it comes out of the loop.
        var song = Sheets.Song("title T\ntuning B0 E1 A1 D2 G2\nscale-length 34 in\ntempo Q = 60\nsection A\n  @5 W 12\n");
        var sound = Heard.String(song, 5, 3);
        var build = StringBuild.Of(new StringNumber(5), song.Parts[0].Neck, BodyLoss.Solid);
        var hertz = build.OpenHertz * 2;
        var b = build.StiffnessAt(hertz);
        double At(int partial) => partial * hertz * Math.Sqrt((1 + b * partial * partial) / (1 + b));
        var cents = Heard.Cents(Heard.Frequency(sound, 0.3, 0.4, At(10)), 10 * hertz);
        TestContext.Current.SendDiagnosticMessage("partial 10 is heard {0:0} cents sharp, by the law {1:0}", cents, Heard.Cents(At(10), 10 * hertz));
        Assert.InRange(cents, 60, 140);
    }
}
