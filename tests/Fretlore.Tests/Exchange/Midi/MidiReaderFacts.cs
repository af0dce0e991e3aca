using Fretlore.Exchange.Import;
using Fretlore.Exchange.Midi;
using Fretlore.Exchange.Sheets;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Tests.Exchange.Import;
using NAudio.Midi;

namespace Fretlore.Tests.Exchange.Midi;

/// <summary>MIDI files as other programs and players make them: what is written down, what is worked out, and what is said of it.</summary>
public sealed class MidiReaderFacts
{
    private const int Quarter = 480;

    [Fact]
    public void AFileInFormat0_WithoutTempoOrMetre_IsASong_AndWhatIsTakenIsSaid()
    {
        var made = Read(File(0, [Notes(1, (0, Quarter, 60), (Quarter, Quarter, 62), (2 * Quarter, 2 * Quarter, 64))]));
        Assert.Contains("Q 1 3 @1 H 0", SheetOf(made).Replace("@2 ", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains(made.Remarks, r => r.Text.Contains("no metre", StringComparison.Ordinal));
        Assert.Contains(made.Remarks, r => r.Text.Contains("no tempo", StringComparison.Ordinal));
    }

    [Fact]
    public void Tempos_Metres_Keys_Markers_AndNames_AreThoseOfTheFile()
    {
        var conductor = new List<MidiEvent>
        {
            new TextEvent("Harbour", MetaEventType.SequenceTrackName, 0), new TimeSignatureEvent(0, 3, 2, 24, 8), new KeySignatureEvent(2, 0, 0), new TempoEvent(500_000, 0),
            new TextEvent("Verse", MetaEventType.Marker, 0), new TempoEvent(750_000, 3 * Quarter), new TimeSignatureEvent(3 * Quarter, 6, 3, 36, 8), new TextEvent("Chorus", MetaEventType.Marker, 3 * Quarter),
        };
        var part = Notes(1, (0, 3 * Quarter, 62), (3 * Quarter, 3 * Quarter, 64));
        part.Insert(0, new TextEvent("Lead", MetaEventType.SequenceTrackName, 0));
        var song = Read(File(1, [conductor, part])).Song;
        Assert.Equal("Harbour", song.Info.Title);
        Assert.Equal("Lead", song.Parts.Single().Title);
        Assert.Equal([new Meter(3, 4), new Meter(6, 8)], song.Bars.Select(b => b.Meter));
        Assert.Equal([120m, 80m], song.Bars.Select(b => b.Tempos.Single().Tempo.PerMinute));
        Assert.Equal(["Verse", "Chorus"], song.Sections.Select(s => s.Name));
        Assert.Equal("D major", song.Bars[0].Key.ToString());
    }

    [Fact]
    public void ABarPlayedByHand_IsWrittenAsItWasMeant_AndSaysHowSureItIs()
    {
        // Eighths, a triplet and a held note, each up to 20 ms off and let go a little early.
        var random = new Random(7);
        double[] starts = [0, 0.5, 1, 4.0 / 3, 5.0 / 3, 2, 2.5, 3];
        double[] lengths = [0.5, 0.5, 1.0 / 3, 1.0 / 3, 1.0 / 3, 0.5, 0.5, 1];
        var notes = new List<(int, int, int)>();
        for (var bar = 0; bar < 8; bar++)
        {
            for (var i = 0; i < starts.Length; i++)
            {
                var off = random.Next(-19, 20);
                notes.Add((Math.Max(0, (int)((bar * 4 + starts[i]) * Quarter) + off), (int)(lengths[i] * Quarter * 0.9), 60 + i));
            }
        }
        var made = Read(File(1, [Notes(1, [.. notes])]));
        Assert.All(made.Song.Parts[0].Bars, bar => Assert.Equal(
            [Beats.Zero, Beats.Of(1, 2), Beats.Of(1), Beats.Of(4, 3), Beats.Of(5, 3), Beats.Of(2), Beats.Of(5, 2), Beats.Of(3)], bar.Strands.Single().Events.Select(e => e.Start)));
        var said = Assert.Single(made.Remarks, r => r.Text.StartsWith("The rhythm is worked out", StringComparison.Ordinal));
        Assert.Matches("moments [0-9]+ are moved .* by [0-9]+ ms as a rule and by [0-9]+ ms at most; it is 9[0-9] % sure", said.Text);
    }

    [Fact]
    public void SwungEighths_AreWrittenAsSwung()
    {
        var notes = Enumerable.Range(0, 32).Select(i => (Start: i / 2 * Quarter + (i % 2 == 0 ? 0 : Quarter * 2 / 3), Length: i % 2 == 0 ? Quarter * 2 / 3 : Quarter / 3, 60 + i % 5)).ToArray();
        var made = Read(File(1, [Notes(1, notes)]));
        Assert.Equal(new Feel(ValueBase.Eighth), made.Song.Bars[0].FeelChange);
        Assert.All(made.Song.Parts[0].Bars.SelectMany(b => b.Strands[0].Events), e => Assert.Equal((new NoteValue(ValueBase.Eighth), null), (e.Value, e.Tuplet)));
        Assert.Contains(made.Remarks, r => r.Text.StartsWith("Eighths are read as swung: 16 of 16 pairs", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(2)]
    [InlineData(12)]
    [InlineData(24)]
    public void AWheelThatRises_IsABend_WhateverItsRange(int semitones)
    {
        var events = new List<MidiEvent>();
        foreach (var (controller, value) in new[] { (101, 0), (100, 0), (6, semitones) }) events.Add(new ControlChangeEvent(0, 1, (MidiController)controller, value));
        for (var tick = 60; tick <= 180; tick += 10) events.Add(new PitchWheelChangeEvent(tick, 1, Math.Min(16383, 8192 + (int)(8192.0 * 2 / semitones * (tick - 60) / 120))));
        events.AddRange(Notes(1, (0, 4 * Quarter, 64)));
        var note = Read(File(1, [events])).Song.Parts[0].Bars[0].Notes.Single();
        Assert.Equal(new Bend(0, [200]), note.Bend);
    }

    [Theory]
    [InlineData("@3 W 9+", "9+")]
    [InlineData("@3 W 9+-", "9+-")]
    [InlineData("@3 W +9", "+9")]
    [InlineData("@3 W 9v", "9v")]
    [InlineData("@3 W 9vv", "9vv")]
    [InlineData("@3 W 9+v", "9+v")]
    [InlineData("@3 H 9;12", "9;12")]
    [InlineData("@3 W lo;9", "lo;9")]
    [InlineData("@3 W 9;lo", "9;lo")]
    public void AWheel_IsTheTechniqueThatMovesIt(string music, string read) =>
        Assert.Contains(read, SheetOf(Read(Written.Midi(Fretlore.Tests.Songs.Sheets.Line(music + " |")))), StringComparison.Ordinal);

    [Fact]
    public void ChannelsOfOneSound_OneNoteAtATime_AreOnePart_AndOthersAreSeveral()
    {
        var strings = Notes(1, (0, 2 * Quarter, 60)).Concat(Notes(2, (0, 2 * Quarter, 64))).ToList();
        Assert.Single(Read(File(1, [strings])).Song.Parts);
        var several = strings.Prepend(new PatchChangeEvent(0, 1, 33)).Prepend(new PatchChangeEvent(0, 2, 27)).ToList();
        Assert.Equal(["Bass 1", "Guitar 2"], Read(File(0, [several])).Song.Parts.Select(p => p.Title));
    }

    [Fact]
    public void Drums_Pedals_AndWords_AreNamedAsLeftOut()
    {
        var events = Notes(1, (0, Quarter, 60)).Concat(Notes(10, (0, Quarter, 36))).ToList();
        events.Add(new ControlChangeEvent(0, 1, (MidiController)64, 127));
        events.Add(new TextEvent("la", MetaEventType.Lyric, 0));
        var remarks = Imported.Text(Read(File(1, [events])).Remarks);
        Assert.Contains("Drums are not carried over.", remarks, StringComparison.Ordinal);
        Assert.Contains("LeftOut bar 1: The sustain pedal is not carried over.", remarks, StringComparison.Ordinal);
        Assert.Contains("LeftOut bar 1: The words to sing are not carried over.", remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void AFileOfThisProgram_SaysItsStrings()
    {
        var song = Fretlore.Tests.Songs.Sheets.Line("@3 Q 9 @4 14 @5 19 @6 24 |");
        Assert.Equal([(3, 9), (4, 14), (5, 19), (6, 24)], Read(Written.Midi(song)).Song.Parts[0].Bars[0].Notes.Select(n => (n.String.Value, n.Fret.Number)));
    }

    internal static byte[] File(int format, List<List<MidiEvent>> tracks)
    {
        var events = new MidiEventCollection(format, Quarter);
        foreach (var track in tracks)
        {
            var sorted = track.OrderBy(e => e.AbsoluteTime).ThenBy(e => e is NoteEvent ? 1 : 0).ToList();
            sorted.Add(new MetaEvent(MetaEventType.EndTrack, 0, sorted[^1].AbsoluteTime));
            events.AddTrack(sorted);
        }
        using var stream = new MemoryStream();
        MidiFile.Export(stream, events);
        return stream.ToArray();
    }

    internal static List<MidiEvent> Notes(int channel, params (int Start, int Length, int Key)[] notes) =>
    [
        .. notes.Select(n => new NoteEvent(n.Start, channel, MidiCommandCode.NoteOn, n.Key, 90)),
        .. notes.Select(n => new NoteEvent(n.Start + n.Length, channel, MidiCommandCode.NoteOff, n.Key, 0)),
    ];

    private static ImportResult.Made Read(byte[] file) => Assert.IsType<ImportResult.Made>(MidiReader.Read(file));

    private static string SheetOf(ImportResult.Made made) => SheetWriter.Write(made.Song).Text;
}
