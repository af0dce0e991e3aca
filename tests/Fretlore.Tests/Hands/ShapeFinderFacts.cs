using CsCheck;
using Fretlore.Guitar;
using Fretlore.Hands.Grips;
using Fretlore.Hands.Shapes;
using Fretlore.Music;
using Fretlore.Music.Chords;
using Fretlore.Reading.Chords;

namespace Fretlore.Tests.Hands;

/// <summary>Shapes found for chord symbols.</summary>
public sealed class ShapeFinderFacts
{
    private static readonly string[] Chords = ["C", "Am7", "F#m11", "E5", "Bbmaj7#11", "Dsus4", "D/F#", "G6/9", "Bdim7", "A7(b9,b13)"];

    private static readonly string[] Tunings = ["E2 A2 D3 G3 B3 E4", "D2 A2 D3 G3 A3 D4", "A1 E2 A2 D3 F#3 B3", "G4 C4 E4 A4", "E1 A1 D2 G2", "B1 E2 A2 D3 G3 B3 E4"];

    /// <summary>Shapes every player knows (common practice): open ones come first; barres and close jazz shapes are there, after what is easier.</summary>
    [Theory]
    [InlineData("C", "x 3 2 0 1 0", 1)]
    [InlineData("E", "0 2 2 1 0 0", 1)]
    [InlineData("Em", "0 2 2 0 0 0", 1)]
    [InlineData("Am", "x 0 2 2 1 0", 1)]
    [InlineData("D", "x x 0 2 3 2", 2)]
    [InlineData("Dm", "x x 0 2 3 1", 2)]
    [InlineData("A7", "x 0 2 0 2 0", 1)]
    [InlineData("G", "3 2 0 0 0 3", 2)]
    [InlineData("F", "1 3 3 2 1 1", 80)]
    [InlineData("Bm7", "x 2 4 2 3 2", 30)]
    [InlineData("E7#9", "0 7 6 7 8 x", 150)]
    [InlineData("E5", "0 2 2 x x x", 40)]
    [InlineData("D/F#", "2 0 0 2 3 2", 9)]
    public void AKnownShape_IsAmongTheFirst(string chord, string shape, int rank)
    {
        var shapes = Find(chord, Tunings[0]).Select(choice => choice.Shape.ToString()).ToList();
        Assert.Contains(shape, shapes);
        Assert.True(shapes.IndexOf(shape) < rank, $"{chord}: {shape} is number {shapes.IndexOf(shape) + 1} after {string.Join(" | ", shapes.Take(6))}");
    }

    [Fact]
    public void EveryShape_SoundsTheChord_AndNothingElse() => Gen.Select(OneOf(Chords), OneOf(Tunings), Gen.Int[0, 3]).Sample((chord, tuning, capo) =>
    {
        Assert.True(ChordSymbol.TryParse(chord, out var symbol, out _));
        var neck = NeckOf(tuning) with { Capo = capo, FretCount = 15 };
        foreach (var choice in ShapeFinder.Find(symbol, neck))
        {
            Height[] heights = [.. choice.Shape.On(neck).Select(s => s.Height)];
            var sounding = PitchClassSet.Of(heights).From(symbol.Name.Root.PitchClass);
            var bass = symbol.Name.Bass.PitchClass;
            Assert.True(sounding.IsWithin(symbol.Tones.With(NoteName.Wrap(bass - symbol.Name.Root.PitchClass, 12))));
            Assert.True(symbol.Needed.Without(0).IsWithin(sounding));
            Assert.Equal(choice.Lowest.PitchClass, heights.Min().PitchClass);
            Assert.Equal(symbol.Tones.Except(sounding).Count, choice.Missing.Length);
        }
    }, iter: 40);

    [Fact]
    public void NoPlayableShape_IsForgotten_NorFoundTwice() => Gen.Select(OneOf(["C", "Am7", "E5", "G6/9", "D/F#"]), OneOf(["G4 C4 E4 A4", "E1 A1 D2 G2", "D3 G3 B3 E4"])).Sample((chord, tuning) =>
    {
        Assert.True(ChordSymbol.TryParse(chord, out var symbol, out _));
        var neck = NeckOf(tuning) with { FretCount = 9 };
        var found = ShapeFinder.Find(symbol, neck).Select(choice => choice.Shape.ToString()).ToList();
        Assert.Equal(found.Count, found.Distinct().Count());
        Assert.Equal(ByTryingAll(symbol, neck).Order(), found.Order());
    }, iter: 20);

    [Fact]
    public void ANearPosition_ComesFirst_WhenTheHandIsThere()
    {
        var from = Find("Am", Tunings[0], 12).Take(3).Select(choice => choice.Position).ToList();
        Assert.All(from, position => Assert.InRange(position, 8, 14));
        Assert.Equal(Find("Am", Tunings[0]).Length, Find("Am", Tunings[0], 12).Length);
    }

    [Fact]
    public void AShapeNamedAgain_HasTheChordAmongItsNames()
    {
        foreach (var chord in (string[])["C", "Am7", "E7", "Dsus4", "Gmaj7", "F#m7"])
        {
            var best = Find(chord, Tunings[0])[0];
            Height[] heights = [.. best.Shape.On(NeckOf(Tunings[0])).Select(s => s.Height)];
            Assert.Contains(chord, ChordNamer.Name(heights).Candidates.Select(c => c.Symbol));
        }
    }

    private static System.Collections.Immutable.ImmutableArray<ShapeChoice> Find(string chord, string tuning, int? from = null)
    {
        Assert.True(ChordSymbol.TryParse(chord, out var symbol, out _));
        return ShapeFinder.Find(symbol, NeckOf(tuning), HandSize.Average, from);
    }

    private static Gen<string> OneOf(string[] texts) => Gen.Int[0, texts.Length - 1].Select(i => texts[i]);

    private static Neck NeckOf(string tuning)
    {
        Assert.True(Tuning.TryParse(tuning, out var parsed));
        return new Neck(parsed);
    }

    // Every fret on every string of a four-stringed neck; the rules said in another way.
    private static IEnumerable<string> ByTryingAll(ChordSymbol symbol, Neck neck)
    {
        var finder = new GripFinder(new GripRules(NeckGeometry.Of(neck), HandSize.Average));
        var count = neck.HighestFret.Number + 2;
        for (var code = 0; code < (int)Math.Pow(count, 4); code++)
        {
            int?[] frets = [.. Enumerable.Range(0, 4).Select(i => code / (int)Math.Pow(count, i) % count - 1).Select(f => f < 0 ? (int?)null : f)];
            var sounding = Enumerable.Range(0, 4).Where(i => frets[i] is not null).ToList();
            if (sounding.Count == 0) continue;
            var heights = sounding.Select(i => neck.Sounding(new StringNumber(4 - i), new Fret(frets[i]!.Value))).ToList();
            var degrees = heights.Select(h => NoteName.Wrap(h.PitchClass - symbol.Name.Root.PitchClass, 12)).ToHashSet();
            var bass = NoteName.Wrap(symbol.Name.Bass.PitchClass - symbol.Name.Root.PitchClass, 12);
            var isSlash = bass != 0;
            if (degrees.Any(d => !symbol.Tones.Contains(d) && !(isSlash && d == bass))) continue;
            if (isSlash && heights.Min().PitchClass != symbol.Name.Bass.PitchClass) continue;
            var isRootless = !degrees.Contains(0);
            if (isRootless && symbol.Needed.Count < 4) continue;
            if (Enumerable.Range(1, 11).Any(d => symbol.Needed.Contains(d) && !degrees.Contains(d))) continue;
            var stopped = sounding.Where(i => frets[i] > 0).ToList();
            if (stopped.Count > 0 && stopped.Max(i => frets[i]) - stopped.Min(i => frets[i]) > 5) continue;
            var hold = new Hold([.. stopped.Select(i => new Press(4 - i, frets[i]!.Value))], sounding.Except(stopped).Sum(i => 1 << 4 - i));
            if (stopped.Count > 0 && finder.Find(hold).Length == 0) continue;
            yield return string.Join(' ', frets.Select(f => f is null ? "x" : f.Value.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        }
    }
}
