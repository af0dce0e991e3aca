using Fretlore.Hands.Grips;
using Fretlore.Hands.Plans;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Hands;

/// <summary>Hand plans of lines that every player has under the fingers.</summary>
public sealed class HandPlannerFacts
{
    [Theory]
    [InlineData("E @6 5 8 @5 5 7 @4 5 7 @3 5 7", "1 4 1 3 1 3 1 3")] // A minor pentatonic, fifth position (common practice)
    [InlineData("E @5 3 5 @4 2 3 5 @3 2 4 5", "2 4 1 2 4 1 3 4")] // C major, second position (common practice)
    [InlineData("E @6 1 2 3 4 @5 1 2 3 4", "1 2 3 4 1 2 3 4")] // one finger a fret
    [InlineData("E @1 12 15 @2 12 15 @3 12 14 @4 12 14", "1 4 1 4 1 3 1 3")] // the same box an octave up
    [InlineData("E @3 7 9 @2 8 10 @1 7 10 @2 8 10", "1 3 2 4 1 4 2 4")] // seventh position
    public void AScaleInPosition_HasOneFingerAFret(string music, string fingers) => Assert.Equal(fingers, Fingers(Sheets.Line(music + " |")));

    [Fact]
    public void AThumbAskedForOnTwoStrings_IsToldAsWhatItIs()
    {
        var line = HandPlanner.Plan(Sheets.Line("@65 W [3f0 3f0] |")).Parts[0];
        Assert.Contains("the thumb where the sheet wants it at fret 3", line.Bars[0].Reasons);
        Assert.Contains(line.Problems, problem => problem.Kind == HandProblemKind.StatedFingersDontReach);
    }

    [Fact]
    public void AGlide_KeepsItsFinger()
    {
        var song = Sheets.Line("Q @4 5 5;12 14 |");
        var hands = HandPlanner.Plan(song);
        var notes = song.Parts[0].Bars[0].Notes.ToList();
        Assert.Equal(hands.Of(notes[1].Id).Finger, hands.Of(notes[2].Id).Finger);
    }

    [Fact]
    public void AHammerOn_EndsUnderAnotherFinger_WithoutAShift()
    {
        var song = Sheets.Line("Q @3 5 7,9 Q 5 |");
        var hands = HandPlanner.Plan(song);
        var notes = song.Parts[0].Bars[0].Notes.ToList();
        var index = notes.FindIndex(n => n.Attack == Attack.HammerOn);
        Assert.True(index > 0);
        Assert.True(hands.Of(notes[index - 1].Id).Finger < hands.Of(notes[index].Id).Finger);
        Assert.Equal(hands.Of(notes[index - 1].Id).Position, hands.Of(notes[index].Id).Position);
    }

    [Fact]
    public void OpenStrings_NeedNoFinger_AndGiveTimeToShift()
    {
        var tight = HandPlanner.Plan(Sheets.Line("E @6 1 13 1 13 1 13 1 13 |")).Parts[0].Whole;
        var open = HandPlanner.Plan(Sheets.Line("E @6 1 0 13 0 1 0 13 0 |"));
        Assert.All(open.Notes.Where((_, i) => i % 2 == 1), note => Assert.Null(note.Finger));
        Assert.True(open.Parts[0].Whole.ByEffort[(int)Effort.Hurry] / 3 < tight.ByEffort[(int)Effort.Hurry] / 7);
    }

    [Fact]
    public void AFasterTempo_IsNeverEasier()
    {
        HandLoad At(int tempo) => HandPlanner.Plan(Sheets.Song(Sheets.WithLine("E @6 1 13 @2 3 15 @1 1 12 @4 3 5 |").Replace("Q = 120", $"Q = {tempo}", StringComparison.Ordinal))).Parts[0].Whole;
        var loads = ((int[])[40, 80, 160, 240]).Select(At).ToList();
        for (var i = 1; i < loads.Count; i++)
        {
            Assert.True(loads[i].Cost >= loads[i - 1].Cost - 1e-9);
            Assert.True(loads[i].Difficulty >= loads[i - 1].Difficulty);
        }
    }

    [Fact]
    public void AStretch_IsSaidInFretsAndMillimetres()
    {
        var load = HandPlanner.Plan(Sheets.Line("W @6-1 [1 . . 5 . .] |")).Parts[0].Bars[0];
        Assert.Contains("a five-fret stretch at fret 1 (126 mm from index finger to little finger)", load.Reasons);
    }

    [Fact]
    public void WhatNoHandHolds_IsSaid_AndTheRestIsPlanned()
    {
        var song = Sheets.Line("Q @6-1 [1 . . . . 9] [1 3 3 2 1 1] [. 3 2 0 1 0] [1 . . . . 9] |");
        var hands = HandPlanner.Plan(song);
        Assert.Equal([HandProblemKind.CantBeHeld, HandProblemKind.CantBeHeld], hands.Parts[0].Problems.Select(p => p.Kind));
        Assert.Contains("mm apart", hands.Parts[0].Problems[0].Facts, StringComparison.Ordinal);
        var barre = song.Parts[0].Bars[0].Notes.Skip(2).Take(6).Select(n => hands.Of(n.Id).Finger);
        Assert.Equal([Finger.Index, Finger.Ring, Finger.Little, Finger.Middle, Finger.Index, Finger.Index], barre);
    }

    [Fact]
    public void ASongWithoutNotes_HasAPlanWithoutEffort()
    {
        var hands = HandPlanner.Plan(Sheets.Line("rest |"));
        Assert.Equal(Difficulty.None, hands.Parts[0].Whole.Difficulty);
        Assert.Equal(0, hands.Parts[0].Whole.Cost);
    }

    [Theory]
    [InlineData("kestrel-over-slate.lore")]
    [InlineData("lanterns-on-the-weir.lore")]
    [InlineData("salt-furnace.lore")]
    public void EveryStoppedNoteOfADemoSong_HasAFinger(string name)
    {
        var song = DemoSongs.Load(name);
        var hands = HandPlanner.Plan(song);
        Assert.Empty(hands.Parts.SelectMany(p => p.Problems).Select(p => $"{p.Kind} bar {song.Bars[p.Bar].Number}: {p.Facts}"));
        foreach (var note in song.Parts.SelectMany(p => p.Bars).SelectMany(b => b.Notes))
        {
            var needsNone = note.Fret.IsOpen || note.IsDead || note.Attack == Attack.Tap;
            Assert.Equal(needsNone, hands.Of(note.Id).Finger is null);
            if (note.Finger is { } stated && !needsNone) Assert.Equal(stated, hands.Of(note.Id).Finger);
        }
    }

    [Fact]
    public void TheSamePlan_ComesOfTheSameSong()
    {
        var song = DemoSongs.Load("salt-furnace.lore");
        Assert.Equal(HandPlanner.Plan(song).Notes, HandPlanner.Plan(song).Notes);
    }

    private static string Fingers(Song song)
    {
        var hands = HandPlanner.Plan(song);
        return string.Join(' ', song.Parts[0].Bars.SelectMany(b => b.Notes).Select(n => hands.Of(n.Id).Finger is { } f ? ((int)f).ToString(System.Globalization.CultureInfo.InvariantCulture) : "0"));
    }
}
