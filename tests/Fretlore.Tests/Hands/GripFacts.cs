using Fretlore.Guitar;
using Fretlore.Hands.Grips;
using Fretlore.Score;

namespace Fretlore.Tests.Hands;

/// <summary>What one hand can hold, and how it would.</summary>
public sealed class GripFacts
{
    /// <summary>Everyday shapes with the fingers that first books for guitar teach (common practice, from memory).</summary>
    [Theory]
    [InlineData("x 3 2 0 1 0", "- 3 2 0 1 0")] // C
    [InlineData("0 2 2 1 0 0", "0 2 3 1 0 0")] // E
    [InlineData("x 0 2 2 1 0", "- 0 2 3 1 0")] // Am
    [InlineData("x x 0 2 3 2", "- - 0 1 3 2")] // D
    [InlineData("x x 0 2 3 1", "- - 0 2 3 1")] // Dm
    [InlineData("x 2 1 2 0 2", "- 2 1 3 0 4")] // B7
    [InlineData("1 3 3 2 1 1", "1 3 4 2 1 1")] // F, barre
    [InlineData("x 2 4 4 3 2", "- 1 3 4 2 1")] // Bm, barre
    [InlineData("5 7 7 5 5 5", "1 3 4 1 1 1")] // Am, barre
    [InlineData("3 5 5 x x x", "1 3 4 - - -")] // G5
    public void AnEverydayShape_IsHeldAsFirstBooksTeachIt(string shape, string fingers) => Assert.Equal(fingers, Best(shape, Tuning.Standard));

    [Fact]
    public void ThreeStringsAtOneFret_AreOneFinger_InADroppedTuning()
    {
        Assert.True(Tuning.TryParse("A1 E2 A2 D3 F#3 B3", out var dropped));
        Assert.Equal("1 1 1 - - -", Best("7 7 7 x x x", dropped));
    }

    [Theory]
    [InlineData("1 x x x x 7", HandSize.Large)] // 179 mm
    [InlineData("1 x 6 x x x", HandSize.Average)] // 153 mm
    [InlineData("1 2 3 4 6 x", HandSize.Average)] // five frets at once and no barre
    [InlineData("2 1 0 1 2 3", HandSize.Average)] // a barre would lie on the open string: five fingers
    public void WhatNoHandReaches_HasNoGrip(string shape, HandSize size) => Assert.Empty(Grips(shape, Tuning.Standard, size));

    [Theory]
    [InlineData("1 x x 5 x x", HandSize.Small, false)] // 126 mm, beyond nine tenths of 135
    [InlineData("1 x x 5 x x", HandSize.Average, true)]
    [InlineData("5 x x 9 x x", HandSize.Small, true)]
    public void AStretch_DependsOnTheHandAndThePosition(string shape, HandSize size, bool isHeld) =>
        Assert.Equal(isHeld, Grips(shape, Tuning.Standard, size).Length > 0);

    [Fact]
    public void ASmallerHand_NeverHoldsMore_NorMoreEasily()
    {
        foreach (var shape in (string[])["1 3 3 2 1 1", "x 3 2 0 1 0", "3 2 0 0 0 3", "1 x x 4 x x", "8 7 x x 8 x", "x 5 7 9 x x"])
        {
            var cheapest = ((HandSize[])[HandSize.Large, HandSize.Average, HandSize.Small])
                .Select(size => Grips(shape, Tuning.Standard, size) is { Length: > 0 } grips ? grips.Min(g => g.Cost) : double.MaxValue).ToArray();
            Assert.True(cheapest[0] <= cheapest[1] && cheapest[1] <= cheapest[2], shape);
        }
    }

    [Fact]
    public void AFingerTheSheetStates_IsKept_EvenWhereItIsAwkward()
    {
        var hold = new Hold([new Press(6, 1, Finger.Ring), new Press(1, 5, Finger.Index)], 0);
        var grips = new GripFinder(Rules(Tuning.Standard, HandSize.Average)).Find(hold);
        Assert.NotEmpty(grips);
        Assert.All(grips, grip => Assert.Equal([Finger.Ring, Finger.Index], grip.Fingers));
        Assert.All(grips, grip => Assert.True(grip.IsBeyondReach));
    }

    private static Grip[] Grips(string shape, Tuning tuning, HandSize size) => new GripFinder(Rules(tuning, size)).Find(HoldOf(shape));

    private static string Best(string shape, Tuning tuning)
    {
        var best = Grips(shape, tuning, HandSize.Average).MinBy(grip => grip.Cost)!;
        var words = shape.Split(' ').Select(word => word == "x" ? "-" : word).ToArray();
        for (var i = 0; i < best.Fingers.Length; i++) words[words.Length - best.Hold.Presses[i].String] = ((int)best.Fingers[i]).ToString(System.Globalization.CultureInfo.InvariantCulture);
        return string.Join(' ', words);
    }

    internal static GripRules Rules(Tuning tuning, HandSize size) => new(NeckGeometry.Of(new Neck(tuning)), size);

    internal static Hold HoldOf(string shape)
    {
        var words = shape.Split(' ');
        var presses = new List<Press>();
        var open = 0;
        for (var i = 0; i < words.Length; i++)
        {
            if (words[i] == "x") continue;
            var fret = int.Parse(words[i], System.Globalization.CultureInfo.InvariantCulture);
            if (fret == 0) open |= 1 << words.Length - i;
            else presses.Add(new Press(words.Length - i, fret));
        }
        return new Hold([.. presses], open);
    }
}
