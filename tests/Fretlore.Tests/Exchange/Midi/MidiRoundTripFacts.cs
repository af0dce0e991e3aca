using System.Collections.Concurrent;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.Midi;
using Fretlore.Exchange.Sheets;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Tests.Songs;
using NAudio.Midi;
using Xunit.Sdk;

namespace Fretlore.Tests.Exchange.Midi;

/// <summary>A song written as MIDI, read, written as a sheet and played again: the same pitches at the same times.</summary>
public sealed class MidiRoundTripFacts
{
    private const int TicksPerQuarter = 960;

    [Theory]
    [MemberData(nameof(DemoSongs.Names), MemberType = typeof(DemoSongs))]
    public void ADemoSong_ThroughMidi_HasTheSamePitchesAtTheSameTicks(string name) => SameThroughMidi(DemoSongs.Load(name), 0);

    /// <remarks>Our files say in words how each bar is written: rolls, rakes, grace notes among crossing lines, tremolo and tuplets over swung pairs come back to the tick.</remarks>
    [Fact]
    public void AGeneratedSong_ThroughMidi_HasTheSamePitchesAtTheSameTicks() => SheetGen.Valid(Soak.Songs(200), Soak.Songs(200) * 2 / 3, song => SameThroughMidi(song, 0));

    /// <remarks>Three and four guitars have more strings than there are channels: some share one, and come back by the keys that words say.</remarks>
    [Fact]
    public void AGeneratedSong_OfMoreStringsThanChannels_HasTheSamePitchesAtTheSameTicks() =>
        SheetGen.Valid(Soak.Songs(60), Soak.Songs(60) / 3, song => SameThroughMidi(song, 0), SheetGen.Crowded);

    [Fact]
    public void ThreeGuitars_ComeBackOnTheirStrings()
    {
        var line = string.Join(" ", Enumerable.Repeat("Q [0 2 2 1 0 0] @2 E 5+ 3 let{ 3@1 5@3 Q 0@6 } |", 2));
        var song = Fretlore.Tests.Songs.Sheets.Song(
            "title Ash\ntuning E2 A2 D3 G3 B3 E4\ntempo Q = 90\n" + string.Concat(Enumerable.Range(1, 3).Select(n => $"part gtr{n} \"Guitar {n}\"\n"))
            + "section A\n" + string.Concat(Enumerable.Range(1, 3).Select(n => $"  gtr{n} {line.Replace("@2 ", $"@{n + 1} ", StringComparison.Ordinal)}\n")));
        var made = Assert.IsType<ImportResult.Made>(MidiReader.Read(Written.Midi(song)));
        Assert.Equal(Places(song), Places(made.Song));

        static IEnumerable<(string, int, int)> Places(Song song) => song.Parts.SelectMany(p => p.Bars.SelectMany(b => b.Notes).Select(n => (p.Title, n.String.Value, n.Fret.Number)));
    }

    [Fact]
    public void UnisonsOfStringsThatShareAChannel_ComeBackOnBoth()
    {
        var song = new SongBuilder();
        for (var part = 0; part < 15; part++)
            song.Part("part " + part).Bar(SongBuilder.Play(ValueBase.Half, (2, 5), (1, 0)), SongBuilder.Play(ValueBase.Half, (6, 0)));
        var made = Assert.IsType<ImportResult.Made>(MidiReader.Read(Written.Midi(song.Build())));
        Assert.All(made.Song.Parts, p => Assert.Equal([(2, 5), (1, 0), (6, 0)], p.Bars[0].Notes.Select(n => (n.String.Value, n.Fret.Number))));
    }

    [Fact]
    public void ANoteThatWasMovedSince_CountsMoreThanTheWords()
    {
        var song = Fretlore.Tests.Songs.Sheets.Line("@3 Q 5 7 9 7 |");
        using var stream = new MemoryStream(Written.Midi(song));
        var file = new MidiFile(stream, strictChecking: true);
        // The note of the third quarter, from start to end, an eighth later; and the last one, a step higher.
        foreach (var note in file.Events[1].OfType<NoteEvent>().Where(n => n.AbsoluteTime is 1920 or 2880 && n.NoteNumber == 64)) note.AbsoluteTime += 480;
        foreach (var note in file.Events[1].OfType<NoteEvent>().Where(n => n.AbsoluteTime >= 2880 && n.NoteNumber == 62)) note.NoteNumber = 60;
        var made = Assert.IsType<ImportResult.Made>(MidiReader.Read(MidiReaderFacts.File(1, [.. file.Events.Select(t => t.Where(e => !MidiEvent.IsEndTrack(e)).ToList())])));
        // Written anew with half as many ticks a quarter, all of it is played twice as slowly.
        Assert.Equal([(60, 0L), (60, 5760L), (62, 1920L), (64, 4800L)], Heard(made.Song).Select(k => (k.Pitch, k.Tick)));
    }

    /// <remarks>
    /// Without the words a file does not tell a chord that is rolled within a 16th from quick notes: songs, which have many, are compared without. Triplets
    /// that cut across swung pairs are on no value: there a note may be moved by a 32nd, and strokes of a tremolo that do are left out. Known gap:
    /// grace notes among lines that cross, which these songs are full of, come back as quick notes near their place in some songs (measured: 9 of 1,482 differ in all).
    /// </remarks>
    [Fact]
    public void AGeneratedSong_ThroughMidiWithoutWords_HasTheSamePitchesAtTheSameTimes_ButForOneInFifty()
    {
        var (other, all) = (new ConcurrentBag<string>(), 0);
        SheetGen.Valid(Soak.Songs(100), Soak.Songs(100) * 2 / 3, song =>
        {
            Interlocked.Increment(ref all);
            try
            {
                SameThroughMidi(Unrolled(song, IsSwung(song)), IsSwung(song) ? TicksPerQuarter / 8 : 0, hasWords: false);
            }
            catch (XunitException e)
            {
                other.Add(e.Message);
            }
        });
        // About six in a thousand differ: three in a small sample are chance.
        Assert.True(other.Count <= Math.Max(3, all / 50), $"{other.Count} of {all}:\n" + string.Join('\n', other));
    }

    private static bool IsSwung(Song song) => song.Bars.Any(b => b.FeelChange is { } feel && feel != Feel.Straight);

    private static void SameThroughMidi(Song song, long tolerance, bool hasWords = true)
    {
        if (!song.Parts.Any(p => p.Bars.Any(b => b.Notes.Any()))) return;
        var made = Assert.IsType<ImportResult.Made>(MidiReader.Read(hasWords ? Written.Midi(song) : WithoutWords(Written.Midi(song))));
        var sheet = SheetWriter.Write(made.Song);
        var (expected, read) = (Heard(song), Heard(Fretlore.Tests.Songs.Sheets.Song(sheet.Text)));
        if (!expected.Select(k => (k.Part, k.Pitch)).SequenceEqual(read.Select(k => (k.Part, k.Pitch))))
            Assert.Fail($"Missing: {string.Join(' ', expected.Except(read))}\nAdded: {string.Join(' ', read.Except(expected))}\n{sheet.Text}\n{string.Join('\n', made.Remarks)}");
        foreach (var (should, got) in expected.Zip(read))
            Assert.True(Math.Abs(should.Tick - got.Tick) <= tolerance, $"{should} is played at {got.Tick}.\n{sheet.Text}");
    }

    // Words of another kind of the same length, which nothing reads.
    private static byte[] WithoutWords(byte[] file)
    {
        for (var at = file.AsSpan().IndexOf("Written: "u8); at >= 0; at = file.AsSpan().IndexOf("Written: "u8)) file[at] = (byte)'_';
        return file;
    }

    /// <summary>What is struck when, for each part that plays and each pitch; a key that is struck twice at once is struck once.</summary>
    private static List<(string Part, int Pitch, long Tick)> Heard(Song song) =>
        [.. Performer.Play(song).Parts.SelectMany(p => p.Notes.Select(n => (p.Part.Title, n.Height.Midi, (long)Math.Round(n.Onset.ToDouble() * TicksPerQuarter)))).Distinct().Order()];

    private static Song Unrolled(Song song, bool withoutTremolo) => song with
    {
        Parts = song.Parts.Select(p => p with
        {
            Bars = p.Bars.Select(b => b with { Strands = b.Strands.Select(s => s with { Events = s.Events.Select(e => Plain(e, withoutTremolo)).ToValueList() }).ToValueList() }).ToValueList(),
        }).ToValueList(),
    };

    private static Event Plain(Event item, bool withoutTremolo) => item with
    {
        Roll = Roll.None,
        Spans = withoutTremolo ? item.Spans & ~Spans.TremoloPicking : item.Spans,
        Notes = withoutTremolo ? item.Notes.Select(n => n with { Tremolo = null }).ToValueList() : item.Notes,
    };
}
