using CsCheck;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Staff;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Engraving.Layout;

public class BeamFacts
{
    // Written as values, a rest as "r" before it; groups are shown as first-last.
    [Theory]
    [InlineData(4, 4, "", "8 8 8 8 8 8 8 8", "0-3 4-7")]
    [InlineData(4, 4, "", "8 16 16 8 8 4 8 8", "0-2 3-4 6-7")]
    [InlineData(4, 4, "", "4 8 8 8 8 4", "1-2 3-4")]
    [InlineData(4, 4, "", "8 4 8 8 8 8 8", "3-6")]
    [InlineData(4, 4, "", "16 16 16 16 16 16 16 16 2", "0-3 4-7")]
    [InlineData(3, 4, "", "8 8 8 8 8 8", "0-5")]
    [InlineData(2, 4, "", "8 8 8 8", "0-3")]
    [InlineData(6, 8, "", "8 8 8 8 8 8", "0-2 3-5")]
    [InlineData(6, 8, "", "4 8 16 16 16 16 16 16", "2-7")]
    [InlineData(7, 8, "2+2+3", "8 8 8 8 8 8 8", "0-1 2-3 4-6")]
    [InlineData(7, 8, "3+2+2", "8 8 8 8 8 8 8", "0-2 3-4 5-6")]
    [InlineData(2, 2, "", "8 8 8 8 8 8 8 8", "0-3 4-7")]
    [InlineData(2, 2, "", "16 16 16 16 8 8 2", "0-3 4-5")]
    [InlineData(8, 8, "3+3+2", "4 8 8 8 8 8 8", "2-4 5-6")]
    [InlineData(4, 4, "", "8 r8 8 8 2", "2-3")]
    public void Beams_ShowTheBeatsOfTheMetre(int count, int unit, string stated, string values, string groups)
    {
        var found = BeamGroups.Of(new Meter(count, unit, Groups(stated)), Beats.Zero, Events(values));
        Assert.Equal(groups, string.Join(' ', found.Select(g => $"{g.First}-{g.Last}")));
    }

    [Fact]
    public void Beams_OfAPickup_AreCountedFromTheBarsEnd()
    {
        // Three eighths before the bar line of 4/4: the first is alone on the second half of the third beat.
        var found = BeamGroups.Of(Meter.FourFour, Beats.Of(5, 2), Events("8 8 8"));
        Assert.Equal([(1, 2)], found);
    }

    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(0, 0.5, 0.25)]
    [InlineData(0, 1, 0.5)]
    [InlineData(0, 4, 1.25)]
    public void BeamSlant_FollowsTheIntervalOfItsEnds(double first, double last, double slant)
    {
        var edge = BeamShape.Fit([new BeamStem(0, first, 1), new BeamStem(10, last, 1)], up: false);
        Assert.Equal(slant, edge.Y2 - edge.Y1, 6);
    }

    [Fact]
    public void Beam_WithAnInnerNoteNearest_IsLevel()
    {
        var edge = BeamShape.Fit([new BeamStem(0, 3, 1), new BeamStem(3, 1, 1), new BeamStem(6, 2.5, 1)], up: true);
        Assert.Equal(edge.Y1, edge.Y2);
    }

    [Fact]
    public void BeamedStems_AreNeverShorterThanTwoAndAHalfSpaces_AndSlantsStayWithinBounds() =>
        Gen.Select(Gen.Int[-8, 16].Array[2, 8], Gen.Int[1, 4], Gen.Bool).Sample((positions, beams, up) =>
        {
            var stems = positions.Select((p, i) => new BeamStem(i * 2.5, 4 - p / 2.0, beams)).ToArray();
            var edge = BeamShape.Fit(stems, up);
            Assert.InRange(Math.Abs(edge.Y2 - edge.Y1), 0, 1.25);
            Assert.All(stems, s => Assert.True((edge.At(s.X) - s.HeadY) * (up ? -1 : 1) >= 2.5));
        });

    [Fact]
    public void BeamInTheStaff_SitsOnStraddlesOrHangsFromALine() =>
        Gen.Select(Gen.Int[-4, 12].Array[2, 6], Gen.Bool).Sample((positions, up) =>
        {
            var edge = BeamShape.Fit(positions.Select((p, i) => new BeamStem(i * 2.5, 4 - p / 2.0, 1)).ToArray(), up);
            foreach (var y in new[] { edge.Y1, edge.Y2 })
            {
                var middle = y + (up ? 0.25 : -0.25);
                if (middle is < 0 or > 4) continue;
                Assert.NotEqual(0.5, middle - Math.Floor(middle), 3);
            }
        });

    [Theory]
    [InlineData(3, 3.5)] // within the staff: an octave
    [InlineData(-6, 5)] // far below: up to the middle line
    public void LoneStem_IsAnOctave_ButReachesTheMiddleLine(int position, double length)
    {
        var note = new Note { String = new(1), Fret = new(0), Sounding = new Height(60) };
        var slot = new Slot
        {
            Event = new Event { Start = Beats.Zero, Value = new NoteValue(ValueBase.Quarter) },
            Measure = 0,
            Column = 0,
            Heads = [new Head(note, position, HeadShape.Black, null)],
            Stem = StemSide.Up,
        };
        Assert.Equal(length, slot.Lowest.Y - Stems.TipOf(slot, false), 6);
    }

    private static ValueList<int> Groups(string stated) => stated.Length == 0 ? [] : stated.Split('+').Select(int.Parse).ToValueList();

    private static ValueList<Event> Events(string values)
    {
        var song = new SongBuilder().Part("Guitar").Bar(values.Split(' ').Select(v =>
            v[0] == 'r' ? SongBuilder.Rest((ValueBase)int.Parse(v[1..])) : SongBuilder.Play((ValueBase)int.Parse(v), (1, 5))).ToArray()).Build();
        return song.Parts[0].Bars[0].Strands[0].Events;
    }
}
