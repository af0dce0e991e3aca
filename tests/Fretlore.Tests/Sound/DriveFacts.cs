using System.Runtime.Intrinsics;
using Fretlore.Sound.Rigs;

namespace Fretlore.Tests.Sound;

/// <summary>What rigs do to single tones.</summary>
public sealed class DriveFacts
{
    [Theory]
    [InlineData("edge")]
    [InlineData("driven")]
    [InlineData("singing")]
    public void ADrivenTone_OfFiveKilohertz_HasNothingThatIsNotItsPartial(string name)
    {
        var chain = new RigChain(RigTable.Find(name)!, 512);
        var pairs = new Vector128<double>[48000];
        for (var i = 0; i < pairs.Length; i++) pairs[i] = Vector128.Create(0.5 * Math.Sin(2 * Math.PI * 5000 * i / Heard.Rate));
        for (var at = 0; at < pairs.Length; at += 500) chain.Run(pairs.AsSpan(at, 500));
        double[] sound = [.. pairs.Select(pair => pair[0])];
        Assert.Equal(sound, pairs.Select(pair => pair[1]));
        var tone = Heard.LevelAt(sound, 0.5, 0.4, 5000);
        // What is folded back from partial n lies at |48000 k - 5000 n|: multiples of a kilohertz, but none of 5 kHz.
        var (worst, where) = Enumerable.Range(1, 23).Where(kilohertz => kilohertz % 5 != 0)
            .Max(kilohertz => (Heard.Decibels(Heard.LevelAt(sound, 0.5, 0.4, 1000 * kilohertz) / tone), kilohertz));
        TestContext.Current.SendDiagnosticMessage("{0}: at most {1:0.0} dB, at {2} kHz", name, worst, where);
        Assert.True(worst < -60, $"{worst} dB at {where} kHz");
    }

    [Fact]
    public void GoingUpAndDownInRate_LeavesWhatIsHeardAsItWas()
    {
        var band = new HalfBand(4, 0.06);
        var (pairs, doubled) = (new Vector128<double>[9600], new Vector128<double>[19200]);
        for (var i = 0; i < pairs.Length; i++) pairs[i] = Vector128.Create(Math.Sin(2 * Math.PI * 15000 * i / Heard.Rate));
        band.Double(pairs, doubled);
        double[] twice = [.. doubled.Select(pair => pair[0])];
        // Its mirror at 33 kHz is gone; measured as if the rate had stayed, everything is at half its frequency.
        Assert.True(Heard.Decibels(Heard.LevelAt(twice, 0.1, 0.2, 16500) / Heard.LevelAt(twice, 0.1, 0.2, 7500)) < -80);
        band.Halve(doubled, pairs);
        Assert.InRange(Heard.LevelAt([.. pairs.Select(pair => pair[0])], 0.1, 0.08, 15000), 0.995, 1.005);
    }

    [Fact]
    public void Silence_StaysExactlySilent_LongAfterASound()
    {
        foreach (var rig in RigTable.All)
        {
            var chain = new RigChain(rig, 512);
            var block = new Vector128<double>[512];
            block[0] = Vector128<double>.One;
            for (var i = 0; i < 2000; i++)
            {
                chain.Run(block);
                if (i < 1999) Array.Clear(block);
            }
            Assert.All(block, value => Assert.True(value[0] == 0 || Math.Abs(value[0]) > 1e-290));
        }
    }
}
