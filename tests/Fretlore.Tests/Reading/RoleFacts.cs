using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Tests.Songs;
using static Fretlore.Tests.Songs.SongBuilder;

namespace Fretlore.Tests.Reading;

/// <summary>What each note does in its place, as a theory teacher would say it (common practice).</summary>
public class RoleFacts
{
    private static readonly Func<Neck, Event> OpenC = Play(ValueBase.Whole, (5, 3), (4, 2), (3, 0), (2, 1), (1, 0));

    [Fact]
    public void NotesOfAChord_AreItsTones()
    {
        var e7 = Play(ValueBase.Whole, (6, 0), (5, 2), (4, 0), (3, 1), (2, 0), (1, 0));
        Assert.Equal("root, fifth, flat seventh, major third, fifth, root", Words(new SongBuilder { Key = C }.Part("guitar").Bar(e7)));
    }

    [Fact]
    public void AShortNoteBetweenTwoChordTones_IsAPassingTone() =>
        Assert.Equal("major third, passing tone to G, fifth, fifth", LeadOverC(Eighth(1, 0), Eighth(1, 1), Eighth(1, 3), Note(ValueBase.Half, 1, 3)));

    [Fact]
    public void AShortNoteThatGoesBack_IsANeighbour() =>
        Assert.Equal("fifth, neighbour of G, fifth, fifth", LeadOverC(Eighth(1, 3), Eighth(1, 5), Eighth(1, 3), Note(ValueBase.Half, 1, 3)));

    [Fact]
    public void ASemitoneLeaptToBelowAChordTone_IsAnApproachNote() =>
        Assert.Equal("root, approach note to G, fifth", LeadOverC(Eighth(2, 1), Eighth(1, 2), Note(ValueBase.Half, 1, 3)));

    [Fact]
    public void ALongNoteOverAChord_IsATension() =>
        Assert.Equal("ninth, a tension", LeadOverC(Note(ValueBase.Whole, 2, 3)));

    [Fact]
    public void ALongNoteOutsideTheKey_IsSaidToBeOutside() =>
        Assert.Equal("minor third, outside chord and key", LeadOverC(Note(ValueBase.Whole, 2, 4)));

    [Fact]
    public void APedalBetweenTheNotesOfALine_DoesNotBreakIt() => Assert.Equal(
        "root, major third, passing tone to A, major third, thirteenth, a tension",
        LeadOverC(Eighth(2, 13), Eighth(1, 0), Eighth(2, 12), Eighth(1, 0), Note(ValueBase.Half, 2, 10)));

    [Fact]
    public void ABentNote_IsWhatItReaches() =>
        Assert.Equal("bent to G, fifth", LeadOverC(With(Note(ValueBase.Whole, 1, 1), n => n with { Bend = new Bend(0, [200]) })));

    [Fact]
    public void TheThirdOverAPowerChord_IsTheThird()
    {
        var song = new SongBuilder { Key = C }.Part("bed").Bar(Play(ValueBase.Whole, (5, 3), (4, 5))).Part("lead").Bar(Note(ValueBase.Whole, 1, 0));
        Assert.EndsWith("major third", Words(song), StringComparison.Ordinal);
    }

    [Fact]
    public void WhereNoChordSounds_TheDegreeIsOfTheKey() =>
        Assert.Equal("fifth of the key", Words(new SongBuilder { Key = C }.Part("lead").Bar(Note(ValueBase.Whole, 1, 3))));

    [Fact]
    public void ADeadNote_HasNoRole() =>
        Assert.Equal("dead note", Words(new SongBuilder { Key = C }.Part("lead").Bar(With(Note(ValueBase.Whole, 1, 3), n => n with { IsDead = true }))));

    private static Key C => new(new NoteName(Step.C), Mode.Ionian, true);

    private static Func<Neck, Event> Eighth(int number, int fret) => Note(ValueBase.Eighth, number, fret);

    private static Func<Neck, Event> Note(ValueBase value, int number, int fret) => Play(value, (number, fret));

    private static string LeadOverC(params Func<Neck, Event>[] lead)
    {
        var song = new SongBuilder { Key = C }.Part("bed").Bar(OpenC).Part("lead").Bar(lead).Build();
        return string.Join(", ", SongReader.Read(song).Roles.Skip(5).Select(r => r.Words));
    }

    private static string Words(SongBuilder builder) => string.Join(", ", SongReader.Read(builder.Build()).Roles.Select(r => r.Words));
}
