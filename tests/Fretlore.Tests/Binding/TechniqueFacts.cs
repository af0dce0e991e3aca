using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Binding;

public class TechniqueFacts
{
    private static List<Event> Events(string music, StrandKind kind = StrandKind.Main) =>
        [.. Sheets.Line(music).Parts[0].Bars.SelectMany(b => b.Strands).Where(s => s.Kind == kind).SelectMany(s => s.Events)];

    private static List<Note> Notes(string music) => [.. Events(music).SelectMany(e => e.Notes)];

    [Theory]
    [InlineData("@1 Q 5,8,5,0 |", Attack.Picked, Attack.HammerOn, Attack.PullOff, Attack.PullOff)]
    [InlineData("@1 Q ,8 5 t12,5 |", Attack.HammerFromNowhere, Attack.Picked, Attack.Tap, Attack.PullOff)]
    [InlineData("@1 Q 5;9 5; 9 |", Attack.Picked, Attack.Glide, Attack.Picked, Attack.PickedGlide)]
    [InlineData("@1 Q 7,5 H ,3 |", Attack.Picked, Attack.PullOff, Attack.PullOff, null)]
    [InlineData("@1 Q 7 R ,5 R |", Attack.Picked, Attack.HammerFromNowhere, null, null)]
    [InlineData("@1 H 5,8@2 |", Attack.Picked, Attack.HammerFromNowhere, null, null)]
    public void Joints_SayHowTheHandComes(string music, params Attack?[] expected) =>
        Assert.Equal(expected.Where(a => a is not null), Notes(music).Select(n => (Attack?)n.Attack));

    [Theory]
    [InlineData("@65432 W 2 |", 5)]
    [InlineData("@654321 W 2 |", 6)]
    [InlineData("@6-1 W 2 |", 6)]
    public void ManyStringsAtOnePlace_AreSoundedTogether(string music, int strings) => Assert.Equal(strings, Notes(music).Count);

    [Fact]
    public void Legato_GoesOnOverABarLine() =>
        Assert.Equal(Attack.PullOff, Notes("@1 Q 5 5 5 7 | ,5 5 5 5 |")[4].Attack);

    [Fact]
    public void LegatoChord_HammersAndPullsStringByString() =>
        Assert.Equal([Attack.PullOff, Attack.HammerOn], Notes("@21 H [7 5],[5 7] |").Skip(2).Select(n => n.Attack));

    [Theory]
    [InlineData("15+", 0, 200)]
    [InlineData("15+q", 0, 50)]
    [InlineData("15+h", 0, 100)]
    [InlineData("15+wh", 0, 300)]
    [InlineData("15+ww", 0, 400)]
    [InlineData("15+w20c", 0, 220)]
    [InlineData("15+20c", 0, 20)]
    [InlineData("15+-", 0, 200, 0)]
    [InlineData("+15-", 200, 0)]
    [InlineData("15+h+", 0, 100, 200)]
    public void Bend_IsInCentsAboveTheFrettedPitch(string note, int from, params int[] to) =>
        Assert.Equal(new Bend(from, to.ToValueList()), Assert.Single(Notes($"@2 W {note} |")).Bend);

    [Fact]
    public void Hold_GoesOnBendingFromWhereTheBendEnded()
    {
        var notes = Notes("@2 Q 15+ = =- = |");
        Assert.Equal([new Bend(0, [200]), new Bend(200, []), new Bend(200, [0]), null], notes.Select(n => n.Bend));
        Assert.Equal([Attack.Picked, Attack.Held, Attack.Held, Attack.Held], notes.Select(n => n.Attack));
        Assert.Equal([true, true, true, false], notes.Select(n => n.IsHeldOn));
    }

    [Fact]
    public void Vibrato_KnowsWhetherItComesBeforeOrAfterTheBend() =>
        Assert.Equal([new Vibrato(VibratoWidth.Normal, 1), new Vibrato(VibratoWidth.Wide, 0)], Notes("@2 H 17+v 17vv+ |").Select(n => n.Vibrato));

    [Theory]
    [InlineData("12*", 76)]
    [InlineData("7*", 83)]
    [InlineData("19*", 83)]
    [InlineData("5*", 88)]
    [InlineData("24*", 88)]
    [InlineData("4*", 92)]
    [InlineData("9*", 92)]
    [InlineData("16*", 92)]
    [InlineData("3*", 95)]
    [InlineData("3*15", 79)]
    [InlineData("3*10", 86)]
    [InlineData("3*8", 91)]
    [InlineData("5*p", 69)]
    public void Harmonic_SoundsItsPartialToTheNearestSemitone(string note, int midi) =>
        Assert.Equal(midi, Assert.Single(Notes($"@1 W {note} |")).Sounding.Midi);

    [Theory]
    [InlineData(12, 2)]
    [InlineData(7, 3)]
    [InlineData(19, 3)]
    [InlineData(5, 4)]
    [InlineData(24, 4)]
    [InlineData(4, 5)]
    [InlineData(9, 5)]
    [InlineData(16, 5)]
    [InlineData(3, 6)]
    public void Node_LiesWhereThePartialDividesTheString(int fret, int partial) =>
        Assert.Equal((int)Math.Round(12 * Math.Log2(partial)), Fretlore.Guitar.HarmonicSeries.SemitonesAbove(fret));

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(6)]
    [InlineData(8)]
    [InlineData(10)]
    [InlineData(11)]
    [InlineData(13)]
    public void OtherFrets_HaveNoNode(int fret) => Assert.Null(Fretlore.Guitar.HarmonicSeries.SemitonesAbove(fret));

    [Fact]
    public void HarmonicUnderACapo_CountsFromTheCapo()
    {
        var song = Sheets.Song("title A\ntempo Q = 90\ntuning E2 A2 D3 G3 B3 E4\ncapo 2\nsection All\n  @1 W 12* |");
        Assert.Equal(78, song.Parts[0].Bars[0].Notes.Single().Sounding.Midi);
    }

    [Fact]
    public void Pick_RingsStringByString_AndAFretChangeStays()
    {
        var notes = Notes("pick [. 3 2 0 1 0]{ E 52 3 2 1 5:7 3 5 1 } |");
        Assert.Equal([(5, 3), (2, 1), (3, 0), (2, 1), (1, 0), (5, 7), (3, 0), (5, 7), (1, 0)], notes.Select(n => (n.String.Value, n.Fret.Number)));
        Assert.All(notes, n => Assert.True(n.LetsRing));
    }

    [Fact]
    public void AlternateStrokes_KeepSwingingThroughHoldsAndRests() =>
        Assert.Equal(
            [Stroke.Down, Stroke.None, Stroke.Down, Stroke.None, Stroke.Down, Stroke.Up, Stroke.Down, Stroke.Up],
            Events("@1 du{ E 5 = 5 R 5 5 5 5 } |").Select(e => e.Stroke));

    [Fact]
    public void StrokeOnARest_IsAStrokeInTheAir() => Assert.True(Events("@1 H 5 dR |")[1].IsAirStroke);

    [Fact]
    public void PickingFingers_GoRoundOverPickedNotes() =>
        Assert.Equal("p-ima".Select(c => c == '-' ? (char?)null : c), Events("by pima{ @1 Q 5 R E 5 5 Q 5 } |").Select(e => e.PickingFinger));

    [Fact]
    public void Spans_ReachOverBarLines_AndSwitchesMayOverlapThem()
    {
        var events = Events("@6 pm{ H 0 wah on 0 | 0 } 0 | wah off W 0 |");
        Assert.Equal([true, true, true, false, false], events.Select(e => e.Notes[0].IsPalmMuted));
        Assert.Equal([Spans.None, Spans.Wah, Spans.Wah, Spans.Wah, Spans.None], events.Select(e => e.Spans));
    }

    [Fact]
    public void GraceNote_TakesNoTime_AndIsHammeredFrom()
    {
        var played = Assert.Single(Events("@1 W g5,7 |"));
        Assert.Equal(5, Assert.Single(played.Graces).Fret.Number);
        Assert.Equal((7, Attack.HammerOn), (played.Notes[0].Fret.Number, played.Notes[0].Attack));
        Assert.Equal(Beats.Whole, played.Duration);
    }

    [Fact]
    public void Marks_AreKept()
    {
        var notes = Notes("@1 E 5? 5! 5' 5m 7f3 17:Y x5 x |");
        Assert.True(notes[0].IsGhost && notes[1].IsAccented && notes[2].IsStaccato && notes[3].IsPalmMuted);
        Assert.Equal(Finger.Ring, notes[4].Finger);
        Assert.Equal(ValueBase.ThirtySecond, notes[5].Tremolo);
        Assert.True(notes[6].IsDead && notes[7].IsDead);
    }

    [Fact]
    public void GlidesToAndFromNoFixedFret_AreMarkedOnTheNote()
    {
        var notes = Notes("@1 Q lo;15 hi;15 15;lo 15;hi |");
        Assert.Equal([GlideIn.FromBelow, GlideIn.FromAbove, GlideIn.None, GlideIn.None], notes.Select(n => n.GlideIn));
        Assert.Equal([GlideOut.None, GlideOut.None, GlideOut.Downwards, GlideOut.Upwards], notes.Select(n => n.GlideOut));
    }

    [Fact]
    public void WordsDynamicsAndChord_StandAtTheNextEvent()
    {
        var events = Events("@1 H 5 (f) \"let go\" (chord E/G#) 7 |");
        Assert.Equal((Dynamic.Forte, "let go", "E/G#"), (events[1].Dynamic, events[1].Words, events[1].ChordSymbol));
        Assert.Equal((null, null, null), (events[0].Dynamic, events[0].Words, events[0].ChordSymbol));
    }

    [Fact]
    public void OneFingerAcrossStrings_SoundsThemAllLowToHigh() =>
        Assert.Equal([(6, 7), (5, 7), (4, 7)], Notes("@465 W 7 |").Select(n => (n.String.Value, n.Fret.Number)));

    [Fact]
    public void Bracket_FillsTheChosenStrings_OrTheWholeNeck()
    {
        Assert.Equal([(5, 7), (4, 9)], Notes("@54 W [7 9] |").Select(n => (n.String.Value, n.Fret.Number)));
        Assert.Equal([(5, 3), (1, 0)], Notes("@54 W [. 3 . . . 0] |").Select(n => (n.String.Value, n.Fret.Number)));
    }

    [Fact]
    public void HeldSlot_HoldsItsStringOnly()
    {
        var notes = Notes("@21 H [5 7] [= 9] |");
        Assert.Equal([Attack.Picked, Attack.Picked, Attack.Held, Attack.Picked], notes.Select(n => n.Attack));
        Assert.Equal([true, false], notes.Take(2).Select(n => n.IsHeldOn));
    }

    [Fact]
    public void RhythmCell_StartsAnewAtEachBarLine() =>
        Assert.Equal(
            [ValueBase.Eighth, ValueBase.Sixteenth, ValueBase.Sixteenth, ValueBase.Eighth],
            Events("@6 ESS 0 0 0 0 0 0 0 0 0 Q 0 | ESS 0 H. 0 S 0 0 |").Where((_, i) => i is 0 or 1 or 2 or 10).Select(e => e.Value.Base));

    [Fact]
    public void Strand_BeginsWhereItIsWritten_AndGoesOnInTheNextBar()
    {
        var bass = Events("@1 H 5 bass{ @6 Q 0 0 } 5 | bass{ 3 1 = } W 5 |", StrandKind.Bass);
        Assert.Equal([Beats.Of(2), Beats.Of(3), Beats.Of(0), Beats.Of(1), Beats.Of(2)], bass.Select(e => e.Start));
        Assert.Equal(Attack.Held, bass[4].Notes[0].Attack);
    }

    [Fact]
    public void Trill_NamesItsOtherFret_UpOrDown()
    {
        Assert.Equal([7, 4, 0], Notes("@2 Q 5~7 5~4 H 3~0 |").Select(n => n.Trill!.Value.Number));
        Assert.Equal([8, 10], Notes("@32 W [7 9]~8 |".Replace("[7 9]~8", "[7~8 9~10]")).Select(n => n.Trill!.Value.Number));
    }

    [Theory]
    [InlineData("12_", 200)]
    [InlineData("12_h", 100)]
    [InlineData("12_wh", 300)]
    [InlineData("12_30c", 30)]
    public void Dip_IsInCentsBelowTheNote(string note, int cents) => Assert.Equal(cents, Assert.Single(Notes($"@1 W {note} |")).DipCents);

    [Fact]
    public void Rake_SweepsOverDeadStrings_IntoOneThatSounds()
    {
        var raked = Assert.Single(Events("W rake[. x x 9 . .] |"));
        Assert.Equal(Roll.Rake, raked.Roll);
        Assert.Equal([true, true, false], raked.Notes.Select(n => n.IsDead));
    }

    [Fact]
    public void Fermata_IsForTheNextNoteOrRest() =>
        Assert.Equal([false, true, false, true], Events("@1 Q 5 (fermata) 7 8 (fermata) R |").Select(e => e.HasFermata));
}
