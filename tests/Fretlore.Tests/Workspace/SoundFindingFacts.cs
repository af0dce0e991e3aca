using Fretlore.Syntax;
using Fretlore.Workspace;

namespace Fretlore.Tests.Workspace;

/// <summary>A part that asks for a sound there is none of is told so when the sheet is checked.</summary>
public sealed class SoundFindingFacts
{
    [Theory]
    [InlineData("drivn", "Perhaps `driven` was meant. ")]
    [InlineData("very loud", "")]
    public void ASoundThatDoesNotExist_IsAWarningAtItsName(string name, string suggestion)
    {
        var finding = Assert.Single(Open(name).Findings);
        Assert.Equal(("FL5001", Severity.Warning), (finding.Code, finding.Severity));
        Assert.Equal(name, finding.SourceLine.Substring(finding.Column - 1, finding.Length));
        Assert.Equal(suggestion + "Sounds are clean, edge, driven, singing, acoustic, bass.", finding.Remedy);
    }

    [Theory]
    [InlineData("driven")]
    [InlineData("Lead")]
    public void ASoundByItsNameOrAnother_IsFine(string name) => Assert.Empty(Open(name).Findings);

    private static SongWorkspace Open(string sound) => SongWorkspace.Open(
        new SourceText($"title T\ntuning E2 A2 D3 G3 B3 E4\ntempo Q = 120\npart solo \"Solo\"  sound {sound}  -- loud\nsection A\n  solo @6 W 0\n"));
}
