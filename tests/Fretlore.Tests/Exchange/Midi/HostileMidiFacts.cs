using Fretlore.Exchange.Import;
using Fretlore.Exchange.Midi;
using Fretlore.Exchange.Sheets;
using Fretlore.Tests.Exchange.Import;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Exchange.Midi;

/// <summary>MIDI files that were damaged, by accident or with intent. FRETLORE_SOAK gives the number of files for a longer run.</summary>
public sealed class HostileMidiFacts
{
    private const int UsualFiles = 1500;

    [Theory]
    [InlineData("4D546864", "breaks off in its header")]
    [InlineData("4D546864 FFFFFFFF 0001 0001 01E0", "a length that can't be")]
    [InlineData("4D546864 00000006 0002 0001 01E0 4D54726B 00000004 00FF2F00", "is of format 2")]
    [InlineData("4D546864 00000006 0001 0001 0000 4D54726B 00000004 00FF2F00", "no ticks")]
    [InlineData("4D546864 00000006 0001 0001 FF01 4D54726B 00000004 00FF2F00", "the standard does not know")]
    [InlineData("4D546864 00000006 0001 0003 01E0 4D54726B 00000004 00FF2F00", "it says it has 3 tracks, and holds 1")]
    [InlineData("4D546864 00000006 0001 0001 01E0 4D54726B 7FFFFFFF 00FF2F00", "says it has 2147483647 bytes, and 4 are left")]
    [InlineData("4D546864 00000006 0001 0001 01E0 4D54726B 00000004 00FF2F00", "holds no notes")]
    [InlineData("4D546864 00000006 0001 0001 01E0 4D54726B 00000008 0090 3C64 00FF2FFF", "byte 4 of track 1")]
    [InlineData("4D546864 00000006 0001 0001 01E0 4D54726B 00000004 003C643C", "byte 0 of track 1")]
    [InlineData("4D546864 00000006 0001 0001 01E0 4D54726B 00000008 00FF03FFFFFF7F41", "byte 0 of track 1")]
    [InlineData("4D546864 00000006 0001 0001 01E0 4D54726B 00000006 FFFFFFFFFF00", "byte 0 of track 1")]
    [InlineData("4D546864 00000006 0001 0001 01E0 4D54726B 00000004 00F1F1F1", "byte 0 of track 1")]
    [InlineData("52494646", "does not begin as a MIDI file does")]
    public void AFileThatCantBe_IsRefusedWithOneReason(string hex, string reason) =>
        Assert.Contains(reason, Assert.IsType<ImportResult.Refused>(MidiReader.Read(Convert.FromHexString(hex.Replace(" ", "", StringComparison.Ordinal)))).Reason, StringComparison.Ordinal);

    [Fact]
    public void EndlessRunningStatus_IsRefused()
    {
        // One status, and then nothing but data: a note at each tick, for megabytes.
        var track = new List<byte> { 0x00, 0x90, 60, 100 };
        for (var i = 0; i < 300_000; i++) track.AddRange([0x01, (byte)(i % 100), (byte)(i % 2 * 100)]);
        Assert.IsType<ImportResult.Refused>(MidiReader.Read(OneTrack([.. track, .. Enumerable.Repeat(new byte[] { 0, 61, 1, 0, 62, 1 }, 200_000).SelectMany(b => b)])));
    }

    [Fact]
    public void SilenceForever_IsRefused() => Assert.Contains(
        "more bars than are taken",
        Assert.IsType<ImportResult.Refused>(MidiReader.Read(OneTrack([0x00, 0x90, 60, 100, 0xFF, 0xFF, 0xFF, 0x7F, 0x80, 60, 0, 0xFF, 0xFF, 0xFF, 0x7F, 0x90, 61, 1]))).Reason,
        StringComparison.Ordinal);

    [Fact]
    public void ADamagedFile_IsReadOrRefused_AndWhatIsReadCanBeWritten()
    {
        var seeds = DemoSongs.Names.Select(n => Written.Midi(DemoSongs.Load(n.Data))).Append(Written.Midi(StudySongs.Plain())).Append(Written.Midi(StudySongs.Legato())).ToList();
        var (made, refused, invalid, slowest) = (0, 0, 0, new Slowest());
        Parallel.For(0, Soak.Files(UsualFiles), new ParallelOptions { MaxDegreeOfParallelism = 2 }, number =>
        {
            var random = new Random(number);
            // The small ones are quickly read: most files are of them.
            var seed = seeds[random.Next(100) == 0 ? random.Next(seeds.Count) : seeds.Count - 1 - random.Next(2)];
            var file = random.Next(4) == 0 ? DamagedBytes.Of(seed, random) : DamagedTrack(seed, random);
            var result = slowest.Of(() => MidiReader.Read(file));
            if (result is ImportResult.Made song)
            {
                Interlocked.Increment(ref made);
                if (number < UsualFiles && Fretlore.Tests.Songs.Sheets.Read(SheetWriter.Write(song.Song).Text).HasErrors) Interlocked.Increment(ref invalid);
            }
            else
            {
                Interlocked.Increment(ref refused);
                Assert.NotEmpty(((ImportResult.Refused)result).Reason);
            }
        });
        TestContext.Current.TestOutputHelper?.WriteLine($"{made} made, {refused} refused, {invalid} sheets with errors, the slowest took {slowest.Milliseconds} ms.");
        Assert.True(made > Soak.Files(UsualFiles) / 10 && refused > Soak.Files(UsualFiles) / 10, $"{made} made, {refused} refused.");
        Assert.True(invalid == 0, $"{invalid} of {made} sheets have errors, {refused} files were refused.");
    }

    // One track is damaged, and says its new length: what is within it gets read.
    private static byte[] DamagedTrack(byte[] file, Random random)
    {
        var starts = new List<int>();
        for (var at = 14; at < file.Length; at += 8 + (file[at + 5] << 16 | file[at + 6] << 8 | file[at + 7])) starts.Add(at);
        var track = starts[random.Next(starts.Count)];
        var length = file[track + 5] << 16 | file[track + 6] << 8 | file[track + 7];
        var damaged = DamagedBytes.Of(file[(track + 8)..(track + 8 + length)], random);
        return [.. file[..(track + 4)], 0, (byte)(damaged.Length >> 16 & 0xFF), (byte)(damaged.Length >> 8 & 0xFF), (byte)(damaged.Length & 0xFF), .. damaged, .. file[(track + 8 + length)..]];
    }

    private static byte[] OneTrack(byte[] events) =>
        [.. "MThd"u8, 0, 0, 0, 6, 0, 1, 0, 1, 1, 0xE0, .. "MTrk"u8, (byte)(events.Length >> 24), (byte)(events.Length >> 16 & 0xFF), (byte)(events.Length >> 8 & 0xFF), (byte)(events.Length & 0xFF), .. events];
}
