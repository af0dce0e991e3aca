using System.Globalization;
using System.Text.RegularExpressions;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Output;
using Fretlore.Tests.Songs;
using Fretlore.Tests.Sound;

namespace Fretlore.Tests.Outside;

/// <summary>Our sound files measured by programs that are not ours: ffmpeg's EBU R 128 meter and aubio.</summary>
public sealed class SoundMeasureChecks
{
    [Theory]
    [MemberData(nameof(DemoSongs.Names), MemberType = typeof(DemoSongs))]
    public void ADemoSong_IsAtMinus16Lufs_WithItsPeaksUnderMinus1(string name)
    {
        using var file = Written(DemoSongs.Load(name), new SoundRequest { FromBar = 1, ToBar = 4 });
        var report = OutsideProgram.Run(
            "ffmpeg", "-v", "error", "-i", file.Path, "-af", "ebur128=peak=true:metadata=1,ametadata=mode=print:file=-", "-f", "null", "-");
        var loudness = Last(report, "lavfi.r128.I");
        var peak = Numbers(report, @"lavfi.r128.true_peaks_ch\d").Max();
        TestContext.Current.SendDiagnosticMessage("{0}: {1:0.00} LUFS, true peak {2:0.00} dB", name, loudness, Heard.Decibels(peak));
        Assert.InRange(loudness, -16.5, -15.5);
        Assert.True(Heard.Decibels(peak) <= -1, $"{Heard.Decibels(peak)} dBTP");
    }

    [Fact]
    public void AnOpusFile_IsReadByAnotherDecoder_AsLongAndAsLoud_WithItsTitle()
    {
        var song = DemoSongs.Load("salt-furnace.lore");
        var request = new SoundRequest { FromBar = 1, ToBar = 4 };
        using var file = Written(song, request, SoundFormat.Opus);
        var report = OutsideProgram.Run(
            "ffmpeg", "-v", "error", "-xerror", "-i", file.Path, "-af", "ebur128=peak=true:metadata=1,ametadata=mode=print:file=-", "-f", "null", "-");
        Assert.InRange(Last(report, "lavfi.r128.I"), -16.5, -15.5);
        Assert.True(Heard.Decibels(Numbers(report, @"lavfi.r128.true_peaks_ch\d").Max()) <= -1);
        var described = OutsideProgram.Run("ffprobe", "-v", "error", "-show_entries", "stream=codec_name,duration:stream_tags=title", "-of", "flat", file.Path);
        Assert.Contains("codec_name=\"opus\"", described, StringComparison.Ordinal);
        Assert.Contains(song.Info.Title, described, StringComparison.Ordinal);
        var decoded = OutsideProgram.Run("ffmpeg", "-v", "error", "-i", file.Path, "-af", "astats=metadata=1,ametadata=mode=print:file=-", "-f", "null", "-");
        var mix = Assert.IsType<SoundResult.Ready>(SongMixer.Prepare(song, request)).Mix;
        Assert.Equal(mix.Length, Last(decoded, "lavfi.astats.Overall.Number_of_samples"));
    }

    [Theory]
    [InlineData(SoundFormat.Wave16)]
    [InlineData(SoundFormat.Opus)]
    public void TitleArtistAndSections_AreReadByAnotherProgram(SoundFormat format)
    {
        var song = DemoSongs.Load("kestrel-over-slate.lore");
        using var file = Written(song, new SoundRequest { Speed = 3, Parts = [0] }, format);
        var described = OutsideProgram.Run("ffprobe", "-v", "error", "-show_entries", "format_tags:stream_tags:chapter=start_time:chapter_tags", "-of", "flat", file.Path);
        Assert.Contains($"\"{song.Info.Title}: Lead guitar, 300%\"", described, StringComparison.Ordinal);
        Assert.Contains($"\"{song.Info.Artist}\"", described, StringComparison.Ordinal);
        Assert.Contains(song.Info.Rights!, described, StringComparison.Ordinal);
        var marks = Assert.IsType<SoundResult.Ready>(SongMixer.Prepare(song, new SoundRequest { Speed = 3, Parts = [0] })).Mix.Marks;
        Assert.Equal(6, marks.Length);
        if (format == SoundFormat.Opus)
        {
            var starts = Regex.Matches(described, "start_time=\"(.+)\"").Select(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)).ToList();
            Assert.Equal(marks.Select(m => Math.Round(m.Sample / 48000.0, 3)), starts.Select(t => Math.Round(t, 3)));
            Assert.All(marks, mark => Assert.Contains($"title=\"{mark.Name}\"", described, StringComparison.Ordinal));
        }
        else
        {
            // ffmpeg leaves cue points out: NAudio reads them.
            using var reader = new NAudio.Wave.WaveFileReader(file.Path);
            var cues = reader.Chunks.Read(NAudio.Wave.CueListInterpreter.Instance)!;
            Assert.Equal(marks.Select(m => ((int)m.Sample, m.Name)), Enumerable.Range(0, cues.Count).Select(i => (cues[i].Position, cues[i].Label)));
        }
    }

    [Fact]
    public void AnOpusLoop_DecodesToExactlyItsLength_AndItsSeamIsNoWorseThanElsewhere()
    {
        var song = DemoSongs.Load("salt-furnace.lore");
        var request = new SoundRequest { Riff = "furnace", Speed = 0.8m, Loop = true };
        using var file = Written(song, request, SoundFormat.Opus);
        using var decoded = new TemporaryFile(".raw", []);
        OutsideProgram.Run("ffmpeg", "-v", "error", "-y", "-i", file.Path, "-f", "f32le", decoded.Path);
        var samples = System.Runtime.InteropServices.MemoryMarshal.Cast<byte, float>(File.ReadAllBytes(decoded.Path)).ToArray();
        var mix = Assert.IsType<SoundResult.Ready>(SongMixer.Prepare(song, request)).Mix;
        Assert.Equal(2 * mix.Length, samples.Length);
        for (var side = 0; side < 2; side++)
        {
            var one = samples.Where((_, i) => i % 2 == side).ToArray();
            var elsewhere = Enumerable.Range(1, one.Length - 1).Max(i => Math.Abs(one[i] - one[i - 1]));
            TestContext.Current.SendDiagnosticMessage("seam {0:0.0000}, elsewhere up to {1:0.0000}", Math.Abs(one[0] - one[^1]), elsewhere);
            Assert.True(Math.Abs(one[0] - one[^1]) < elsewhere / 2);
        }
    }

    [Fact]
    public void NoRecording_HasASteadyPart()
    {
        using var file = Written(DemoSongs.Load("salt-furnace.lore"), new SoundRequest { FromBar = 1, ToBar = 4 });
        var report = OutsideProgram.Run("ffmpeg", "-v", "error", "-i", file.Path, "-af", "astats=metadata=1,ametadata=mode=print:file=-", "-f", "null", "-");
        foreach (var steady in (double[])[Last(report, "lavfi.astats.1.DC_offset"), Last(report, "lavfi.astats.2.DC_offset")])
        {
            Assert.True(Heard.Decibels(Math.Abs(steady)) < -70, $"{steady}");
        }
    }

    [Fact]
    public void Onsets_AreHeardByFfmpegWithinAMillisecondOfTheScore()
    {
        // One short note every two seconds: ffmpeg says when silence ends.
        var song = Sheets.Line("times 6{ @5 E 3' R Q R H R | }");
        song = song with { Parts = [song.Parts[0] with { Sound = "bass" }] };
        using var file = Written(song, new SoundRequest { Exact = true });
        var report = OutsideProgram.Run("ffmpeg", "-v", "error", "-i", file.Path, "-af", "silencedetect=noise=-45dB:d=0.3,ametadata=mode=print:file=-", "-f", "null", "-");
        var ends = Numbers(report, "lavfi.silence_end").ToList();
        Assert.Equal(5, ends.Count);
        Assert.All(ends.Select((at, i) => 1000 * (at - 2 * (i + 1))), off => Assert.InRange(off, -0.05, 1));
        TestContext.Current.SendDiagnosticMessage("onsets: at most {0:0.00} ms late", ends.Select((at, i) => 1000 * (at - 2 * (i + 1))).Max());
    }

    [Fact]
    public void Aubio_HearsAWholeStepBendArrive()
    {
        using var file = Written(Sheets.Line("@3 W 7+"), new SoundRequest { Exact = true });
        var report = OutsideProgram.Run("aubiopitch", "-p", "yinfft", "-B", "4096", "-H", "512", "-u", "Hz", "-i", file.Path);
        double Median(double from, double to)
        {
            var heard = report.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split(' ').Select(w => double.Parse(w, CultureInfo.InvariantCulture)).ToArray())
                .Where(line => line[0] > from && line[0] < to).Select(line => line[1]).Order().ToList();
            return heard[heard.Count / 2];
        }
        var cents = Heard.Cents(Median(0.8, 1.8), 293.665 * Math.Pow(2, 2 / 12.0));
        TestContext.Current.SendDiagnosticMessage("whole-step bend: {0:0.00} cents off", cents);
        Assert.InRange(cents, -3, 3);
    }

    [Fact]
    public void Sox_ReadsTheWaveFile_AsLongAsItShouldBe_WithoutClipping()
    {
        var song = DemoSongs.Load("lanterns-on-the-weir.lore");
        using var file = Written(song, new SoundRequest { FromBar = 1, ToBar = 4 });
        var mix = Assert.IsType<SoundResult.Ready>(SongMixer.Prepare(song, new SoundRequest { FromBar = 1, ToBar = 4 })).Mix;
        Assert.Equal(mix.Length, long.Parse(OutsideProgram.Run("soxi", "-s", file.Path), CultureInfo.InvariantCulture));
        Assert.Equal("48000", OutsideProgram.Run("soxi", "-r", file.Path).Trim());
    }

    [Theory]
    [InlineData(6, 0, 82.407)] // ISO 16 and equal temperament.
    [InlineData(5, 0, 110.0)]
    [InlineData(4, 7, 220.0)]
    [InlineData(1, 0, 329.628)]
    [InlineData(1, 17, 880.0)]
    public void Aubio_HearsThePitchThatIsWritten(int number, int fret, double hertz)
    {
        using var file = Written(Sheets.Line($"@{number} W {fret}"), new SoundRequest());
        var report = OutsideProgram.Run("aubiopitch", "-p", "yinfft", "-B", hertz < 500 ? "8192" : "4096", "-H", "1024", "-u", "Hz", "-i", file.Path);
        var heard = report.Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(line => line.Split(' ').Select(word => double.Parse(word, CultureInfo.InvariantCulture)).ToArray())
            .Where(line => line[0] is > 0.4 and < 1.6).Select(line => line[1]).Order().ToList();
        var cents = Heard.Cents(heard[heard.Count / 2], hertz);
        TestContext.Current.SendDiagnosticMessage("string {0}, fret {1}: {2:0.00} cents", number, fret, cents);
        Assert.InRange(cents, -5, 5); // As near as aubio itself reads such a tone.
    }

    private static TemporaryFile Written(Fretlore.Score.Song song, SoundRequest request, SoundFormat format = SoundFormat.Wave16)
    {
        var mix = Assert.IsType<SoundResult.Ready>(SongMixer.Prepare(song, request)).Mix;
        using var output = new MemoryStream();
        SoundFile.Write(mix, new MemoryStream(), output, format, cancel: TestContext.Current.CancellationToken);
        return new TemporaryFile(format == SoundFormat.Opus ? ".opus" : ".wav", output.ToArray());
    }

    private static double Last(string report, string key) => Numbers(report, Regex.Escape(key)).Last();

    private static IEnumerable<double> Numbers(string report, string key) => Regex.Matches(report, $"^{key}=(.+)$", RegexOptions.Multiline)
        .Select(match => double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture));
}
