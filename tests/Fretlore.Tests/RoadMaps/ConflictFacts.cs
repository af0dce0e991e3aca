using Fretlore.RoadMaps.Conflicts;

namespace Fretlore.Tests.RoadMaps;

/// <summary>Rules that can't be kept together are named, and no more of them than are in conflict.</summary>
public sealed class ConflictFacts
{
    [Fact]
    public void MapsThatCanBePlayed_HaveNoConflict()
    {
        // The sheets of takes ask this of every map.
        foreach (var map in Soak.Maps(VariedMaps.All, 4)) Assert.Empty(ConflictFinder.Find(map.Stretch()));
    }

    [Theory]
    [InlineData("scale A minor|aim Bb in bar 2|density Q to E", "scale A minor|aim Bb in bar 2")] // not in the scale
    [InlineData("scale A minor|avoid C|aim C in bar 2|end A", "avoid C|aim C in bar 2")]
    [InlineData("frets 5-8|strings 1-1|aim F# in bar 2|scale E minor", "strings 1|frets 5-8|aim F# in bar 2")] // A to C are there
    [InlineData("scale A minor|contour rising|strings 1-1|frets 5-8|aim C on beat 1 in bar 2|aim A on beat 1 in bar 3", "contour rising|strings 1|frets 5-8|aim C on beat 1 in bar 2|aim A on beat 1 in bar 3")]
    [InlineData("scale A minor|avoid bends|aim C by a half-step bend of B in bar 3|end A", "avoid bends|aim C by a half-step bend of B in bar 3")]
    [InlineData("avoid open strings|end E on string 6 by a slide from below|frets 0-3|scale E minor", "frets 0-3|end E on string 6 by a slide from below")]
    [InlineData("scale A minor|rhythm Q|aim C on beat 2 in bar 1|density E to S", "rhythm Q|density E to S")] // quarters are longer than eighths
    [InlineData("scale A minor|aim C on beat 1 in bar 2|aim D on beat 1 in bar 2|may use lick", "aim C on beat 1 in bar 2|aim D on beat 1 in bar 2")]
    [InlineData("scale A minor|end A|avoid A in last bar", "end A|avoid A in last bar")]
    [InlineData("fixed lick in bar 4|end A|scale A minor", "fixed lick in bar 4|end A")] // the lick ends on C
    [InlineData("scale A minor|contour falling|fixed lick in bar 1|fixed high in bar 3", "contour falling|fixed lick in bar 1|fixed high in bar 3")]
    [InlineData("scale A minor|avoid leaps over a third|aim A in bar 2|aim C from F in bar 4", "avoid leaps over a third|aim C from F in bar 4")]
    [InlineData("roles root in bar 1|scale A minor|aim C on beat 1 in bar 1", "roles root in bar 1|aim C on beat 1 in bar 1")] // the chord is A minor
    public void AnImpossibleMap_NamesTheFewestRulesInConflict(string rules, string conflict)
    {
        var found = ConflictFinder.Find(Map(rules.Split('|')).Stretch());
        Assert.Equal(conflict.Split('|').Order(StringComparer.Ordinal), found.Select(r => r.ToString()).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void WithoutAnyOneOfThem_TheOthersCanBeKept()
    {
        var stretch = Map("scale A minor", "contour rising", "strings 1-1", "frets 5-8", "aim C on beat 1 in bar 2", "aim A on beat 1 in bar 3", "density Q to E", "end A").Stretch();
        var conflict = ConflictFinder.Find(stretch);
        Assert.True(conflict.Length > 1);
        foreach (var rule in conflict)
        {
            var rest = stretch.Map with { Rules = new(conflict.Remove(rule)) };
            Assert.Empty(ConflictFinder.Find(stretch.With(rest)));
        }
    }

    private static VariedMap Map(params string[] rules) => new("Not this way", "tuning  E2 A2 D3 G3 B3 E4\ntempo   Q = 100\nkey     A minor", """
        shape am [. 0 2 2 1 0]
        shape f  [1 3 3 2 1 1]
        riff bed
          @6-1 W #am | #f | #am | #f |
        riff lick
          @2 E 5 8 5 8 Q 5 1 |
        riff high
          @1 Q 12 10 8 5 |
        """, string.Join('\n', rules), 4, Bed: "bed");
}
