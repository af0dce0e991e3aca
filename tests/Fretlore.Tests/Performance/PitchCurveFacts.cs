using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Tests.Exchange;
using Fretlore.Tests.Songs;
using static Fretlore.Tests.Songs.SongBuilder;

namespace Fretlore.Tests.Performance;

public class PitchCurveFacts
{
    [Fact]
    public void Bend_RisesFromTheFrettedPitch_AndStaysAtTheWholeStep()
    {
        var note = Play(n => n with { Bend = new Bend(0, [200]) });
        Assert.Equal(0, note.Pitch.CentsAt(0), 6);
        Assert.Equal(200, note.Pitch.CentsAt(Length(note)), 6);
        Assert.Equal(200, note.Pitch.CentsAt(Length(note) / 2), 6);
        var rising = Enumerable.Range(0, 100).Select(i => note.Pitch.CentsAt(i * Length(note) / 100)).ToList();
        Assert.Equal(rising.Order(), rising);
    }

    [Fact]
    public void Release_AfterWholeStepBend_ReturnsToTheFrettedPitch()
    {
        var note = Play(n => n with { Bend = new Bend(0, [200, 0]) });
        Assert.Equal(200, note.Pitch.CentsAt(Length(note) * 0.49), 6);
        Assert.Equal(0, note.Pitch.CentsAt(Length(note)), 6);
    }

    [Fact]
    public void PreBend_IsThereBeforeThePick() => Assert.Equal(200, Play(n => n with { Bend = new Bend(200, [0]) }).Pitch.CentsAt(0), 6);

    [Fact]
    public void HeldBend_GoesOnFromWhereItWas_UntilItIsReleased()
    {
        var song = new SongBuilder().Part("guitar").Bar(
            With(SongBuilder.Play(ValueBase.Half, (2, 15)), n => n with { Bend = new Bend(0, [200]), IsHeldOn = true }),
            With(SongBuilder.Play(ValueBase.Half, (2, 15)), n => n with { Attack = Attack.Held, Bend = new Bend(200, [0]) })).Build();
        var note = Assert.Single(Performer.Play(song).Parts[0].Notes);
        Assert.Equal([0, 200, 0], new[] { 0, 0.99, 2 }.Select(t => Math.Round(note.Pitch.CentsAt(t), 6)));
    }

    [Fact]
    public void Vibrato_PushesAPlainStringUp_AndLetsABentOneDown()
    {
        var plain = Play(n => n with { Vibrato = new Vibrato(VibratoWidth.Normal) });
        var bent = Play(n => n with { Bend = new Bend(0, [200]), Vibrato = new Vibrato(VibratoWidth.Wide, 1) });
        var times = Enumerable.Range(0, 200).Select(i => i / 100.0).ToList();
        Assert.All(times, t => Assert.InRange(plain.Pitch.CentsAt(t), 0, 35));
        Assert.All(times, t => Assert.InRange(bent.Pitch.CentsAt(t), 0, 200));
        Assert.Contains(times, t => bent.Pitch.CentsAt(t) is > 119 and < 125 && t > 0.5);
    }

    [Fact]
    public void Glide_ArrivesAtTheNextNotesPitch_FretByFret()
    {
        var song = new SongBuilder().Part("guitar").Bar(
            SongBuilder.Play(ValueBase.Half, (2, 5)), With(SongBuilder.Play(ValueBase.Half, (2, 9)), n => n with { Attack = Attack.Glide })).Build();
        var notes = Performer.Play(song).Parts[0].Notes;
        var heights = Enumerable.Range(0, 1001).Select(i => notes[0].Pitch.CentsAt(i / 1000.0)).Distinct();
        Assert.Equal([0, 100, 200, 300, 400], heights);
        Assert.True(notes[1].Pitch.IsFlat);
    }

    [Fact]
    public void GlideOut_AtAnOpenString_HasNowhereToGo() =>
        Assert.Equal(0, Performer.Play(StudySongs.One(ValueBase.Whole, n => n with { GlideOut = GlideOut.Downwards }, 0)).Parts[0].Notes[0].Pitch.Reach);

    private static PerformedNote Play(Func<Note, Note> change) => Performer.Play(StudySongs.One(ValueBase.Whole, change)).Parts[0].Notes[0];

    private static double Length(PerformedNote note) => note.ReleaseSeconds - note.OnsetSeconds;
}
