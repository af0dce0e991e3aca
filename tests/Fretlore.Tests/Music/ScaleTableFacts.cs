using Fretlore.Music.Scales;

namespace Fretlore.Tests.Music;

public class ScaleTableFacts
{
    [Fact]
    public void EveryName_ReadsBackToItsScale()
    {
        Assert.Equal(54, ScaleTable.All.Length);
        foreach (var scale in ScaleTable.All)
        {
            foreach (var name in scale.OtherNames.Items.Append(scale.Name))
            {
                Assert.True(ScaleTable.TryFind(name.ToUpperInvariant() + " scale", out var found), name);
                Assert.Same(scale, found);
            }
        }
    }

    [Theory]
    [InlineData("dorain", "Dorian")]
    [InlineData("minor pentatnic", "Minor pentatonic")]
    [InlineData("phrigian dominant", "Phrygian dominant")]
    public void AnUnknownName_HasItsNearest(string written, string meant)
    {
        Assert.False(ScaleTable.TryFind(written, out _));
        Assert.Equal(meant, ScaleTable.Nearest(written)[0]);
    }
}
