using CsCheck;
using Fretlore.Guitar;
using Fretlore.Hands.Grips;
using Fretlore.Hands.Plans;
using Fretlore.Hands.Shapes;
using Fretlore.Music.Chords;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Hands;

/// <summary>What a hand does where a capo lies across some strings.</summary>
public sealed class PartialCapoFacts
{
    private static readonly Neck Free = new(Tuning.Standard);
    private static readonly Neck HalfShut = Free with { Capo = Capo.Over(2, new StringNumber(5), new StringNumber(3)) };

    /// <summary>One finger lies across all six strings on a free neck, and not where the capo is in its way.</summary>
    [Theory]
    [InlineData("1 3 3 x 1 1", false)]
    [InlineData("2 4 4 x 2 2", false)]
    [InlineData("3 5 5 4 3 3", true)]
    public void NoBarre_LiesAcrossTheCapoOrBehindIt(string shape, bool isBarred)
    {
        var hold = GripFacts.HoldOf(shape);
        Assert.Contains(Grips(Free, hold), grip => grip.StringsUnder((int)Finger.Index) == 6);
        Assert.Equal(isBarred, Grips(HalfShut, hold).Any(grip => grip.StringsUnder((int)Finger.Index) == 6));
    }

    [Fact]
    public void FreeStrings_AreStoppedBesideTheCapo() => Assert.NotEmpty(Grips(HalfShut, GripFacts.HoldOf("2 0 0 0 1 x")));

    /// <summary>All grips of random holds: those of the free neck, less those in which a finger lies across a covered string at or behind the capo.</summary>
    [Fact]
    public void UnderTheCapo_AHandHoldsWhatItElseDoes_ButForFingersAcrossIt() =>
        Gen.Select(Gen.Int[1, 5], Gen.Int[1, 6], Gen.Int[1, 6], Gen.Int[0, 1_000_000]).Sample((fret, a, b, seed) =>
        {
            var random = new Random(seed);
            var neck = Free with { Capo = Capo.Over(fret, new StringNumber(a), new StringNumber(b)) };
            if (!neck.Capo.Fits(6)) return;
            var low = random.Next(1, 7);
            var frets = Enumerable.Range(1, 6).OrderBy(_ => random.Next()).Take(random.Next(1, 5)).OrderDescending()
                .Select(number => (Number: number, Fret: random.Next(4) == 0 ? 0 : low + random.Next(4))).Where(at => neck.Has(new StringNumber(at.Number), new Fret(at.Fret))).ToList();
            var hold = new Hold([.. frets.Where(at => at.Fret > 0).Select(at => new Press(at.Number, at.Fret))], frets.Where(at => at.Fret == 0).Aggregate(0, (open, at) => open | 1 << at.Number));
            if (hold.Presses.Length == 0) return;
            var allowed = Grips(Free, hold).Where(grip => !Enumerable.Range(0, Grip.FingerCount).Any(finger => grip.Uses(finger)
                && Enumerable.Range(grip.HighStringOf(finger), grip.StringsUnder(finger)).Any(number => neck.Capo.Covers(new StringNumber(number)) && grip.FretOf(finger) <= fret)));
            Assert.Equal(allowed.Select(Words), Grips(neck, hold).Select(Words));
        });

    /// <summary>Whole lines: what is planned can be held, moment by moment.</summary>
    [Fact]
    public void APlannedSong_NeverHasAFingerAcrossTheCapo() => SongGen.Songs.Where(song => song.Parts.Any(part => part.Neck.Capo.IsPartial)).Sample(song =>
    {
        var plan = HandPlanner.Plan(song);
        foreach (var part in song.Parts)
        {
            foreach (var item in part.Bars.SelectMany(bar => bar.Strands).SelectMany(strand => strand.Events))
            {
                var stopped = item.Notes.Where(note => plan.Of(note.Id).Finger is not null && !note.Fret.IsOpen).ToList();
                Assert.All(stopped, note => Assert.True(part.Neck.Has(note.String, note.Fret) || note.Harmonic is not null));
                foreach (var finger in stopped.GroupBy(note => (plan.Of(note.Id).Finger, note.Fret)).Where(finger => finger.All(note => note.Finger is null)))
                {
                    var (first, last) = (finger.Min(note => note.String.Value), finger.Max(note => note.String.Value));
                    Assert.DoesNotContain(Enumerable.Range(first, last - first + 1), number => part.Neck.Capo.IsBehind(new StringNumber(number), finger.Key.Fret));
                }
            }
        }
    }, iter: 300);

    [Fact]
    public void ShapesFound_SoundTheChord_AndLieOnTheNeck()
    {
        foreach (var text in (string[])["E", "Asus4", "Em9", "B7"])
        {
            Assert.True(ChordSymbol.TryParse(text, out var symbol, out _));
            var found = ShapeFinder.Find(symbol, HalfShut);
            Assert.NotEmpty(found);
            var tones = symbol.Tones.Up(symbol.Name.Root.PitchClass);
            foreach (var choice in found)
            {
                Assert.All(choice.Shape.On(HalfShut), on => Assert.True(HalfShut.Has(on.String, on.Fret) && tones.Contains(on.Height.PitchClass), $"{text}: {choice.Shape}"));
                Assert.True(ShapeReach.CanBeHeld(choice.Shape, HalfShut), $"{text}: {choice.Shape}");
            }
        }
    }

    /// <summary>All strings open under a capo at fret 2 of strings 5 to 3 are E with a fourth: no finger is needed.</summary>
    [Fact]
    public void WhatTheCapoAloneHolds_IsTheEasiestShape()
    {
        Assert.True(ChordSymbol.TryParse("Esus4", out var symbol, out _));
        Assert.Equal("0 0 0 0 0 0", ShapeFinder.Find(symbol, HalfShut)[0].Shape.ToString());
    }

    [Fact]
    public void AShapeBehindTheCapo_NoHandHolds() =>
        Assert.False(ShapeReach.CanBeHeld(new Shape([new Fret(0), new Fret(2), new Fret(2), new Fret(1), new Fret(0), new Fret(0)]), HalfShut));

    private static Grip[] Grips(Neck neck, Hold hold) => new GripFinder(new GripRules(NeckGeometry.Of(neck), HandSize.Average)).Find(new Hold(hold.Presses, hold.OpenStrings) { Capo = neck.Capo });

    private static string Words(Grip grip) => $"{string.Join(' ', grip.Fingers)} {grip.Position} {grip.Cost:0.000}";
}
