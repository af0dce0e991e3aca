using System.Globalization;
using System.Text;
using System.Xml.Linq;
using CsCheck;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Output;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Engraving.Output;

public class SvgWriterFacts
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static readonly FontLibrary Library = new();

    [Fact]
    public void SmallDrawing_IsWrittenAsReviewed()
    {
        var reviewed = File.ReadAllText(Path.Combine(Repository.Root, "tests/Fretlore.Tests/Engraving/Output/small.svg"));
        Assert.Equal(reviewed.ReplaceLineEndings("\n"), TextOf(SampleDrawing.Small(), Library));
    }

    [Fact]
    public void Page_HasItsSizeInMillimetresAndItsUnitInStaffSpaces()
    {
        var page = Written(SampleDrawing.Page());
        Assert.Equal("210mm", page.Attribute("width")!.Value);
        Assert.Equal("297mm", page.Attribute("height")!.Value);
        Assert.Equal("0 0 120 169.714", page.Attribute("viewBox")!.Value);
    }

    [Fact]
    public void Writing_TwiceWithFreshFonts_GivesTheSameText()
    {
        var once = TextOf(SampleDrawing.Page(), new FontLibrary());
        Assert.Equal(once, TextOf(SampleDrawing.Page(), Library));
    }

    [Fact]
    public void EveryUse_RefersToAGlyphDefinedOnItsPage()
    {
        var page = Written(SampleDrawing.Page());
        var defined = page.Element(Svg + "defs")!.Elements().Select(glyph => "#" + glyph.Attribute("id")!.Value).ToHashSet();
        var used = page.Descendants(Svg + "use").Select(use => use.Attribute("href")!.Value).ToHashSet();
        Assert.Equal(used.Order(), defined.Order());
        Assert.All(page.Element(Svg + "defs")!.Elements(), glyph => Assert.NotEmpty(glyph.Attribute("d")!.Value));
    }

    [Fact]
    public void Texts_AreTextElements_AndTheirFontsAreInThePage()
    {
        var page = Written(SampleDrawing.Page());
        Assert.Contains("B♭m7(♯9)/E♭", page.Descendants(Svg + "text").Select(text => text.Value));
        var style = page.Element(Svg + "style")!.Value;
        foreach (var family in (string[])["Fretlore Serif", "Fretlore Sans", "Fretlore Music"])
            Assert.Contains($"@font-face{{font-family:\"{family}\"", style, StringComparison.Ordinal);
        Assert.DoesNotContain("Source", style, StringComparison.Ordinal);
        Assert.DoesNotContain("Bravura", style, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("</script><script>alert(1)</script>")]
    [InlineData("\"quoted\" & 'single' <b>")]
    [InlineData("]]> <![CDATA[ --> &amp; &#0;")]
    public void AwkwardText_IsReadBackAsItWas(string text) => Assert.Equal(text, ReadBack(text));

    [Fact]
    public void CharactersThatXmlForbids_AreReplaced()
    {
        Assert.Equal("bell  tab  nul  newline ", ReadBack("bell\u0007 tab\t nul\0 newline\n"));
        Assert.Equal("half \ufffd pair \ufffd", ReadBack("half \ud800 pair \uffff"));
    }

    [Fact]
    public void AnyText_GivesWellFormedXml() => Gen.String.Sample(text => _ = ReadBack(text));

    [Fact]
    public void AnyNumber_HasAtMostThreeDecimals_AndIsWithinHalfAThousandth() =>
        Gen.Double[-1e6, 1e6].Sample(number =>
        {
            var written = new SvgText().Number(number).ToString();
            Assert.Matches(@"^-?\d+(\.\d{0,2}[1-9])?$", written);
            Assert.Equal(number, double.Parse(written, CultureInfo.InvariantCulture), 0.000501);
        });

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void MarkAtNoFinitePlace_IsABug(double x) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SvgWriter.Write(Document(new Glyph(Smufl.Segno, new Point(x, 0))), Library));

    [Fact]
    public void Groups_KeepTheirIdsAndTitles()
    {
        var page = Written(Document(new Group("bar-\"1\"", "Bar 1 & pickup", [new Glyph(Smufl.Segno, new Point(1, 1))])));
        var group = page.Element(Svg + "g")!;
        Assert.Equal("bar-\"1\"", group.Attribute("id")!.Value);
        Assert.Equal("Bar 1 & pickup", group.Element(Svg + "title")!.Value);
    }

    [Fact]
    public void Slur_IsAsThickInTheMiddleAsItSays()
    {
        var slur = new Slur(new Point(0, 0), new Point(2, 3), new Point(6, 3), new Point(8, 0), 0.1, 0.22);
        var shape = SlurShape.Of(slur);
        static double Middle(double a, double b, double c, double d) => (a + 3 * b + 3 * c + d) / 8;
        var far = Middle(slur.From.Y, shape.Out1.Y, shape.Out2.Y, slur.To.Y);
        var near = Middle(slur.To.Y, shape.Back1.Y, shape.Back2.Y, slur.From.Y);
        Assert.Equal(slur.MiddleThickness, Math.Abs(far - near) + slur.EndThickness, 1e-9);
    }

    private static string ReadBack(string text)
    {
        var mark = new Text("x" + text + "x", new Point(1, 1), 2, Face.Serif);
        return Written(Document(mark)).Element(Svg + "text")!.Value[1..^1];
    }

    private static Document Document(params Mark[] marks) => new("<T>", null, "\"S\"", [new DrawnPage(10, 10, 1.75, [.. marks])], []);

    private static string TextOf(Document document, FontLibrary fonts) => Encoding.UTF8.GetString(SvgWriter.Write(document, fonts).Pages[0].AsSpan());

    private static XElement Written(Document document) =>
        XDocument.Parse(TextOf(document, Library), LoadOptions.PreserveWhitespace).Root!;
}
