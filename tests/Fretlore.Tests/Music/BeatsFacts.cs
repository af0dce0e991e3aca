using CsCheck;
using Fretlore.Music;

namespace Fretlore.Tests.Music;

public class BeatsFacts
{
    private static readonly Gen<Beats> Lengths = Gen.Select(Gen.Int[-400, 400], Gen.Int[1, 96]).Select((n, d) => Beats.Of(n, d));

    [Fact]
    public void Sum_OfAnyParts_IsExactAndInLowestTerms() => Gen.Select(Lengths, Lengths, Lengths).Sample((a, b, c) =>
    {
        Assert.Equal(a + b + c, c + b + a);
        Assert.Equal(a, a + b - b);
        Assert.Equal((a + b) * c, a * c + b * c);
    });

    [Fact]
    public void Modulo_OfAnyPlace_LiesWithinTheLength() =>
        Gen.Select(Lengths, Gen.Int[1, 40].Select(n => Beats.Of(n, 8))).Sample((a, length) =>
        {
            var rest = a.Modulo(length);
            Assert.True(rest >= Beats.Zero && rest < length);
            Assert.Equal(a, length * a.WholeCount(length) + rest);
        });

    [Fact]
    public void ThreeTripletEighths_FillOneQuarter()
    {
        var triplet = new Tuplet(3, 2, ValueBase.Eighth);
        Assert.Equal(Beats.Quarter, new NoteValue(ValueBase.Eighth).Length * triplet.Factor * 3);
        Assert.Equal(Beats.Quarter, triplet.GroupLength);
    }

    [Fact]
    public void UsualGroups_FollowTheMetre()
    {
        Assert.Equal([1, 1, 1, 1], new Meter(4, 4).Groups);
        Assert.Equal([3, 3], new Meter(6, 8).Groups);
        Assert.Equal([2, 2, 3], new Meter(7, 8).Groups);
        Assert.Equal([3, 2, 2], new Meter(7, 8, [3, 2, 2]).Groups);
    }
}
