using CsCheck;
using Fretlore.Guitar;
using Fretlore.Hands.Grips;
using Fretlore.Hands.Placing;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Tests.Hands.Placing;

/// <summary>Strings and frets for notes of which only the pitch is known.</summary>
public sealed class NotePlacerFacts
{
    [Theory]
    [InlineData("C3 E3 G3 C4 E4", "x 3 2 0 1 0")]
    [InlineData("A2 E3 A3 C4 E4", "x 0 2 2 1 0")]
    [InlineData("A2 E3 A3 C#4 E4", "x 0 2 2 2 0")]
    [InlineData("G2 B2 D3 G3 B3 G4", "3 2 0 0 0 3")]
    [InlineData("E2 B2 E3 G3 B3 E4", "0 2 2 0 0 0")]
    [InlineData("E2 B2 E3 G#3 B3 E4", "0 2 2 1 0 0")]
    [InlineData("D3 A3 D4 F#4", "x x 0 2 3 2")]
    [InlineData("D3 A3 D4 F4", "x x 0 2 3 1")]
    [InlineData("F2 C3 F3 A3 C4 F4", "1 3 3 2 1 1")]
    [InlineData("B2 D#3 A3 B3 F#4", "x 2 1 2 0 2")]
    public void AnOpenChord_GoesWhereEveryPlayerHasIt(string pitches, string shape) // the first-position chords of any handbook (common practice)
    {
        var places = Place(pitches.Split(' ').Select(pitch => Open(Midi(pitch), 0, 1)).ToList());
        Assert.Equal(shape, string.Join(' ', Enumerable.Range(0, 6).Select(i => places.FirstOrDefault(p => p!.String.Value == 6 - i)?.Fret.ToString() ?? "x")));
    }

    [Theory]
    [InlineData("C3 D3 E3 F3 G3 A3 B3 C4 D4 E4 F4 G4", "5:3 4:0 4:2 4:3 3:0 3:2 2:0 2:1 2:3 1:0 1:1 1:3")]
    [InlineData("G2 A2 B2 C3 D3 E3 F#3 G3 A3 B3 C4 D4 E4 F#4 G4", "6:3 5:0 5:2 5:3 4:0 4:2 4:4 3:0 3:2 2:0 2:1 2:3 1:0 1:2 1:3")]
    public void AScale_GoesIntoFirstPosition(string pitches, string expected) // common practice
    {
        var notes = pitches.Split(' ').Select((pitch, i) => Open(Midi(pitch), 0.3 * i, 0.3)).ToList();
        Assert.Equal(expected, string.Join(' ', Place(notes).Select(p => $"{p!.String}:{p.Fret}")));
    }

    /// <summary>Walks through six keys within the compass of first position, against the place each note has there (common practice).</summary>
    [Fact]
    public void LinesThatFitFirstPosition_StayThere()
    {
        int[] open = [64, 59, 55, 50, 45, 40];
        int[] major = [0, 2, 4, 5, 7, 9, 11];
        var random = new Random(1);
        var (same, all) = (0, 0);
        for (var walk = 0; walk < 24; walk++)
        {
            var key = new[] { 0, 7, 2, 5, 9, 4 }[walk % 6];
            var scale = Enumerable.Range(40, 28).Where(pitch => major.Contains(NoteName.Wrap(pitch - key, 12))).ToArray();
            var at = random.Next(scale.Length);
            var notes = new List<OpenNote>();
            for (var i = 0; i < 32; i++)
            {
                at = Math.Clamp(at + (random.Next(4) == 0 ? random.Next(-3, 4) : random.Next(2) * 2 - 1), 0, scale.Length - 1);
                notes.Add(Open(scale[at], 0.3 * i, 0.3));
            }
            var places = Place(notes);
            all += notes.Count;
            same += Enumerable.Range(0, notes.Count).Count(i => places[i]!.String.Value == 1 + Array.FindIndex(open, pitch => notes[i].Note.Sounding.Midi >= pitch));
        }
        Assert.True(same >= 0.95 * all, $"{same} of {all}");
    }

    [Fact]
    public void WhatIsHammered_StaysOnItsString()
    {
        // E4 and F#4 lie easiest on the open first string and its second fret; hammered from D4 they are on the second.
        var notes = new List<OpenNote>
        {
            Open(62, 0, 0.2),
            Open(64, 0.2, 0.2) with { Note = Note(64) with { Attack = Attack.HammerOn }, JoinedTo = 0 },
            Open(66, 0.4, 0.2) with { Note = Note(66) with { Attack = Attack.HammerOn }, JoinedTo = 1 },
        };
        Assert.Single(Place(notes).Select(p => p!.String).Distinct());
    }

    [Fact]
    public void ABend_IsNeverOnAnOpenString()
    {
        var place = Assert.Single(Place([Open(64, 0, 1) with { Note = Note(64) with { Bend = new Bend(0, [200]) } }]));
        Assert.False(place!.Fret.IsOpen);
    }

    [Fact]
    public void WhatIsDecided_Stays_AndTheOthersGoAroundIt()
    {
        var given = new NotePlace(new StringNumber(3), new Fret(9), new Height(64), null);
        var places = Place([Open(64, 0, 1) with { Given = given }, Open(59, 0, 1), Open(67, 0, 1)]);
        Assert.Equal(given, places[0]);
        Assert.All(places.Skip(1), p => Assert.InRange(p!.Fret.Number, 5, 13));
    }

    [Fact]
    public void EveryNoteOnTheNeck_IsPlaced_AtItsPitch_OneToAString()
    {
        string[] tunings = ["E2 A2 D3 G3 B3 E4", "D2 A2 D3 G3 A3 D4", "E1 A1 D2 G2", "G4 D3 G3 B3 D4", "B1 E2 A2 D3 G3 B3 E4"];
        Gen.Int[0, 1_000_000].Sample(seed =>
        {
            var random = new Random(seed);
            Assert.True(Tuning.TryParse(tunings[random.Next(tunings.Length)], out var tuning));
            var neck = new Neck(tuning, random.Next(3));
            var notes = new List<OpenNote>();
            for (var moment = 0; moment < random.Next(1, 12); moment++)
            {
                var count = random.Next(4) == 0 ? random.Next(2, neck.StringCount) : 1;
                for (var i = 0; i < count; i++) notes.Add(Open(random.Next(30, 84), 0.25 * moment, random.Next(1, 4) * 0.25, neck));
            }
            var places = NotePlacer.Place(notes, neck, HandSize.Average, mayArrange: false);
            for (var i = 0; i < places.Length; i++)
            {
                if (places[i] is not { } place) continue;
                Assert.Equal(notes[i].Note.Sounding, place.Sounding);
                Assert.Equal(notes[i].Note.Sounding, neck.Sounding(place.String, place.Fret));
                Assert.DoesNotContain(Enumerable.Range(0, i), j => places[j]?.String == place.String && notes[j].End > notes[i].Start + 1e-6 && notes[i].End > notes[j].Start + 1e-6);
            }
            // A note alone is placed wherever the neck has it.
            foreach (var alone in Enumerable.Range(0, notes.Count).Where(i => Enumerable.Range(0, notes.Count).All(j => i == j || notes[j].Start >= notes[i].End || notes[j].End <= notes[i].Start)))
            {
                var isThere = Enumerable.Range(1, tuning.StringCount).Any(n => neck.FretOf(new StringNumber(n), notes[alone].Note.Sounding) is not null);
                Assert.Equal(isThere, places[alone] is not null);
            }
        }, iter: 400);
    }

    private static NotePlace?[] Place(IReadOnlyList<OpenNote> notes) => NotePlacer.Place(notes, new Neck(Tuning.Standard), HandSize.Average, mayArrange: false);

    private static int Midi(string pitch)
    {
        Assert.True(Pitch.TryParse(pitch, out var read));
        return read.Midi;
    }

    private static Note Note(int midi) => new() { String = new StringNumber(1), Fret = Fret.Open, Sounding = new Height(midi) };

    private static OpenNote Open(int midi, double start, double length, Neck? neck = null) => new()
    {
        Note = Note(midi),
        Neck = neck ?? new Neck(Tuning.Standard),
        Start = start,
        End = start + length,
        RingsUntil = start + length,
        Claims = start,
    };
}
