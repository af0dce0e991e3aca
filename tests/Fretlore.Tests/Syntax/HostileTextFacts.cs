using System.Text;
using Fretlore.Syntax;

namespace Fretlore.Tests.Syntax;

/// <summary>Texts no player writes: each gives a tree, all of its text, and few findings.</summary>
public class HostileTextFacts
{
    [Theory]
    [InlineData("pm{ ", " }")]
    [InlineData("times 2{ ", " }")]
    [InlineData("times 2{ on 1{ ", " } }")]
    [InlineData("bass{ ", "")]
    [InlineData("{", "}")]
    [InlineData("pick #lift{ ", "}")]
    public void TenThousandNestedGroups_AreReportedOnce(string open, string close)
    {
        var text = "riff deep\n  " + string.Concat(Enumerable.Repeat(open, 10_000)) + "@1 Q 5" + string.Concat(Enumerable.Repeat(close, 10_000)) + "\ntitle After\n";
        var parsed = Sheet.Parse(text);
        Assert.Equal(text, parsed.Root.ToFullString());
        Assert.InRange(parsed.Diagnostics.Length, 1, 101);
        Assert.True(parsed.Diagnostics.Count(d => d.Code == "FL1055") <= 1);
        Assert.IsType<SettingSyntax>(parsed.Root.Blocks[^1]);
    }

    [Fact]
    public void FiveMegabytesOfRandomBytes_GiveABoundedNumberOfFindings()
    {
        var bytes = new byte[5_000_000];
        new Random(7).NextBytes(bytes);
        var text = Encoding.Latin1.GetString(bytes);
        foreach (var sheet in (string[])[text, "riff noise\n  " + text.ReplaceLineEndings(" ")])
        {
            var parsed = Sheet.Parse(sheet);
            Assert.Equal(sheet, parsed.Root.ToFullString());
            Assert.Equal(101, parsed.Diagnostics.Length);
        }
    }

    /// <summary>One sign over and over finds out lookaheads that are read again from each place.</summary>
    [Theory]
    [InlineData("\"")]
    [InlineData("(")]
    [InlineData("( ) ")]
    [InlineData("-- ")]
    [InlineData("x")]
    [InlineData("xv")]
    [InlineData("5,")]
    [InlineData("d")]
    [InlineData("furnace times ")]
    [InlineData("on ")]
    [InlineData("@6-")]
    [InlineData("E.")]
    public void OneSignOverAndOver_IsReadInOneGo(string sign)
    {
        var text = "riff long\n  " + string.Concat(Enumerable.Repeat(sign, 200_000));
        Assert.Equal(text, Sheet.Parse(text).Root.ToFullString());
    }
}
