using CsCheck;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Tests.Exchange;
using Fretlore.Tests.Songs;
using static Fretlore.Tests.Songs.SongBuilder;

namespace Fretlore.Tests.Performance;

public class PerformerFacts
{
    [Fact]
    public void Repeat_IsPlayedAgain_WithTheTempoThatIsInForceThereOnThePage()
    {
        var song = StudySongs.Plain();
        song = song with { Bars = song.Bars.Select((b, i) => i == 1 ? b with { Tempos = [new TempoMark(Beats.Of(2), Quarters(120))] } : b).ToValueList() };
        var played = Performer.Play(song);
        Assert.Equal([0, 1, 2, 0, 1, 2], played.Bars.Select(b => b.Bar));
        Assert.Equal([96m, 120m, 96m, 120m], played.Tempo.Changes.Select(c => c.Tempo.PerMinute));
        Assert.Equal(2 * (6 * 60 / 96.0 + 6 * 60 / 120.0), played.Seconds, 9);
        Assert.Equal(5.5, played.Tempo.QuartersAt(played.Tempo.SecondsAt(5.5)), 9);
        Assert.Equal(17.25, played.Tempo.QuartersAt(played.Tempo.SecondsAt(17.25)), 9);
    }

    [Fact]
    public void Tie_OverABarLine_IsOneNote()
    {
        var notes = Performer.Play(StudySongs.Plain()).Parts[0].Notes;
        var tied = Assert.Single(notes, n => n.HeldNotes.Count > 0 && n.Onset < Beats.Of(12));
        Assert.Equal((Beats.Of(6), Beats.Of(10)), (tied.Onset, tied.Release));
    }

    [Fact]
    public void Swing_PlaysTheFirstEighthTwiceAsLong_AndLeavesTripletsEven()
    {
        var triplet = new Tuplet(3, 2, ValueBase.Eighth);
        Func<Neck, Event> member = neck => Play(ValueBase.Eighth, (1, 0))(neck) with { Tuplet = triplet };
        var song = new SongBuilder().Part("guitar")
            .Bar(Play(ValueBase.Eighth, (2, 0)), Play(ValueBase.Eighth, (2, 1)), member, member, member, Play(ValueBase.Half, (2, 3)))
            .Build();
        song = song with { Bars = [song.Bars[0] with { FeelChange = new Feel(ValueBase.Eighth) }] };
        Assert.Equal(
            [Beats.Zero, Beats.Of(2, 3), Beats.Of(1), Beats.Of(4, 3), Beats.Of(5, 3), Beats.Of(2)],
            Performer.Play(song).Parts[0].Notes.Select(n => n.Onset));
    }

    [Fact]
    public void LetRing_SoundsUntilItsStringIsPlayedAgain()
    {
        var ringing = (int number, int fret) => With(Play(ValueBase.Quarter, (number, fret)), n => n with { LetsRing = true });
        var song = new SongBuilder().Part("guitar")
            .Bar(ringing(5, 3), ringing(3, 0), ringing(5, 2), ringing(2, 1))
            .Bar(Play(ValueBase.Whole, (6, 3)))
            .Build();
        Assert.Equal([2, 4, 4, 4, 8], Performer.Play(song).Parts[0].Notes.Select(n => (int)n.Release.ToDouble()));
    }

    [Fact]
    public void GraceNote_ComesBeforeTheBeat_AndLeavesTheMainNoteOnIt()
    {
        var grace = new Note { String = new StringNumber(2), Fret = new Fret(5), Sounding = new Height(64) };
        var main = With(Play(ValueBase.Quarter, (2, 7)), n => n with { Attack = Attack.HammerOn });
        var song = new SongBuilder().Part("guitar")
            .Bar(Play(ValueBase.Quarter, (2, 3)), neck => main(neck) with { Graces = [grace] }, Rest(ValueBase.Half))
            .Build();
        var notes = Performer.Play(song).Parts[0].Notes;
        Assert.Equal([Beats.Zero, Beats.Of(7, 8), Beats.Of(1)], notes.Select(n => n.Onset));
        Assert.Equal([Beats.Of(7, 8), Beats.Of(1), Beats.Of(2)], notes.Select(n => n.Release));
        Assert.True(notes[1].IsGrace);
    }

    [Fact]
    public void TremoloPicking_IsAStrokeForEachValue_DownAndUpInTurn()
    {
        var notes = Performer.Play(StudySongs.One(ValueBase.Quarter, n => n with { Tremolo = ValueBase.Sixteenth })).Parts[0].Notes;
        Assert.Equal([Beats.Zero, Beats.Of(1, 4), Beats.Of(1, 2), Beats.Of(3, 4)], notes.Select(n => n.Onset));
        Assert.Equal([Stroke.Down, Stroke.Up, Stroke.Down, Stroke.Up], notes.Select(n => n.Stroke));
    }

    [Fact]
    public void RolledShape_StartsOnTheBeatWithItsFirstString()
    {
        var chord = Play(ValueBase.Half, (6, 3), (5, 2), (4, 0));
        var song = new SongBuilder().Part("guitar").Bar(neck => chord(neck) with { Roll = Roll.HighToLow }, Rest(ValueBase.Half)).Build();
        Assert.Equal([(4, Beats.Zero), (5, Beats.Of(1, 16)), (6, Beats.Of(1, 8))], Performer.Play(song).Parts[0].Notes.Select(n => (n.String.Value, n.Onset)));
    }

    [Fact]
    public void Velocity_FollowsDynamicsAccentsAndGhosts()
    {
        var loud = Play(ValueBase.Quarter, (1, 0));
        var song = new SongBuilder().Part("guitar").Bar(
            neck => loud(neck) with { Dynamic = Dynamic.Piano },
            With(loud, n => n with { IsAccented = true }),
            With(loud, n => n with { IsGhost = true }),
            neck => loud(neck) with { Dynamic = Dynamic.Fortissimo }).Build();
        var velocities = Performer.Play(song).Parts[0].Notes.Select(n => n.Velocity).ToArray();
        Assert.Equal(Loudness.LevelOf(Dynamic.Piano), velocities[0]);
        Assert.True(velocities[2] < velocities[0] && velocities[0] < velocities[1] && velocities[1] < velocities[3]);
    }

    [Fact]
    public void Crescendo_LeadsEvenlyToTheNextDynamic()
    {
        var growing = (Func<Neck, Event>)(neck => Play(ValueBase.Quarter, (1, 0))(neck) with { Spans = Spans.Crescendo });
        var song = new SongBuilder().Part("guitar").Bar(
            neck => growing(neck) with { Dynamic = Dynamic.Piano }, growing, growing,
            neck => Play(ValueBase.Quarter, (1, 0))(neck) with { Dynamic = Dynamic.Fortissimo }).Build();
        Assert.Equal([48, 69, 91, 112], Performer.Play(song).Parts[0].Notes.Select(n => n.Velocity));
    }

    [Fact]
    public void EveryWrittenNote_IsHeardEachTimeItsBarIsPlayed() => SongGen.Songs.Sample(song =>
    {
        var performance = Performer.Play(song);
        for (var part = 0; part < song.Parts.Count; part++)
        {
            var written = performance.Bars.SelectMany(b => song.Parts[part].Bars[b.Bar].Notes).Select(n => n.Id.Index).GroupBy(i => i).ToDictionary(g => g.Key, g => g.Count());
            foreach (var note in performance.Parts[part].Notes)
            {
                Assert.True(note.Release > note.Onset && note.Onset >= Beats.Zero, $"{note.Onset} to {note.Release}");
                Assert.InRange(note.Velocity, 1, 127);
                Assert.Equal(performance.Tempo.SecondsAt(note.Onset), note.OnsetSeconds, 9);
            }
            var heard = performance.Parts[part].Notes.SelectMany(n => n.HeldNotes.Select(h => h.Index).Append(n.Note.Index)).ToHashSet();
            Assert.True(written.Keys.All(heard.Contains));
        }
    }, iter: 200);

    [Fact]
    public void AString_NeverSoundsTwoNotesAtOnce() => SongGen.Songs.Sample(song =>
    {
        foreach (var onString in Performer.Play(song).Parts.SelectMany(p => p.Notes.GroupBy(n => n.String)))
        {
            var notes = onString.ToList();
            for (var i = 1; i < notes.Count; i++) Assert.True(notes[i - 1].Release <= notes[i].Onset, $"{notes[i - 1]} and {notes[i]}");
        }
    }, iter: 200);

    private static Tempo Quarters(decimal perMinute) => new(new NoteValue(ValueBase.Quarter), perMinute);

    [Fact]
    public void Fermata_HoldsAllParts_AtHalfTheTempo()
    {
        Func<Neck, Event> held = neck => Play(ValueBase.Quarter, (1, 5))(neck) with { HasFermata = true };
        var song = new SongBuilder { Tempo = Quarters(60) }.Part("one")
            .Bar(Play(ValueBase.Quarter, (1, 0)), held, Play(ValueBase.Half, (1, 0)))
            .Part("two").Bar(Play(ValueBase.Half, (6, 0)), Play(ValueBase.Half, (6, 0))).Build();
        var played = Performer.Play(song);
        Assert.Equal([0, 1, 3], played.Parts[0].Notes.Select(n => n.OnsetSeconds));
        Assert.Equal([0, 3], played.Parts[1].Notes.Select(n => n.OnsetSeconds));
        Assert.Equal(5, played.Seconds, 9);
    }

    [Fact]
    public void Trill_HammersAndPullsInTurn_ForAsLongAsItsNote()
    {
        var song = new SongBuilder { Tempo = Quarters(60) }.Part("guitar")
            .Bar(With(Play(ValueBase.Half, (2, 5)), n => n with { Trill = new Fret(7) }), Play(ValueBase.Half, (2, 5))).Build();
        var notes = Performer.Play(song).Parts[0].Notes.Where(n => n.Onset < Beats.Of(2)).ToArray();
        Assert.Equal(Beats.Of(2), notes[^1].Release);
        Assert.Equal([5, 7, 5, 7], notes.Take(4).Select(n => n.Fret.Number));
        Assert.Equal([Attack.Picked, Attack.HammerOn, Attack.PullOff, Attack.HammerOn], notes.Take(4).Select(n => n.Attack));
        Assert.All(notes, n => Assert.InRange(n.ReleaseSeconds - n.OnsetSeconds, 0.05, 0.13));
        Assert.All(notes, n => Assert.Equal(n.Fret.Number - 5, n.Height.Midi - notes[0].Height.Midi));
    }

    [Fact]
    public void Dip_GoesDownByItsDepth_AndComesBack()
    {
        var song = new SongBuilder { Tempo = Quarters(60) }.Part("guitar").Bar(With(Play(ValueBase.Whole, (2, 5)), n => n with { DipCents = 100 })).Build();
        var moves = Assert.Single(Performer.Play(song).Parts[0].Notes).Pitch.Moves;
        Assert.Equal([(0.0, -100.0), (-100.0, 0.0)], moves.Select(m => ((double)m.FromCents, (double)m.ToCents)));
    }
}
