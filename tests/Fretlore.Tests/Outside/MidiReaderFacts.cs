using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Tests.Exchange;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Outside;

/// <summary>MIDI files as an independent reader, npm midi-file, reads them.</summary>
public class MidiReaderFacts
{
    [Fact]
    public void Reader_FindsTheNotesTemposAndNamesOfThePerformance()
    {
        var song = StudySongs.Plain() with { Sections = [new Section("Überleitung", 1, 2)] };
        var performance = Performer.Play(song);
        var read = ReadMidi.From(Written.Midi(song));
        Assert.Equal(new ReadMidiHeader(1, 3, 960), read.Header);
        Assert.Contains(read.Tracks[0], e => e is { Type: "setTempo", Tick: 0, MicrosecondsPerBeat: 625_000 });
        Assert.Contains(read.Tracks[0], e => e is { Type: "timeSignature", Numerator: 4, Denominator: 4 });
        Assert.Contains(read.Tracks[0], e => e is { Type: "keySignature", Key: 1, Scale: 0 });
        // The reader takes each byte for a character; the text is UTF-8.
        Assert.Equal(
            [(3840L, "Überleitung"), (3840L * 4, "Überleitung")],
            read.Tracks[0].Where(e => e.Type == "marker").Select(e => (e.Tick, System.Text.Encoding.UTF8.GetString(System.Text.Encoding.Latin1.GetBytes(e.Text!)))));
        for (var part = 0; part < 2; part++)
        {
            var ours = performance.Parts[part].Notes.Select(n => ((long)Math.Round(n.Onset.ToDouble() * 960), n.Height.Midi, n.Velocity)).ToList();
            Assert.Equal(ours, read.Tracks[part + 1].Where(e => e.Type == "noteOn").Select(e => (e.Tick, e.NoteNumber, e.Velocity)));
            var offs = performance.Parts[part].Notes.Select(n => ((long)Math.Round(n.Release.ToDouble() * 960), n.Height.Midi)).Order();
            Assert.Equal(offs, read.Tracks[part + 1].Where(e => e.Type == "noteOff").Select(e => (e.Tick, e.NoteNumber)).Order());
            Assert.Equal(song.Parts[part].Title, read.Tracks[part + 1].First(e => e.Type == "trackName").Text);
        }
        Assert.Equal(6, read.Tracks[1].Where(e => e.Type == "noteOn").Select(e => e.Channel).Distinct().Count());
        Assert.DoesNotContain(read.Tracks.SelectMany(t => t), e => e.Channel == 9);
    }

    [Fact]
    public void Bend_ReachesTwoOfTwelveSemitones_AndTheWheelReturnsToItsCentre()
    {
        var read = ReadMidi.From(Written.Midi(StudySongs.One(ValueBase.Half, n => n with { Bend = new Bend(0, [200]) })));
        var wheel = read.Tracks[1].Where(e => e.Type == "pitchBend").ToList();
        Assert.Equal((int)Math.Round(8192 * 2 / 12.0), wheel.Max(e => e.Value));
        Assert.Equal(0, wheel[^1].Value);
        Assert.Single(wheel.Select(e => e.Channel).Distinct());
        Assert.Equal(
            [(101, 0), (100, 0), (6, 12), (38, 0), (101, 127), (100, 127)],
            read.Tracks[1].Where(e => e.Type == "controller" && e.Channel == wheel[0].Channel).Select(e => (e.ControllerType, e.Value)));
    }

    [Fact]
    public void ThreeGuitars_OnFifteenChannels_AreBentOneStringAtATime()
    {
        var song = new SongBuilder();
        for (var part = 0; part < 3; part++)
        {
            song.Part("guitar " + part).Bar(
                SongBuilder.Play(ValueBase.Half, (6, 3), (5, 2), (4, 0), (3, 0), (2, 0), (1, 3)),
                SongBuilder.With(SongBuilder.Play(ValueBase.Half, (5, 2), (3, 4), (1, 7)), n => n.String.Value == 3 ? n with { Bend = new Bend(0, [200]) } : n));
        }
        var made = song.Build();
        var read = ReadMidi.From(Written.Midi(made));
        var channels = read.Tracks.Skip(1).Select(t => t.Where(e => e.Type == "noteOn").Select(e => e.Channel).ToHashSet()).ToList();
        Assert.Equal(15, channels.Sum(c => c.Count));
        Assert.Equal(15, channels.SelectMany(c => c).Distinct().Count());
        Assert.DoesNotContain(9, channels.SelectMany(c => c));
        foreach (var track in read.Tracks.Skip(1))
        {
            var bent = Assert.Single(track.Where(e => e is { Type: "pitchBend", Value: not 0 }).Select(e => e.Channel).Distinct());
            Assert.Equal(1, track.Count(e => e.Type == "noteOn" && e.Tick == 1920 && e.Channel == bent));
            Assert.Equal(9, track.Count(e => e.Type == "noteOn"));
        }
    }

    [Fact]
    public void NoteNumbers_HaveTheFrequenciesOfIso16()
    {
        Assert.SkipUnless(Repository.Check("midi_hz.csv") is not null, "The table of frequencies does not stand beside this checkout.");
        var table = File.ReadLines(Repository.Check("midi_hz.csv")!).Skip(1).Select(l => l.Split(',')).ToDictionary(f => int.Parse(f[0]), f => double.Parse(f[^1]));
        foreach (var note in Performer.Play(StudySongs.Plain()).Parts.SelectMany(p => p.Notes)) Assert.Equal(table[note.Height.Midi], note.Height.Hertz(), 2);
    }

    [Theory]
    [InlineData(40, 82.41)]
    [InlineData(69, 440)]
    [InlineData(64, 329.63)]
    public void OpenStrings_HaveTheFrequenciesOfIso16(int number, double hertz) => Assert.Equal(hertz, new Height(number).Hertz(), 2);
}
