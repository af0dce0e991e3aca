using Fretlore.Sound.Mixing;
using Fretlore.Sound.Output;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Sound;

/// <summary>Parts alone, cut from one mix.</summary>
public sealed class StemFacts
{
    // Loud hits after soft notes, so that the limiter has something to do.
    private const string Band = """
        title  Test Piece
        tuning E2 A2 D3 G3 B3 E4
        tempo  Q = 120

        part rhythm "Rhythm guitar"  sound acoustic
        part lead   "Lead guitar"    sound singing
        part low    "Bass"           sound bass
          tuning E1 A1 D2 G2

        section All
          rhythm (pp) @6-1 Q [0 2 2 1 0 0] R R (ff) [3 2 0 0 0 3]! | H. [0 2 2 1 0 0]! Q R |
          lead   (p) @2 H 8+v E 5,8 Q 5v | W 3v |
          low    (ff) @4 Q 0! R 0! 3! | W 0! |

        """;

    private const string Even = """
        title  Test Piece
        tuning E2 A2 D3 G3 B3 E4
        tempo  Q = 120

        part rhythm "Rhythm guitar"  sound driven
        part lead   "Lead guitar"    sound singing
        part low    "Second lead"    sound singing

        section All
          rhythm @654 E 0 0 0 0 0 0 0 0
          lead   @2 H 8 10
          low    @1 H 8 10

        """;

    [Fact]
    public void Stems_AddUpToTheMixWithin90Decibels_ThoughALimiterWorkedOnIt()
    {
        var files = Write(SoundFormat.Wave24);
        Assert.Equal(4, files.Length);
        var (full, stems) = (Both(files[0]), files[1..].Select(Both).ToArray());
        Assert.All(stems, stem => Assert.Equal(full.Length, stem.Length));
        var off = full.Select((value, i) => Math.Abs(value - stems.Sum(stem => stem[i]))).Max();
        TestContext.Current.SendDiagnosticMessage("stems reach {0}", string.Join(", ", stems.Select(stem => Heard.Decibels(stem.Max(Math.Abs)).ToString("0.0", System.Globalization.CultureInfo.InvariantCulture))));
        TestContext.Current.SendDiagnosticMessage("stems: {0:0.0} dB off", Heard.Decibels(off / full.Max(Math.Abs)));
        Assert.True(Heard.Decibels(off / full.Max(Math.Abs)) < -90);
        Assert.All(stems, stem => Assert.True(Heard.Decibels(stem.Max(Math.Abs)) > -30));
        // The ceiling holds for each stem too: where parts cancel each other, one alone may be higher than the mix.
        Assert.InRange(stems.Append(full).Max(sound => Heard.Decibels(sound.Max(Math.Abs))), -1.3, -1);
    }

    [Fact]
    public void TheMixAmongStems_IsTheMixAlone_WhereNothingIsTurnedDown()
    {
        var among = Both(Write(SoundFormat.Wave24, Even)[0]);
        using var alone = new MemoryStream();
        SoundFile.Write(Mix(Even), new MemoryStream(), alone, SoundFormat.Wave24, cancel: TestContext.Current.CancellationToken);
        var off = among.Zip(Both(alone.ToArray()), (a, b) => Math.Abs(a - b)).Max();
        Assert.True(Heard.Decibels(off) < -100, $"{Heard.Decibels(off)}");
    }

    [Fact]
    public void TheSameSong_GivesTheSameFiles()
    {
        var (first, second) = (Write(SoundFormat.Opus), Write(SoundFormat.Opus));
        for (var i = 0; i < first.Length; i++) Assert.Equal(first[i], second[i]);
    }

    [Fact]
    public void ADiskThatIsFull_AndAStop_AreSaidAsTheyAre()
    {
        Assert.Throws<IOException>(() => StemFiles.Write(
            Mix(), () => new FullDisk(), new MemoryStream(), Streams(), SoundFormat.Wave16, cancel: TestContext.Current.CancellationToken));
        Assert.Throws<IOException>(() => StemFiles.Write(
            Mix(), () => new MemoryStream(), new FullDisk(), Streams(), SoundFormat.Wave16, cancel: TestContext.Current.CancellationToken));
        using var stop = new CancellationTokenSource();
        Assert.ThrowsAny<OperationCanceledException>(() => StemFiles.Write(
            Mix(), () => new MemoryStream(), new MemoryStream(), Streams(), SoundFormat.Wave16, share => { if (share > 0.3) stop.Cancel(); }, cancel: stop.Token));
    }

    [Fact]
    public void Progress_GoesUpToOne()
    {
        var shares = new List<double>();
        StemFiles.Write(Mix(), () => new MemoryStream(), new MemoryStream(), Streams(), SoundFormat.Wave16, shares.Add, cancel: TestContext.Current.CancellationToken);
        Assert.Equal(shares.Order(), shares);
        Assert.InRange(shares[^1], 0.999999, 1);
    }

    private static SongMix Mix(string sheet = Band) => ((SoundResult.Ready)SongMixer.Prepare(Sheets.Song(sheet), new SoundRequest())).Mix;

    private static double[] Both(byte[] wave)
    {
        var (left, right) = Heard.Wave(wave);
        return [.. left, .. right];
    }

    private static MemoryStream[] Streams() => [new(), new(), new()];

    private static byte[][] Write(SoundFormat format, string sheet = Band)
    {
        MemoryStream[] files = [new(), .. Streams()];
        StemFiles.Write(Mix(sheet), () => new MemoryStream(), files[0], files[1..], format, cancel: TestContext.Current.CancellationToken);
        return [.. files.Select(file => file.ToArray())];
    }

    private sealed class FullDisk : MemoryStream
    {
        public override void Write(ReadOnlySpan<byte> buffer) => Write(buffer.ToArray(), 0, buffer.Length);

        public override void Write(byte[] buffer, int offset, int count)
        {
            if (Length + count > 100_000) throw new IOException("No space left on device");
            base.Write(buffer, offset, count);
        }
    }
}
