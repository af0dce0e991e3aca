using System.Buffers.Binary;
using Concentus;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Output;
using Fretlore.Sound.Pieces;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Sound;

/// <summary>Opus whose packets are made piece by piece.</summary>
public sealed class OpusPieceFacts
{
    private const int Window = 240;

    // Slower, notes sound over the joins; else they begin there. Long low notes are what a restart of an encoder's filters would be heard in first.
    public static TheoryData<string, double, int, int> Sounds => new()
    {
        { "clean", 1, 2, 128_000 },
        { "clean", 0.9, 2, 128_000 },
        { "driven", 0.9, 2, 64_000 },
        { "singing", 1, 2, 64_000 },
        { "bass", 0.9, 2, 64_000 },
        { "bass", 0.9, 2, 128_000 },
        { "bass", 0.9, 1, 48_000 },
    };

    [Theory]
    [MemberData(nameof(Sounds))]
    public void WhereTwoPiecesMeet_ThereIsNoMoreLostThanByOneEncoder(string rig, double speed, int channels, int bits)
    {
        var sound = Levelled(rig, (decimal)speed);
        var opus = new OpusPieces(sound, channels, bits);
        using var file = new MemoryStream();
        opus.Write(file, OpusHeaders.NoTags, Enumerable.Range(0, opus.Count).Select(opus.Encode));
        using var atOnce = new MemoryStream();
        using (var one = new OpusOutput(atOnce, OpusHeaders.NoTags, channels, bits)) sound.Play(one.Write);
        var meant = Meant(sound, channels);
        var (lost, lostAtOnce) = (Lost(Decoded(file.ToArray(), channels), meant, channels), Lost(Decoded(atOnce.ToArray(), channels), meant, channels));
        const int join = SoundPieces.Length / Window;
        for (var at = join; at < lost.Length; at += join)
        {
            var (here, asOne) = (lost[(at - 4)..(at + 8)], lostAtOnce[(at - 4)..(at + 8)]);
            TestContext.Current.SendDiagnosticMessage(
                "{0} at {1}: at most {2:0.0000}, by one encoder {3:0.0000}, anywhere {4:0.0000}; in the mean {5:0.0000}, by one encoder {6:0.0000}",
                rig, at / 200, here.Max(w => w.Most), asOne.Max(w => w.Most), lost.Max(w => w.Most), here.Average(w => w.Mean), asOne.Average(w => w.Mean));
            Assert.True(here.Max(w => w.Most) <= Math.Max(2 * asOne.Max(w => w.Most), 0.01));
            Assert.True(here.Average(w => w.Mean) < Math.Max(2 * asOne.Average(w => w.Mean), 0.003));
        }
    }

    // The most and the mean that differs within each 5 ms.
    private static (double Most, double Mean)[] Lost(float[] heard, float[] meant, int channels)
    {
        Assert.Equal(meant.Length, heard.Length);
        return [.. heard.Zip(meant, (a, b) => (double)Math.Abs(a - b)).Chunk(channels * Window).Select(window => (window.Max(), window.Average()))];
    }

    private static LevelledSound Levelled(string rig, decimal speed)
    {
        var song = Sheets.Line(rig == "bass" ? "times 6{ @6 W 0 | @5 W 3 | }" : "times 6{ @6 Q 0 3 @5 2 0 | @6-1 H [0 2 2 1 0 0] @2 5 | }");
        song = song with { Parts = [song.Parts[0] with { Sound = rig }] };
        var mix = Assert.IsType<SoundResult.Ready>(SongMixer.Prepare(song, new SoundRequest { Speed = speed })).Mix;
        var store = new FrameStore(new MemoryStream());
        SoundFile.Render(mix, store, null, TestContext.Current.CancellationToken);
        var (stored, factors) = (new StoredMix([store], mix.Length, false), store.After(mix.Rendered, 1));
        new LevelCurve(stored, factors, new PieceMemo(false), _ => "", TestContext.Current.CancellationToken).Find(SoundFormat.Opus);
        return new LevelledSound(stored, factors, TestContext.Current.CancellationToken);
    }

    private static float[] Meant(LevelledSound sound, int channels)
    {
        var samples = new List<float>();
        sound.Play((left, right) => samples.AddRange(channels == 2 ? [(float)left, (float)right] : [(float)(0.5 * (left + right))]));
        return [.. samples];
    }

    // Packets as RFC 3533 lays them: laces of 255 bytes go on in the next.
    private static float[] Decoded(byte[] file, int channels)
    {
        OpusCodecFactory.AttemptToUseNativeLibrary = false;
        using var decoder = OpusCodecFactory.CreateDecoder((int)Heard.Rate, channels);
        var (samples, frame, packet) = (new List<float>(), new float[960 * channels], new List<byte>());
        var (number, skip, end) = (0, 0, 0L);
        for (var at = 0; at < file.Length;)
        {
            end = BinaryPrimitives.ReadInt64LittleEndian(file.AsSpan(at + 6));
            var laces = file.AsSpan(at + 27, file[at + 26]).ToArray();
            at += 27 + laces.Length;
            foreach (var lace in laces)
            {
                packet.AddRange(file.AsSpan(at, lace));
                at += lace;
                if (lace == 255) continue;
                if (number == 0) skip = BinaryPrimitives.ReadUInt16LittleEndian(packet.ToArray().AsSpan(10));
                if (number++ >= 2)
                {
                    Assert.Equal(960, decoder.Decode(packet.ToArray(), frame, 960, false));
                    samples.AddRange(frame);
                }
                packet.Clear();
            }
        }
        return [.. samples.Take((int)end * channels).Skip(skip * channels)];
    }
}
