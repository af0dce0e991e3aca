using Fretlore.Binding;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Syntax;
using Fretlore.Tests.Songs;
using static Fretlore.Tests.Songs.SongBuilder;

namespace Fretlore.Tests.Reading;

public class SongReaderFacts
{
    private static readonly Func<Neck, Event> OpenC = Play(ValueBase.Quarter, (5, 3), (4, 2), (3, 0), (2, 1), (1, 0));
    private static readonly Func<Neck, Event> OpenG = Play(ValueBase.Quarter, (6, 3), (5, 2), (4, 0), (3, 0), (2, 0), (1, 3));

    [Fact]
    public void Symbols_OfAStrummedBar_StandWhereTheHarmonyChanges()
    {
        var reading = Read(new SongBuilder { Key = C }.Part("guitar").Bar(OpenC, OpenC, OpenG, OpenG).Bar(OpenG, OpenG, OpenC, OpenC));
        Assert.Equal("0:0 C, 0:2 G, 1:2 C", Moments(reading));
    }

    [Fact]
    public void Symbols_OfABrokenChord_AreOneForTheWholeOfIt()
    {
        Func<Neck, Event> Ring(int number, int fret) => With(Play(ValueBase.Eighth, (number, fret)), n => n with { LetsRing = true });
        var reading = Read(new SongBuilder { Key = C }.Part("guitar")
            .Bar(Ring(5, 3), Ring(4, 2), Ring(3, 0), Ring(2, 1), Ring(1, 0), Ring(2, 1), Ring(3, 0), Ring(4, 2)));
        Assert.Equal("0:0 C", Moments(reading));
    }

    [Fact]
    public void Symbols_OfASingleLine_AreNone()
    {
        Func<Neck, Event> Note(int number, int fret) => Play(ValueBase.Quarter, (number, fret));
        Assert.Equal("", Moments(Read(new SongBuilder { Key = C }.Part("guitar").Bar(Note(2, 1), Note(2, 3), Note(1, 0), Note(1, 3)))));
    }

    [Fact]
    public void Symbols_OfOneFingerPowerChords_AreWrittenWhereTheyStandOut()
    {
        Func<Neck, Event> Chug(ValueBase value) => With(Play(value, (6, 0), (5, 0), (4, 0)), n => n with { IsPalmMuted = true });
        Func<Neck, Event> At(ValueBase value, int fret) => Play(value, (6, fret), (5, fret), (4, fret));
        var reading = Read(new SongBuilder { Key = D }.Part("guitar", "D2 A2 D3 G3 B3 E4").Bar(
            Chug(ValueBase.Eighth), Chug(ValueBase.Sixteenth), Chug(ValueBase.Sixteenth), At(ValueBase.Quarter, 5),
            Chug(ValueBase.Sixteenth), Chug(ValueBase.Sixteenth), At(ValueBase.Eighth, 3), At(ValueBase.Quarter, 7)));
        Assert.Equal("0:0 D5, 0:1 G5, 0:5/2 F5, 0:3 A5", Moments(reading));
    }

    [Fact]
    public void ASymbolInTheSheet_IsShown_AndTheReadingIsKeptBesideIt()
    {
        Event Stated(Neck neck) => OpenC(neck) with { ChordSymbol = "C(home)" };
        var moment = Read(new SongBuilder { Key = C }.Part("guitar").Bar(Stated, OpenC, OpenG, OpenG)).Parts[0].Chords[0];
        Assert.Equal("C(home)", moment.Symbol);
        Assert.Equal("C", moment.Best.Symbol);
    }

    [Fact]
    public void Notes_AreSpelledByTheirChordAndHaveTheirDegreeAboveItsRoot()
    {
        var e7 = Play(ValueBase.Whole, (6, 0), (5, 2), (4, 0), (3, 1), (2, 0), (1, 0));
        var reading = Read(new SongBuilder { Key = C }.Part("guitar").Bar(e7));
        Assert.Equal("E2 B2 D3 G#3 B3 E4", string.Join(' ', reading.Spellings));
        Assert.Equal("1 5 b7 3 5 1", string.Join(' ', reading.Degrees.Select(d => d.ToDegree())));
    }

    [Fact]
    public void AHalfDiminishedChord_SpellsItsFlatFifth()
    {
        var chord = Play(ValueBase.Whole, (5, 3), (4, 4), (3, 3), (2, 4)); // C Gb Bb Eb
        Assert.Equal("C3 Gb3 Bb3 Eb4", string.Join(' ', Read(new SongBuilder { Key = C }.Part("guitar").Bar(chord)).Spellings));
    }

    [Fact]
    public void ALead_TakesItsDegreesFromTheChordOfTheOtherPart()
    {
        var reading = Read(new SongBuilder { Key = C }.Part("bed").Bar(OpenG, OpenG, OpenG, OpenG)
            .Part("lead").Bar(Play(ValueBase.Half, (2, 3)), Play(ValueBase.Half, (1, 1))));
        Assert.Equal("5 b7", string.Join(' ', reading.Degrees.TakeLast(2).Select(d => d.ToDegree())));
    }

    [Fact]
    public void AChromaticNote_IsSpelledByWhereItGoes()
    {
        Func<Neck, Event> Note(int fret) => Play(ValueBase.Quarter, (2, fret));
        var reading = Read(new SongBuilder { Key = C }.Part("lead").Bar(Note(3), Note(4), Note(5), Note(5)).Bar(Note(5), Note(4), Note(3), Note(3)));
        Assert.Equal("D4 D#4 E4 E4 E4 Eb4 D4 D4", string.Join(' ', reading.Spellings));
    }

    [Fact]
    public void ATransposedSong_HasItsNamesTransposed()
    {
        SongBuilder Bars(int up) => new SongBuilder().Part("guitar", capo: up)
            .Bar(OpenC, OpenC, OpenG, OpenG).Bar(OpenC, OpenC, OpenC, OpenC);
        var here = Read(Bars(0));
        for (var up = 1; up < 12; up++)
        {
            var there = Read(Bars(up));
            Assert.Equal(
                here.Parts[0].Chords.Select(c => (c.Bar, c.At, NoteName.Wrap(c.Best.Root.PitchClass + up, 12), c.Best.Kind)),
                there.Parts[0].Chords.Select(c => (c.Bar, c.At, c.Best.Root.PitchClass, c.Best.Kind)));
            Assert.Equal(here.Degrees, there.Degrees);
            Assert.Equal(NoteName.Wrap(here.Keys[0].Tonic.PitchClass + up, 12), there.Keys[0].Tonic.PitchClass);
        }
    }

    [Fact]
    public void ABend_CountsInTheScaleAtThePitchItReaches()
    {
        // C bent to D, in A minor pentatonic without any D fretted.
        Func<Neck, Event> Note(int number, int fret) => Play(ValueBase.Quarter, (number, fret));
        var bent = With(Note(3, 5), n => n with { Bend = new Bend(0, [200]) });
        var phrase = Read(new SongBuilder { Key = new Key(new NoteName(Step.A), Mode.Aeolian, true) }.Part("lead")
            .Bar(Note(2, 10), bent, Note(2, 5), Note(2, 8)).Bar(Note(2, 10), Note(2, 5), Note(2, 8), Note(2, 10))).Parts[0].Phrases.Single();
        Assert.Equal("A Minor pentatonic", phrase.Scales[0].Root + " " + phrase.Scales[0].Name);
        Assert.DoesNotContain(phrase.Scales[0].Missing, m => m.PitchClass == 2);
    }

    [Fact]
    public void ATiedNote_KeepsItsName_WhenTheChordChanges()
    {
        // G#3 over E7, tied on under Fm, whose third it would be as Ab.
        Func<Neck, Event> e7 = Play(ValueBase.Half, (6, 0), (5, 2), (4, 0), (3, 1));
        var fm = With(Play(ValueBase.Half, (6, 1), (5, 3), (4, 3), (3, 1)), n => n.String.Value == 3 ? n with { Attack = Attack.Held } : n);
        var reading = Read(new SongBuilder { Key = C }.Part("guitar").Bar(e7, fm));
        Assert.Equal("G#3", reading.Spellings[3].ToString());
        Assert.Equal("G#3", reading.Spellings[7].ToString());
    }

    [Fact]
    public void APowerChordOverADrone_IsNamedAsSuch()
    {
        var fifth = Play(ValueBase.Whole, (5, 0), (4, 9), (3, 11));
        Assert.Equal("0:0 B5/A", Moments(Read(new SongBuilder { Key = C }.Part("guitar").Bar(fifth))));
    }

    [Theory]
    [InlineData("salt-furnace")]
    [InlineData("lanterns-on-the-weir")]
    [InlineData("kestrel-over-slate")]
    public void EveryNoteOfTheDemoSongs_IsSpelledAsItSounds_WithoutDoubleSigns(string name)
    {
        var song = Demo(name);
        var reading = SongReader.Read(song);
        var notes = song.Parts.Items.SelectMany(p => p.Bars.Items).Concat(song.Riffs.Items.SelectMany(r => r.Content.Items))
            .SelectMany(b => b.Notes).ToArray();
        Assert.Equal(song.NoteCount, notes.Length);
        foreach (var note in notes)
        {
            Assert.Equal(note.Sounding, reading.SpellingOf(note.Id).Height);
            Assert.InRange(reading.SpellingOf(note.Id).Name.Alteration, -1, 1);
            Assert.InRange(reading.Degrees[note.Id.Index].Steps, 0, 6);
        }
    }

    [Theory]
    [InlineData("salt-furnace", 0, 0, "A5 E5 A5 G5 | A5 F5 E5 D5")]
    [InlineData("salt-furnace", 0, 24, "Am9 | A5")]
    [InlineData("lanterns-on-the-weir", 0, 0, "E5 | Aadd9")]
    [InlineData("kestrel-over-slate", 1, 1, "Dm | Bb")]
    [InlineData("kestrel-over-slate", 1, 9, "Dm Bb C | Dm F Gm7")]
    [InlineData("kestrel-over-slate", 0, 1, " | ")]
    public void SymbolsOfTheDemoSongs_AreWhatAPlayerWouldWrite(string name, int part, int bar, string expected)
    {
        var chords = SongReader.Read(Demo(name)).Parts[part].Chords;
        Assert.Equal(expected, string.Join(" | ", Enumerable.Range(bar, 2).Select(b => string.Join(' ', chords.Where(c => c.Bar == b).Select(c => c.Symbol)))));
    }

    [Theory]
    [InlineData("salt-furnace", 0, "A Aeolian")] // the riff has an F, whatever the key line says
    [InlineData("lanterns-on-the-weir", 0, "E Mixolydian")]
    [InlineData("kestrel-over-slate", 0, "D Aeolian")]
    public void FirstPhraseOfTheDemoSongs_HasItsScale(string name, int part, string expected)
    {
        var best = SongReader.Read(Demo(name)).Parts[part].Phrases[0].Scales[0];
        Assert.Equal(expected, best.Root + " " + best.Name);
    }

    private static Song Demo(string name)
    {
        var text = File.ReadAllText(Path.Combine(Outside.Repository.Root, "demo", name + ".lore"));
        return SongBinder.Bind(Sheet.Parse(new SourceText(text))).Song ?? throw new InvalidDataException(name);
    }

    private static Key C => new(new NoteName(Step.C), Mode.Ionian, true);

    private static Key D => new(new NoteName(Step.D), Mode.Aeolian, true);

    private static SongReading Read(SongBuilder builder) => SongReader.Read(builder.Build());

    private static string Moments(SongReading reading) => string.Join(", ", reading.Parts[0].Chords.Select(c => $"{c.Bar}:{c.At} {c.Symbol}"));
}
