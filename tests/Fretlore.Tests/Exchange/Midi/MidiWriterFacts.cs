using CsCheck;
using Fretlore.Exchange.Midi;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Tests.Songs;
using NAudio.Midi;

namespace Fretlore.Tests.Exchange.Midi;

public class MidiWriterFacts
{
    [Fact]
    public void Ticks_AreExactForTripletsAndQuintuplets_AndNeverHalfATickOff()
    {
        Assert.Equal(320, MidiTime.TicksOf(Beats.Of(1, 3)));
        Assert.Equal(192, MidiTime.TicksOf(Beats.Of(1, 5)));
        Assert.Equal(137, MidiTime.TicksOf(Beats.Of(1, 7)));
        Gen.Select(Gen.Long[0, 100_000], Gen.Long[1, 96]).Sample((n, d) =>
            Math.Abs(MidiTime.TicksOf(Beats.Of(n, d)) - 960.0 * n / d) <= 0.5);
    }

    [Fact]
    public void EveryNote_IsLetGo_AndEveryWheelEndsAtItsCentre() => SongGen.Songs.Sample(song =>
    {
        using var stream = new MemoryStream(Written.Midi(song));
        var file = new MidiFile(stream, strictChecking: true);
        for (var track = 1; track < file.Tracks; track++)
        {
            var sounding = new Dictionary<(int, int), int>();
            var wheels = new Dictionary<int, int>();
            foreach (var item in file.Events[track])
            {
                if (item is PitchWheelChangeEvent wheel) wheels[wheel.Channel] = wheel.Pitch;
                if (item is not NoteEvent note) continue;
                var key = (note.Channel, note.NoteNumber);
                sounding[key] = sounding.GetValueOrDefault(key) + (MidiEvent.IsNoteOn(note) ? 1 : -1);
                Assert.InRange(sounding[key], 0, 1);
            }
            Assert.All(sounding.Values, count => Assert.Equal(0, count));
            Assert.All(wheels.Values, value => Assert.Equal(8192, value));
        }
    }, iter: 100);

    [Fact]
    public void Channels_AreOneAString_WhileThereAreEnough()
    {
        var plan = ChannelPlan.For(Performer.Play(Parts(2, 7)));
        var channels = from part in Enumerable.Range(0, 2) from number in Enumerable.Range(1, 7) select plan[part, new(number)];
        Assert.Equal(14, channels.Distinct().Count());
        Assert.DoesNotContain(10, channels);
    }

    [Fact]
    public void Channels_WithThreeGuitars_AreUsedAllOfThem_AndNoTwoPartsShareOne()
    {
        var plan = ChannelPlan.For(Performer.Play(Parts(3, 6)));
        Assert.Equal([5, 5, 5], Enumerable.Range(0, 3).Select(part => plan.Of(part).Length));
        Assert.Equal(15, Enumerable.Range(0, 3).SelectMany(part => plan.Of(part)).Distinct().Count());
    }

    [Fact]
    public void AStringThatIsBentWhileOthersSound_SharesNoChannelWithThem() => SheetGen.Valid(60, 20, song =>
    {
        var performance = Performer.Play(song);
        var plan = ChannelPlan.For(performance);
        for (var part = 0; part < performance.Parts.Length; part++)
        {
            // Where four strings are bent against each other, four channels are needed; a part of these songs has three at least.
            if (plan.Of(part).Length < 3) continue;
            var notes = performance.Parts[part].Notes;
            foreach (var bent in notes.Where(n => !n.Pitch.IsFlat))
                Assert.DoesNotContain(notes, n => n.String != bent.String && n.Onset < bent.Release && bent.Onset < n.Release && plan[part, n.String] == plan[part, bent.String]);
        }
    }, SheetGen.Crowded);

    [Fact]
    public void Unison_OnStringsThatShareAChannel_IsPressedOnceAndLetGoWithTheLastOfThem()
    {
        var song = new SongBuilder();
        for (var part = 0; part < 15; part++)
            song.Part("part " + part).Bar(SongBuilder.Play(ValueBase.Half, (2, 5), (1, 0)), SongBuilder.Play(ValueBase.Half, (6, 0)));
        using var stream = new MemoryStream(Written.Midi(song.Build()));
        var notes = new MidiFile(stream, strictChecking: true).Events[1].OfType<NoteEvent>().Select(n => (n.AbsoluteTime, n.NoteNumber, MidiEvent.IsNoteOn(n)));
        Assert.Equal([(0, 64, true), (1920, 64, false), (1920, 40, true), (3840, 40, false)], notes);
    }

    [Fact]
    public void SameSong_GivesTheSameBytes() => SongGen.Songs.Sample(song => Written.Midi(song).SequenceEqual(Written.Midi(song)), iter: 20);

    private static Fretlore.Score.Song Parts(int count, int strings)
    {
        var builder = new SongBuilder();
        for (var part = 0; part < count; part++) builder.Part("part " + part, string.Join(' ', Enumerable.Repeat("E2", strings))).Bar(SongBuilder.Play(ValueBase.Whole, (1, 0)));
        return builder.Build();
    }
}
