using Fretlore.Sound.Mixing;
using Fretlore.Sound.Output;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Sound;

/// <summary>Sounds that are played round and round.</summary>
public sealed class LoopFacts
{
    private const string Band = """
        title  Test Piece
        tuning E2 A2 D3 G3 B3 E4
        tempo  Q = 126

        part rhythm "Rhythm guitar"  sound driven
        part lead   "Lead guitar"    sound singing
        part bed    "Second guitar"  sound acoustic

        section All
          rhythm @654 E [0 2 2] 0m 0m 0m Q [3 5 5] Q [0 2 2] |
          lead   @2 H 8+v E 5,8 Q 5v |
          bed    @6-1 let{ Q [0 2 2 1 0 0] = [3 2 0 0 0 3] = } |

        """;

    [Fact]
    public void ALoop_IsExactlyAsLongAsItsBars_AtEachSpeed()
    {
        foreach (var speed in (decimal[])[1, 0.6m, 0.87m])
        {
            var mix = Loop(Band, new SoundRequest { Loop = true, Speed = speed });
            Assert.Equal(Math.Round(4 * 60 / (126 * (double)speed) * 48000), mix.Length);
            Assert.Equal(mix.Length, Samples(mix).Left.Length);
        }
    }

    [Theory]
    [InlineData(1.0, 0)]
    [InlineData(0.6, 1)]
    [InlineData(1.5, 2)]
    public void AtTheSeam_NothingJumpsFurtherThanElsewhere(double speed, int? part)
    {
        var (left, right) = Samples(Loop(Band, new SoundRequest { Loop = true, Speed = (decimal)speed, Parts = [part!.Value] }));
        foreach (var side in (double[][])[left, right])
        {
            double Jump(int at) => Math.Abs(side[at % side.Length] - side[at - 1]);
            var elsewhere = Enumerable.Range(1, side.Length - 1).Max(Jump);
            var atSeam = Jump(side.Length);
            // And what bends there bends as it does elsewhere: no kink that the ear takes for a click.
            double Bend(int at) => Math.Abs(side[(at + 1) % side.Length] - 2 * side[at % side.Length] + side[at - 1]);
            var bends = Enumerable.Range(1, side.Length - 2).Max(Bend);
            TestContext.Current.SendDiagnosticMessage("part {0} at {1}: jump {2:0.0000}, elsewhere up to {3:0.0000}; bend {4:0.0000}, {5:0.0000}", part, speed, atSeam, elsewhere, Bend(side.Length), bends);
            Assert.True(atSeam <= elsewhere && Bend(side.Length) <= bends && Bend(side.Length - 1) <= bends);
        }
    }

    [Fact]
    public void WhatRingsOnAtTheEnd_IsHeardAtTheStart()
    {
        // A soft start after a loud end: alone it begins in silence, in the loop with the room and the damped string still in the air.
        const string music = "@1 (pp) Q R 12 (ff) @6 H 0!";
        var song = Sheets.Line(music);
        var once = Heard.Mix(song, new SoundRequest { Exact = true }).Left;
        var (left, _) = Samples(Loop(song, new SoundRequest { Loop = true }));
        Assert.True(once[..2400].Max(Math.Abs) < 1e-9);
        Assert.True(left[..2400].Max(Math.Abs) > 0.01 * left.Max(Math.Abs));
        Assert.True(left[..2400].Max(Math.Abs) < 2 * left[^2400..].Max(Math.Abs));
    }

    [Fact]
    public void ALoop_SoundsAsTheSongWithTheRepeatWritten()
    {
        // The third time round, before its level is set and its ends are joined.
        var thrice = Heard.Mix(Sheets.Line("times 3{ @6 Q 0 3 @5 2 0 | }"), new SoundRequest { Exact = true }).Left;
        var loop = Heard.Mix(Sheets.Line("@6 Q 0 3 @5 2 0"), new SoundRequest { Loop = true, Exact = true }).Left;
        var (second, rest) = (thrice[192000..288000], loop[..96000]);
        var off = rest.Zip(second, (a, b) => Math.Abs(a - b)).Max();
        Assert.True(Heard.Decibels(off / rest.Max(Math.Abs)) < -60, $"{Heard.Decibels(off / rest.Max(Math.Abs)):0.0} dB");
    }

    [Fact]
    public void AClick_FallsOnEachBeatOfTheLoop()
    {
        var (left, _) = Samples(Loop(Sheets.Line("@6 W R"), new SoundRequest { Loop = true, Click = true, Without = [0] }));
        foreach (var beat in (double[])[0, 0.5, 1, 1.5])
        {
            Assert.True(Heard.Rms(left, beat, beat + 0.01) > 20 * Heard.Rms(left, beat + 0.4, beat + 0.49));
        }
    }

    [Fact]
    public void StemsOfALoop_AddUpToIt_AndAreAsLong()
    {
        MemoryStream[] files = [new(), new(), new(), new()];
        var mix = Loop(Band, new SoundRequest { Loop = true });
        StemFiles.Write(mix, () => new MemoryStream(), files[0], files[1..], SoundFormat.Wave24, cancel: TestContext.Current.CancellationToken);
        var sounds = files.Select(file => Heard.Wave(file.ToArray())).ToArray();
        Assert.All(sounds, sound => Assert.Equal(mix.Length, sound.Left.Length));
        var off = sounds[0].Left.Select((value, i) => Math.Abs(value - sounds[1..].Sum(stem => stem.Left[i]))).Max();
        Assert.True(Heard.Decibels(off / sounds[0].Left.Max(Math.Abs)) < -90);
    }

    [Fact]
    public void ALoopThatIsCountedInOrTooShort_IsRefused()
    {
        Assert.IsType<SoundResult.Refused>(SongMixer.Prepare(Sheets.Song(Band), new SoundRequest { Loop = true, CountIn = true }));
        var short16 = Sheets.Song("title T\ntuning E2 A2 D3 G3 B3 E4\nmeter 1/16\ntempo Q = 400\nsection A\n  @6 S 0\n");
        Assert.IsType<SoundResult.Refused>(SongMixer.Prepare(short16, new SoundRequest { Loop = true }));
    }

    private static SongMix Loop(string sheet, SoundRequest request) => Loop(Sheets.Song(sheet), request);

    private static SongMix Loop(Fretlore.Score.Song song, SoundRequest request) => Assert.IsType<SoundResult.Ready>(SongMixer.Prepare(song, request)).Mix;

    private static (double[] Left, double[] Right) Samples(SongMix mix)
    {
        using var file = new MemoryStream();
        SoundFile.Write(mix, new MemoryStream(), file, SoundFormat.Wave24, cancel: TestContext.Current.CancellationToken);
        return Heard.Wave(file.ToArray());
    }
}
