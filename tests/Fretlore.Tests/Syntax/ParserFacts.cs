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

    [Fact]
    public void CommentAndMarks_AreToldApartByABlank()
    {
        var riff = Riff("@2 Q 15+-- 5 -- a remark");
        Assert.Equal([MarkKind.Raise, MarkKind.Release, MarkKind.Release], Notes(riff)[0].Marks.Select(m => m.Kind));
        Assert.Equal(2, Notes(riff).Count);
    }

    [Fact]
    public void DigitsAfterARaise_AreTheFretUnlessTheyAreCents()
    {
        var notes = Notes(Riff("@2 Q +15 +h15 +20c15 +w20c15"));
        Assert.Equal(["15", "15", "15", "15"], notes.Select(n => n.Fret!.Text));
        Assert.Equal([null, null, "20c", "20c"], notes.Select(n => n.BentBefore!.Cents?.Text));
    }

    [Theory]
    [InlineData("furnace times 2{ @1 Q 5 | }", typeof(PlaySyntax), typeof(RepeatSyntax))]
    [InlineData("furnace times 2 again", typeof(PlaySyntax), typeof(AgainSyntax))]
    [InlineData("xmas xm", typeof(PlaySyntax), typeof(PhraseSyntax))]
    [InlineData("dud dR", typeof(StrayItemSyntax), typeof(PhraseSyntax))]
    [InlineData("bass{ } basses", typeof(StrandSyntax), typeof(PlaySyntax))]
    public void Words_AreToldApart(string music, params Type[] items) =>
        Assert.Equal(items, Riff(music).Music.Items.Select(i => i.GetType()));

    [Fact]
    public void Tokens_OfAChange_KeepAChordSymbolWhole()
    {
        var change = Assert.IsType<ChangeSyntax>(Riff("(chord Am(maj7)/G#) @1 Q 5").Music.Items[0]);
        Assert.Equal(["chord", "Am(maj7)/G#"], change.Tokens.Select(t => t.Text));
    }

    [Fact]
    public void SectionLine_BeginsAtAPartOrSetting_AndGoesOnOtherwise()
    {
        var sheet = Sheet.Parse("""
            part bass
            part lead
            riff tail
              @1 W 5
            section Verse 2 like Verse
              key D dorian
              bass  @4 W 0 |
                    bass{ @4 W 0 }
                    tail
              lead  rest
            """);
        Assert.Empty(sheet.Diagnostics);
        var section = Assert.IsType<SectionSyntax>(sheet.Root.Blocks[^1]);
        Assert.Equal(["Verse", "2"], section.Name.Select(t => t.Text));
        Assert.Equal(["bass", "lead"], section.Lines.Select(l => l.PartName.Text));
        Assert.Equal([6, 1], section.Lines.Select(l => l.Music.Items.Length));
        Assert.Equal("key", Assert.Single(section.Settings).Word.Text);
    }

    [Fact]
    public void LineAtTheMargin_EndsWhatIsOpen()
    {
        var sheet = Sheet.Parse("riff one\n  pm{ times 2{ @1 Q 5 [7\nriff two\n  @1 W 5\n");
        Assert.Equal(["one", "two"], sheet.Root.Blocks.Cast<RiffSyntax>().Select(r => r.Name.Text));
        Assert.Equal(["FL1040", "FL1040", "FL1041"], sheet.Diagnostics.Select(d => d.Code));
    }

    private static RiffSyntax Riff(string music) => Assert.IsType<RiffSyntax>(Sheet.Parse("riff furnace\n  " + music).Root.Blocks[0]);

    private static List<NoteSyntax> Notes(SyntaxNode node) => [.. node.DescendantsAndSelf().OfType<NoteSyntax>()];
}
