using Fretlore.Exchange.Sheets;
using Fretlore.Guitar;
using Fretlore.Sound.Strings;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Binding;

/// <summary>How long the strings of a neck are, one length or two.</summary>
public class ScaleLengthFacts
{
    [Theory]
    [InlineData("26.5 in", 673.1, null)]
    [InlineData("628 mm", 628.0, null)]
    [InlineData("25.5-27 in", 647.7, 685.8)]
    [InlineData("25.5 in - 27 in", 647.7, 685.8)]
    [InlineData("27in-25.5in", 647.7, 685.8)]
    [InlineData("648-27 in", null, null)]
    [InlineData("648 mm-27 in", 648.0, 685.8)]
    [InlineData("650-650 mm", 650.0, null)]
    public void TwoLengths_AreTheHighStringsAndTheLowOnes_TheLongerTheLow(string said, double? high, double? low)
    {
        var read = Sheets.Read(Sheet(said));
        if (high is null)
        {
            Assert.Contains(read.Diagnostics, d => d.Code == "FL2015");
            return;
        }
        var neck = read.Song!.Parts[0].Neck;
        Assert.Equal(high.Value, neck.ScaleLength, 1e-9);
        Assert.Equal(low, neck.LowScaleLength is { } length ? Math.Round(length, 9) : null);
    }

    [Theory]
    [InlineData("25.5-27 in")]
    [InlineData("648-686.5 mm")]
    [InlineData("26.5 in")]
    public void ASheetWrittenAnew_HasTheSameLengths(string said)
    {
        var song = Sheets.Song(Sheet(said));
        Assert.Equal(song.Parts[0].Neck, Sheets.Song(SheetWriter.Write(song).Text).Parts[0].Neck);
    }

    [Fact]
    public void OnFannedFrets_TheLowStringIsLessStiff_AndTheHighOneIsAsItWas()
    {
        var (plain, fanned) = (Sheets.Song(Sheet("25.5 in")).Parts[0].Neck, Sheets.Song(Sheet("25.5-28 in")).Parts[0].Neck);
        StringBuild Of(Neck neck, int number) => StringBuild.Of(new StringNumber(number), neck, BodyLoss.Solid);
        Assert.Equal(Of(plain, 1), Of(fanned, 1));
        Assert.True(Of(fanned, 7).Stiffness < Of(plain, 7).Stiffness);
    }

    private static string Sheet(string length) => $"title Fanned\ntuning B1 E2 A2 D3 G3 B3 E4\nscale-length {length}\ntempo Q = 90\n\nsection A\n  @7 W 0 |\n";
}
