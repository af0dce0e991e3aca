using CsCheck;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Reading;

/// <summary>What must not change a reading, and what must change all of it alike, on generated songs.</summary>
public class InvarianceFacts
{
    [Fact]
    public void TransposingASong_TransposesItsChordsRolesScalesAndKeys() => Gen.Select(SongGen.Songs, Gen.Int[1, 11], Gen.Bool).Sample(
        (song, up, isStated) =>
        {
            // Silence is in C, wherever it is moved.
            if (song.Parts.SelectMany(p => p.Bars).SelectMany(b => b.Notes).All(n => n.IsDead)) return;
            var here = isStated ? song : WithoutKeys(song);
            var (first, second) = (SongReader.Read(here), SongReader.Read(Transposed(here, up)));
            Assert.Equal(Names(first, up), Names(second, 0));
        }, iter: 150);

    [Fact]
    public void StringsInAnotherOrder_ChangeNoName() => SongGen.Songs.Sample(
        song => Assert.Equal(Names(SongReader.Read(song), 0), Names(SongReader.Read(Renumbered(song)), 0)), iter: 100);

    [Fact]
    public void TheSameHeightsInAnotherTuning_ReadTheSame() => SongGen.Songs.Sample(
        song => Assert.Equal(Names(SongReader.Read(song), 0), Names(SongReader.Read(Retuned(song)), 0)), iter: 100);

    [Fact]
    public void EveryNote_HasARole_AndItsSpellingSounds() => SongGen.Songs.Sample(song =>
    {
        var reading = SongReader.Read(song);
        Assert.Equal(song.NoteCount, reading.Roles.Length);
        Assert.Equal(song.Bars.Count, reading.KeyStretches.Sum(k => k.BarCount));
        foreach (var note in song.Parts.SelectMany(p => p.Bars).SelectMany(b => b.Notes))
        {
            Assert.Equal(note.Sounding, reading.SpellingOf(note.Id).Height);
            Assert.NotEmpty(reading.Roles[note.Id.Index].Words);
            Assert.Equal(note.IsDead, reading.Roles[note.Id.Index].Kind == RoleKind.Dead);
        }
    }, iter: 100);

    // Memory asked for stands for work done: it can be counted, and every step of the reading makes something.
    [Fact]
    public void ASongTwiceAsLong_TakesTwiceTheWork()
    {
        long Work(int bars)
        {
            var builder = new SongBuilder().Part("guitar");
            for (var bar = 0; bar < bars; bar++)
            {
                var fret = bar % 5;
                builder.Bar([.. Enumerable.Range(0, 4).Select(i => SongBuilder.Play(ValueBase.Quarter, (6, fret + i), (5, fret + 2), (4, fret + 2)))]);
            }
            var song = builder.Build();
            SongReader.Read(song);
            var before = GC.GetAllocatedBytesForCurrentThread();
            SongReader.Read(song);
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }
        Assert.InRange(1.0 * Work(800) / Work(400), 1.7, 2.2);
    }

    // Everything that is named, with the letters as pitch classes, moved up.
    private static string[] Names(SongReading reading, int up)
    {
        int Up(NoteName name) => NoteName.Wrap(name.PitchClass + up, 12);
        return
        [
            .. reading.KeyStretches.Select(k => $"{k.FirstBar}+{k.BarCount} {Up(k.Key.Tonic)} {k.Key.Mode}"),
            .. reading.Parts.SelectMany(p => p.Chords).Select(c =>
                $"{c.Bar}:{c.At} {Up(c.Best.Root)} {c.Best.Kind} / {Up(c.Best.Bass)} {c.Function?.Numeral} {c.Best.Cost:F3}"),
            .. reading.Parts.SelectMany(p => p.Cadences).Select(c => $"{c.Bar} {c.Words}"),
            .. reading.Parts.SelectMany(p => p.Phrases).Select(p => $"{p.FirstBar} {Up(p.Scales[0].Root)} {p.Scales[0].Name}"),
            .. reading.Roles.Select(r => $"{r.Kind} {NoteName.Wrap(r.Degree.Semitones, 12)} {(r.Goal is { } goal ? Up(goal) : -1)}"),
        ];
    }

    private static Song WithoutKeys(Song song) => song with { Bars = song.Bars.Select(b => b with { Key = null }).ToValueList() };

    private static Song Transposed(Song song, int up) => WithNotes(song, n => n with { Sounding = n.Sounding + up }) with
    {
        Bars = song.Bars.Select(b => b with { Key = b.Key is { } key ? key with { Tonic = Up(key, up) } : null }).ToValueList(),
    };

    // The spelling of the tonic with the plainer signature.
    private static NoteName Up(Key key, int up)
    {
        var fifths = key.Tonic.Fifths + up * 7 % 12;
        while (fifths - (key.Tonic.Fifths - key.Signature) > 6) fifths -= 12;
        return NoteName.FromFifths(fifths);
    }

    // Strings keep apart, whatever their numbers.
    private static Song Renumbered(Song song) => WithNotes(song, n => n with { String = new StringNumber(1 + (n.String.Value * 5 + 2) % 13) });

    private static Song Retuned(Song song)
    {
        Assert.True(Tuning.TryParse("C2 G2 C3 G3 C4 D4", out var other));
        return song with { Parts = song.Parts.Select(p => p with { Neck = new Neck(other) }).ToValueList() };
    }

    private static Song WithNotes(Song song, Func<Note, Note> change) => song with
    {
        Parts = song.Parts.Select(p => p with
        {
            Bars = p.Bars.Select(b => b with
            {
                Strands = b.Strands.Select(s => s with
                {
                    Events = s.Events.Select(e => e with { Notes = e.Notes.Select(change).ToValueList(), Graces = e.Graces.Select(change).ToValueList() }).ToValueList(),
                }).ToValueList(),
            }).ToValueList(),
        }).ToValueList(),
    };
}
