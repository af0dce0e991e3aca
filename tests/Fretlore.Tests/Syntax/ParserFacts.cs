using Fretlore.Syntax;

namespace Fretlore.Tests.Syntax;

public class ParserFacts
{
    [Theory]
    [InlineData(SheetSamples.Furnace)]
    [InlineData(SheetSamples.EverySign)]
    public void ValidSheet_ParsesWithoutFindings_AndKeepsItsText(string text)
    {
        var parsed = Sheet.Parse(text);
        Assert.Equal("", string.Join("\n", parsed.Diagnostics.Select(d => $"{parsed.Text.PositionOf(d.Span.Start)} {d.Code} {d.Message}")));
        Assert.Equal(text, parsed.Root.ToFullString());
        Assert.DoesNotContain(parsed.Root.DescendantsAndSelf(), n => n is StrayItemSyntax or StrayBlockSyntax);
    }
}
