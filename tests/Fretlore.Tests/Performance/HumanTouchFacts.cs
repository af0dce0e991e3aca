using CsCheck;
using Fretlore.Performance;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Performance;

/// <summary>The small differences a player makes.</summary>
public sealed class HumanTouchFacts
{
    [Fact]
    public void Differences_AreSmall_NotAllAlike_AndTheSameEachTime()
    {
        var exact = Performer.Play(Sheets.Line("times 4{ @6 E 0 3 5 3 0 3 5 3 | }")).Parts[0];
        var (once, again, other) = (HumanTouch.Play(exact, 0), HumanTouch.Play(exact, 0), HumanTouch.Play(exact, 1));
        Assert.Equal(once.Notes.AsEnumerable(), again.Notes);
        Assert.NotEqual(once.Notes.AsEnumerable(), other.Notes);
        var shifts = once.Notes.Zip(exact.Notes, (a, b) => 1000 * (a.OnsetSeconds - b.OnsetSeconds)).ToList();
        Assert.All(shifts, shift => Assert.InRange(shift, -4, 4));
        Assert.True(shifts.Distinct().Count() > 20 && Math.Abs(shifts.Average()) < 1);
        // Each pass of the repeat differs from the one before.
        Assert.NotEqual(shifts[..8], shifts[8..16]);
        Assert.All(once.Notes.Zip(exact.Notes), pair => Assert.InRange(pair.First.Velocity - pair.Second.Velocity, -6, 6));
    }

    [Fact]
    public void StringsStruckTogether_FollowEachOther_TheLowOneFirst()
    {
        var notes = HumanTouch.Play(Performer.Play(Sheets.Line("@6-1 H R [0 2 2 1 0 0]")).Parts[0], 0).Notes;
        Assert.Equal([6, 5, 4, 3, 2, 1], notes.Select(n => n.String.Value));
        Assert.All(notes.Zip(notes.Skip(1)), pair => Assert.Equal(0.0015, pair.Second.OnsetSeconds - pair.First.OnsetSeconds, 6));
    }

    [Fact]
    public void NoOnset_WandersIntoItsNeighboursOnTheString() => SongGen.Songs.Sample(song =>
    {
        foreach (var part in Performer.Play(song).Parts)
        {
            var played = HumanTouch.Play(part, 1);
            Assert.Equal(part.Notes.Length, played.Notes.Length);
            foreach (var onString in played.Notes.GroupBy(n => n.String))
            {
                var notes = onString.ToList();
                Assert.All(notes, n => Assert.True(n.OnsetSeconds >= 0 && n.ReleaseSeconds > n.OnsetSeconds));
                for (var i = 1; i < notes.Count; i++) Assert.True(notes[i - 1].ReleaseSeconds <= notes[i].OnsetSeconds + 1e-9);
            }
        }
    }, iter: 100);

    [Fact]
    public void UnderTheTremoloArm_AHeldPitchDipsAndComesBack()
    {
        var note = Performer.Play(Sheets.Line("@3 arm{ W 7 }")).Parts[0].Notes[0];
        var cents = Enumerable.Range(0, 200).Select(i => note.Pitch.CentsAt(i / 100.0)).ToList();
        Assert.Equal(-60, cents.Min(), 1.0);
        Assert.Equal(0, cents.Max(), 1.0);
        // Four and a half times a second, two seconds long.
        Assert.Equal(9, Enumerable.Range(1, 198).Count(i => cents[i] < cents[i - 1] && cents[i] <= cents[i + 1]));
    }
}
