using Fretlore.Exchange.Sheets;
using Fretlore.Guitar;
using Fretlore.Hands.Retuning;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Hands.Retuning;

public sealed class RetunerFacts
{
    [Theory]
    [InlineData("lanterns-on-the-weir.lore", "A1 D2 A2 D3 G3 A3 D4")]
    [InlineData("lanterns-on-the-weir.lore", "D2 A2 D3 G3 A3 D4 G4")]
    [InlineData("kestrel-over-slate.lore", "A1 D2 A2 D3 G3 B3 E4")]
    [InlineData("kestrel-over-slate.lore", "F#1 B1 D2 A2 D3 G3 B3 E4")]
    [InlineData("salt-furnace.lore", "E1 A1 E2 A2 D3 G3 B3 E4")]
    public void AStringMore_AndBack_IsTheSameSong_StringByString(string name, string more)
    {
        var song = WrittenOut(DemoSongs.Load(name));
        var there = Retuner.Retune(song, All(song, more));
        Assert.Empty(Losses(there));
        var back = Retuner.Retune(there.Song, All(song, song.Parts[0].Neck.Tuning.ToString()));
        Assert.Empty(Losses(back));
        SameSong.Same(SameSong.Written(song), SameSong.Written(back.Song), name);
    }

    [Theory]
    [InlineData("kestrel-over-slate.lore", "C2 G2 C3 F3 A3 D4")]
    [InlineData("kestrel-over-slate.lore", "D2 G2 D3 G3 B3 E4")]
    [InlineData("kestrel-over-slate.lore", "D2 A2 D3 G3 B3 D4")]
    [InlineData("salt-furnace.lore", "A1 E2 A2 D3 G3 B3 E4 A4")]
    [InlineData("salt-furnace.lore", "A1 D2 E2 A2 D3 G3 B3 E4")]
    [InlineData("lanterns-on-the-weir.lore", "D2 A2 D3 E3 G3 A3 D4")]
    public void AnotherTuningAsDeep_AndBack_SoundsTheSame(string name, string other)
    {
        var song = DemoSongs.Load(name);
        var there = Retuner.Retune(song, All(song, other));
        Assert.Empty(Words(there));
        var back = Retuner.Retune(there.Song, All(song, song.Parts[0].Neck.Tuning.ToString()));
        Assert.Empty(Words(back));
        SameSong.Same(SameSong.Heard(song), SameSong.Heard(there.Song), name);
        SameSong.Same(SameSong.Heard(song), SameSong.Heard(back.Song), name);
    }

    [Fact]
    public void ATuningATonelower_WithTheSongATonelower_HasTheSameFrets()
    {
        var song = DemoSongs.Load("kestrel-over-slate.lore");
        var down = Retuner.Retune(song, All(song, "C2 G2 C3 F3 A3 D4") with { Semitones = -2 });
        Assert.Empty(Losses(down));
        Assert.Equal(Places(song), Places(down.Song));
        Assert.Equal("C minor", down.Song.Bars[0].Key.ToString());
        Assert.Equal("C", down.Song.RoadMaps[0].RulesOf<ScaleRule>().First().Tonic.ToString());
        Assert.Equal(["G", "C"], down.Song.RoadMaps[0].RulesOf<AimRule>().Select(aim => aim.Target.ToString()));
        Assert.Equal("by a half-step bend of F#", down.Song.RoadMaps[0].RulesOf<AimRule>().First().How!.ToString());
    }

    [Fact]
    public void ADroneThatTheNewTuningHas_StaysOpen()
    {
        var song = Sheets.Line("drone{ @5 W 0 } @2 Q 3 5 6 5 | drone{ @4 W 0 } @2 Q 3 5 6 5 |");
        var retuned = Retuner.Retune(song, All(song, "D2 A2 D3 G3 B3 D4"));
        Assert.Empty(Losses(retuned));
        Assert.Equal([0, 0], retuned.Song.Parts[0].Bars.SelectMany(bar => bar.Strands[1].Events[0].Notes).Select(note => note.Fret.Number));
    }

    [Fact]
    public void ADroneThatTheNewTuningHasNot_IsStopped_AndSaid()
    {
        var song = Sheets.Line("drone{ @5 W 0 } @2 Q 3 5 6 5 |");
        var retuned = Retuner.Retune(song, All(song, "E2 G2 D3 G3 B3 E4"));
        var loss = Assert.Single(Losses(retuned));
        Assert.Equal((RetuneLossKind.DroneStopped, 45), (loss.Kind, loss.Wanted.Midi));
    }

    [Fact]
    public void WhatOneFingerHolds_StaysUnderOneFinger_InATuningWithTheSameFourths()
    {
        var song = Sheets.Song("title Barre\ntuning D2 A2 D3 G3 B3 E4\ntempo Q = 100\n\nsection All\n  @654 E 0 5 7 5 Q 3 0 |\n");
        var retuned = Retuner.Retune(song, All(song, "C2 G2 C3 F3 A3 D4"));
        Assert.DoesNotContain(Losses(retuned), loss => loss.Kind == RetuneLossKind.OneFingerShapeLost);
        Assert.All(retuned.Song.Parts[0].Bars[0].Strands[0].Events, item => Assert.Single(item.Notes.Select(note => note.Fret).Distinct()));
    }

    [Fact]
    public void ALineThatIsTooLow_MovesAnOctave_AndEachNoteIsNamed()
    {
        var song = Sheets.Line("Q @6 0 1 8 @5 7 |");
        var retuned = Retuner.Retune(song, All(song, "G2 D3 G3 B3 E4"));
        Assert.Equal([(40, 52), (41, 53)], Losses(retuned).Select(loss => (loss.Wanted.Midi, loss.Place!.Sounding.Midi)));
        Assert.Equal([52, 53, 48, 52], retuned.Song.Parts[0].Bars[0].Notes.Select(note => note.Sounding.Midi));
    }

    [Fact]
    public void AHarmonic_MovesToWhereItExists()
    {
        // E4 is over fret 12 of an E string, over fret 7 of an A string, and over fret 5 of a lower E (common practice).
        var song = Sheets.Line("W @5 7* |");
        var note = Retuner.Retune(song, All(song, "E2 G2 D3 G3 B3 E4")).Song.Parts[0].Bars[0].Notes.Single();
        Assert.Equal((6, 5, HarmonicKind.Natural), (note.String.Value, note.Fret.Number, note.Harmonic!.Kind));
    }

    [Fact]
    public void AHarmonicOfNoOpenString_IsStoppedAndTouched_AndSaid()
    {
        var song = Sheets.Line("W @5 12* |");
        var retuned = Retuner.Retune(song, All(song, "F2 Bb2 Eb3 Ab3 C4 F4"));
        var note = retuned.Song.Parts[0].Bars[0].Notes.Single();
        Assert.Equal((HarmonicKind.Touched, 57), (note.Harmonic!.Kind, note.Sounding.Midi));
        Assert.Equal(12, note.Harmonic.TouchedAt.Number - note.Fret.Number);
        Assert.Equal(RetuneLossKind.HarmonicTouched, Assert.Single(Losses(retuned)).Kind);
    }

    [Fact]
    public void ABendStaysABend_AndASlurStaysOnOneString()
    {
        var song = Sheets.Line("Q @3 2+ S @2 1,3,1 3 E 5;7 @1 0,3 |");
        var moved = Retuner.Retune(song, All(song, "E2 A2 D3 A3 D4 F4")).Song.Parts[0].Bars[0].Notes.ToList();
        Assert.True(moved[0].Fret.Number > 0 && moved[0].Bend is not null);
        for (var i = 0; i + 1 < moved.Count; i++)
        {
            if (moved[i + 1].Attack is Attack.HammerOn or Attack.PullOff or Attack.Glide) Assert.Equal(moved[i].String, moved[i + 1].String);
        }
    }

    [Fact]
    public void ARiffThatAnotherPartStillPlays_IsThereTwice()
    {
        var song = DemoSongs.Load("salt-furnace.lore");
        var one = Retuner.Retune(song, All(song, "G1 C2 G2 C3 F3 A3 D4") with { Parts = [1] });
        Assert.Contains(one.Song.Riffs, riff => riff.Name == "furnace" && riff.Neck == song.Parts[0].Neck);
        Assert.Contains(one.Song.Riffs, riff => riff.Name == "furnace-lead" && riff.Neck.Tuning.ToString() == "G1 C2 G2 C3 F3 A3 D4");
        Assert.Contains(one.Song.RiffUses, use => use.Part == 1 && use.Riff == "furnace-lead");
        Assert.Equal(song.Parts[0].Bars.SelectMany(bar => bar.Notes).Select(note => note with { Id = default }), one.Song.Parts[0].Bars.SelectMany(bar => bar.Notes).Select(note => note with { Id = default }));
    }

    /// <summary>Each note of a generated song sounds as it did, or the report says what became of it; and the new sheet says the same.</summary>
    [Fact]
    public void EveryNoteThatIsNotAsItWas_IsReported_AndNoOther()
    {
        string[] tunings = ["E2 A2 D3 G3 B3 E4", "D2 A2 D3 G3 A3 D4", "B1 E2 A2 D3 G3 B3 E4", "E1 A1 D2 G2", "C3 G3 D4 A4", "G4 D3 G3 B3 D4"];
        SheetGen.Valid(300, 190, song =>
        {
            var random = new Random(song.NoteCount);
            var (to, semitones) = (tunings[random.Next(tunings.Length)], random.Next(3) == 0 ? random.Next(-7, 8) : 0);
            var retuned = Retuner.Retune(song, All(song, to) with { Semitones = semitones });
            for (var part = 0; part < song.Parts.Count; part++)
            {
                var expected = song.Parts[part].Bars.SelectMany((bar, i) => bar.Notes.Where(n => !n.IsDead).Select(n => (i, n.Sounding.Midi + semitones)))
                    .ToLookup(n => n).ToDictionary(n => n.Key, n => n.Count());
                foreach (var loss in retuned.Parts[part].Where(loss => IsOfPitch(loss) && !IsDead(song, loss)))
                {
                    expected[(loss.Bar, loss.Wanted.Midi)]--;
                    if (loss.Place is { } place) expected[(loss.Bar, place.Sounding.Midi)] = expected.GetValueOrDefault((loss.Bar, place.Sounding.Midi)) + 1;
                }
                var heard = retuned.Song.Parts[part].Bars.SelectMany((bar, i) => bar.Notes.Where(n => !n.IsDead).Select(n => (i, n.Sounding.Midi))).ToLookup(n => n);
                Assert.Equal(expected.Where(e => e.Value != 0).OrderBy(e => e.Key).Select(e => (e.Key, e.Value)), heard.OrderBy(n => n.Key).Select(n => (n.Key, n.Count())));
            }
            var sheet = SheetWriter.Write(retuned.Song, new SheetStyle(FindsRiffs: false));
            var read = Sheets.Read(sheet.Text);
            Assert.True(!read.HasErrors && read.Song is not null, to + "\n" + sheet.Text + Sheets.Describe(read, sheet.Text));
            SameSong.Same(SameSong.Heard(retuned.Song), SameSong.Heard(read.Song), sheet.Text);
        });
    }

    private static bool IsDead(Song song, RetuneLoss loss) => song.Parts.Any(part => part.Bars.Any(bar => bar.Notes.Any(note => note.Id == loss.Note && note.IsDead)));

    private static bool IsOfPitch(RetuneLoss loss) => loss.Kind is RetuneLossKind.NoteLeftOut or RetuneLossKind.OctaveMoved;

    private static IEnumerable<string> Words(RetunedSong retuned) =>
        Losses(retuned).Where(IsOfPitch).Select(loss => $"bar {loss.Bar + 1}: {loss.Kind} {loss.Wanted.Midi} of string {loss.Was.String} fret {loss.Was.Fret}");

    private static IEnumerable<RetuneLoss> Losses(RetunedSong retuned) => retuned.Parts.SelectMany(part => part);

    private static RetuneOrder All(Song song, string to)
    {
        Assert.True(Tuning.TryParse(to, out var tuning));
        return new RetuneOrder(tuning, Enumerable.Range(0, song.Parts.Count).ToValueList());
    }

    private static List<string> Places(Song song) => [.. song.Parts.SelectMany(part => part.Bars).SelectMany(bar => bar.Notes).Select(note => $"{note.String}:{note.Fret}")];

    // What a sheet's writer can't know again: which riff another one varies, and road maps' frets, which go along with their strings.
    private static Song WrittenOut(Song song) => song with { Riffs = song.Riffs.Select(riff => riff with { VariationOf = null }).ToValueList() };
}
