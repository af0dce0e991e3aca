using Fretlore.Sound.Mixing;
using Fretlore.Sound.Output;
using Fretlore.Sound.Rigs;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Sound;

/// <summary>Mixes of a song.</summary>
public sealed class MixFacts
{
    private const string Band = """
        title  Test Piece
        tuning E2 A2 D3 G3 B3 E4
        tempo  Q = 120

        part rhythm "Rhythm guitar"  sound driven
        part lead   "Lead guitar"    sound singing
        part bed    "Second guitar"  sound clean

        section All
          rhythm @654 E [0 2 2] 0m 0m 0m Q [3 5 5] R | @654 W [0 2 2] |
          lead   @2 H 8+v E 5,8 Q 5v | W 3v |
          bed    @1 Q 0 3 @2 0 3 | rest |

        """;

    public static TheoryData<string> Rigs => [.. RigNames.All];

    [Fact]
    public void PartsAlone_AddUpToTheMix()
    {
        var song = Sheets.Song(Band);
        var (left, right) = Heard.Mix(song, new SoundRequest { Click = true });
        var (sumLeft, sumRight) = Heard.Mix(song, new SoundRequest { Without = [0, 1, 2], Click = true });
        for (var part = 0; part < 3; part++)
        {
            var (l, r) = Heard.Mix(song, new SoundRequest { Parts = [part] });
            for (var i = 0; i < l.Length; i++) (sumLeft[i], sumRight[i]) = (sumLeft[i] + l[i], sumRight[i] + r[i]);
        }
        var off = left.Zip(sumLeft).Concat(right.Zip(sumRight)).Max(pair => Math.Abs(pair.First - pair.Second));
        Assert.True(Heard.Decibels(off / left.Max(Math.Abs)) < -90);
    }

    [Fact]
    public void APartLeftOut_IsTheMixOfTheOthers()
    {
        var song = Sheets.Song(Band);
        Assert.Equal(Heard.Mix(song, new SoundRequest { Parts = [0, 2] }).Left, Heard.Mix(song, new SoundRequest { Without = [1] }).Left);
    }

    [Fact]
    public void ADoubleTrackedPart_StandsLeftAndRight_AndOthersOnTheirSide()
    {
        var song = Sheets.Song(Band);
        var (left, right) = Heard.Mix(song, new SoundRequest { Parts = [0] });
        Assert.InRange(Heard.Rms(left, 0, 2) / Heard.Rms(right, 0, 2), 0.8, 1.25);
        Assert.True(left.Zip(right).Max(p => Math.Abs(p.First - p.Second)) > 0.1 * left.Max(Math.Abs));
        var (bedLeft, bedRight) = Heard.Mix(song, new SoundRequest { Parts = [2] });
        Assert.True(Heard.Rms(bedLeft, 0, 2) > 1.2 * Heard.Rms(bedRight, 0, 2));
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(0.5)]
    [InlineData(1.5)]
    public void AnySpeed_IsPlayedAtThatTempo_InTheSameTune(double speed)
    {
        var song = Sheets.Line("@5 H R 12");
        var (left, _) = Heard.Mix(song, new SoundRequest { Speed = (decimal)speed, Exact = true });
        var onset = (int)Math.Round(48000 / speed);
        // The rig takes no more than a millisecond.
        Assert.True(left[..onset].Max(Math.Abs) < 1e-6);
        Assert.True(left[onset..(onset + 48)].Max(Math.Abs) > 0.05 * left.Max(Math.Abs));
        Assert.InRange(Heard.Cents(Heard.Frequency(left, 1 / speed + 0.2, 0.1, 220), 220), -2, 2);
    }

    [Fact]
    public void Bars_AreHeardAloneFromTheirStart()
    {
        var song = Sheets.Line("@6 W 0 | @5 W 0 | @4 W 0 | @3 W 0");
        var mix = ((SoundResult.Ready)SongMixer.Prepare(song, new SoundRequest { FromBar = 2, ToBar = 3 })).Mix;
        Assert.Equal(5.5, mix.Seconds, 3);
        var (left, _) = Heard.Mix(song, new SoundRequest { FromBar = 2, ToBar = 3 });
        Assert.InRange(Heard.Cents(Heard.Frequency(left, 0.2, 0.15, 110), 110), -2, 2);
    }

    [Fact]
    public void ACountIn_ClicksOneBarAndThenTheMusicBegins()
    {
        var song = Sheets.Line("@6 W 0");
        var (left, _) = Heard.Mix(song, new SoundRequest { CountIn = true, Exact = true });
        foreach (var beat in (double[])[0, 0.5, 1, 1.5]) Assert.True(Heard.Rms(left, beat, beat + 0.01) > 0.05);
        Assert.True(Heard.Rms(left, 0.45, 0.5) < 1e-4);
        var (music, _) = Heard.Mix(song, new SoundRequest { Exact = true });
        Assert.True(music[4800..9600].Zip(left[(96000 + 4800)..(96000 + 9600)], (a, b) => Math.Abs(a - b)).Max() < 1e-7);
    }

    [Fact]
    public void HowManyCores_MakesNoDifference()
    {
        var song = Sheets.Song(Band);
        List<double> On(int cores)
        {
            var heard = new List<double>();
            ((SoundResult.Ready)SongMixer.Prepare(song, new SoundRequest())).Mix.Render((l, _) => heard.AddRange(l.Span), cores);
            return heard;
        }
        Assert.Equal(On(1), On(4));
    }

    [Theory]
    [MemberData(nameof(Rigs))]
    public void ARig_IsAsLoudAsTheOthers_AndHasNoSteadyPart(string rig)
    {
        var music = rig == "bass" ? "@4 E 0 0 3 5 0 0 7 5 | @3 H 0 @2 2" : "@6-1 E [3 2 0 0 0 3] = [0 2 2 1 0 0] = Q [. 3 2 0 1 0] @3 7v | @5 E 3 5 @4 2 5 @3 4 5 @2 5v 3";
        var tuning = rig == "bass" ? "E1 A1 D2 G2" : "E2 A2 D3 G3 B3 E4";
        var song = Sheets.Song($"title T\ntuning {tuning}\ntempo Q = 100\npart solo \"Solo\" sound {rig}\nsection A\n  solo {music}\n");
        var (left, right) = Heard.Mix(song);
        var meter = new Fretlore.Sound.Loudness.LoudnessMeter();
        for (var i = 0; i < left.Length; i++) meter.Hear(left[i], right[i]);
        var loudness = meter.Integrated()!.Value;
        TestContext.Current.SendDiagnosticMessage("{0}: {1:0.0} LUFS, highest {2:0.00}", rig, loudness, left.Max(Math.Abs));
        Assert.InRange(loudness, -21, -19);
        Assert.True(Heard.Decibels(Math.Abs(left.Average())) < -70);
    }

    [Theory]
    [InlineData("drivn", "driven")]
    [InlineData("clen", "clean")]
    [InlineData("accoustic", "acoustic")]
    [InlineData("theremin", null)]
    public void ASoundThatIsNotThere_IsRefusedWithTheNearestName(string sound, string? near)
    {
        var song = Sheets.Line("@6 W 0");
        song = song with { Parts = [song.Parts[0] with { Sound = sound }] };
        var refused = Assert.IsType<SoundResult.Refused>(SongMixer.Prepare(song, new SoundRequest()));
        Assert.Contains($"\"{sound}\"", refused.Message, StringComparison.Ordinal);
        if (near is null) Assert.StartsWith("Sounds are", refused.Remedy, StringComparison.Ordinal);
        else Assert.StartsWith($"Perhaps {near} was meant.", refused.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatCannotBePlayed_IsRefused()
    {
        var song = Sheets.Line("@6 W 0");
        SoundRequest[] requests =
        [
            new() { FromBar = 2 }, new() { ToBar = 9 }, new() { Speed = 0 }, new() { Speed = -1 }, new() { Speed = 99 }, new() { Parts = [0], Without = [0] },
        ];
        Assert.All(requests, request => Assert.IsType<SoundResult.Refused>(SongMixer.Prepare(song, request)));
    }

    [Theory]
    [InlineData("Q = 1000", "E2 A2 D3 G3 B3 E4", "@6-1 Z [0 0 0 0 0 0]")]
    [InlineData("Q = 120", "B0 E1 A1 D2 G2 C3 F3 A3 D4", "@9-1 S [0 0 0 0 0 0 0 0 0]")]
    public void ManyNotesAtOnceAndFast_StayFinite(string tempo, string tuning, string slot)
    {
        var line = string.Concat(Enumerable.Repeat(slot + " ", 1)) + string.Concat(Enumerable.Repeat(slot[slot.IndexOf('[', StringComparison.Ordinal)..] + " ", (slot.Contains('Z', StringComparison.Ordinal) ? 64 : 16) - 1));
        var song = Sheets.Song($"title T\ntuning {tuning}\ntempo {tempo}\npart solo \"Solo\" sound driven\nsection A\n  solo {line}\n");
        var (left, _) = Heard.Mix(song);
        Assert.True(left.All(double.IsFinite) && left.Max(Math.Abs) is > 0.001 and < 20);
    }

    [Fact]
    public void AWaveFile_HasTheWantedLoudnessAndPeak_ByOurOwnMeter()
    {
        foreach (var bits in (int[])[16, 24])
        {
            var mix = ((SoundResult.Ready)SongMixer.Prepare(Sheets.Song(Band), new SoundRequest())).Mix;
            using var file = new MemoryStream();
            var written = SoundFile.Write(mix, new MemoryStream(), file, bits == 24 ? SoundFormat.Wave24 : SoundFormat.Wave16, cancel: TestContext.Current.CancellationToken);
            Assert.InRange(written.Loudness!.Value, -16.2, -15.8);
            file.Position = 0;
            using var reader = new NAudio.Wave.WaveFileReader(file);
            Assert.Equal((48000, 2, bits), (reader.WaveFormat.SampleRate, reader.WaveFormat.Channels, reader.WaveFormat.BitsPerSample));
            Assert.Equal(mix.Length, reader.SampleCount);
        }
    }

    [Fact]
    public void AFullDisk_IsAnIOException_AndACancelIsACancel()
    {
        var song = Sheets.Line("@6 W 0");
        SongMix Mix() => ((SoundResult.Ready)SongMixer.Prepare(song, new SoundRequest())).Mix;
        Assert.Throws<NotSupportedException>(() => SoundFile.Write(Mix(), new MemoryStream(new byte[1000], true), new MemoryStream(), SoundFormat.Wave16, cancel: TestContext.Current.CancellationToken));
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => SoundFile.Write(Mix(), new MemoryStream(), new MemoryStream(), SoundFormat.Wave16, cancel: stop.Token));
    }
}
