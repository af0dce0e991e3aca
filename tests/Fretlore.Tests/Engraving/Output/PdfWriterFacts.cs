using System.Text.Json;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout;
using Fretlore.Engraving.Output;
using Fretlore.Score;
using Fretlore.Tests.Engraving.Layout;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Engraving.Output;

public class PdfWriterFacts
{
    private static readonly FontLibrary Library = new();

    [Fact]
    public void Writing_TwiceWithFreshFonts_GivesTheSameBytes() =>
        Assert.Equal(Bytes(SampleDrawing.Page(), new FontLibrary()), Bytes(SampleDrawing.Page(), Library));

    [Fact]
    public void Fonts_AreAllEmbeddedAndCut_UnderNamesOfOurOwn()
    {
        // pdffonts prints two lines of heading, then one line a font: name, type, encoding, emb, sub, uni, object.
        var fonts = Asked("pdffonts", SampleDrawing.Page()).Split('\n', StringSplitOptions.RemoveEmptyEntries)[2..];
        Assert.Equal(6, fonts.Length);
        Assert.All(fonts, font => Assert.Matches(@"^[A-Z]{6}\+Fretlore(Serif|Sans|Music)-\w+ .* yes yes yes ", font));
    }

    [Fact]
    public void TitleFretsAndChords_AreFoundInTheText()
    {
        var text = Asked("pdftotext", SampleDrawing.Page(), "-layout", "-");
        foreach (var words in (string[])["Ash & Ember – «Größe» fi ffl", "The Quiet Nines", "B♭m7(♯9)/E♭", "Tuning: C G C F A D, capo 2"])
            Assert.Contains(words, text, StringComparison.Ordinal);
        Assert.Contains("20", text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.DoesNotContain(text, character => character is >= '\ue000' and <= '\uf8ff');
    }

    [Fact]
    public void File_IsSoundAndSaysWhatItIs()
    {
        Assert.Contains("No syntax or stream encoding errors found", Asked("qpdf", SampleDrawing.Page()), StringComparison.Ordinal);
        var info = Asked("pdfinfo", SampleDrawing.Page());
        foreach (var line in (string[])["Title:           Ash & Ember", "Author:          The Quiet Nines", "Subject:         Full transcription", "Creator:         Fretlore"])
            Assert.Contains(line, info, StringComparison.Ordinal);
        Assert.DoesNotContain("Date", info, StringComparison.Ordinal);
    }

    [Fact]
    public void Bookmarks_NameTheirSectionsAndPages_AlsoWhenPagesAreMany()
    {
        var page = SampleDrawing.Small().Pages[0];
        var pages = Enumerable.Repeat(page, 40).ToArray();
        Bookmark[] bookmarks = [new("Intro", 0, new Point(1, 2)), new("Größe ♭ (x)", 9, new Point(1, 4)), new("Outro", 39, new Point(1, 10))];
        var document = new Document("t", null, "s", [.. pages], [.. bookmarks]);
        Assert.Contains("No syntax or stream encoding errors found", Asked("qpdf", document), StringComparison.Ordinal);
        using var json = JsonDocument.Parse(Asked("qpdf", document, "--json", "--json-key=outlines"));
        var outlines = json.RootElement.GetProperty("outlines").EnumerateArray().ToArray();
        Assert.Equal(["Intro", "Größe ♭ (x)", "Outro"], outlines.Select(outline => outline.GetProperty("title").GetString()));
        Assert.Equal([1, 10, 40], outlines.Select(outline => outline.GetProperty("destpageposfrom1").GetInt32()));
    }

    [Fact]
    public void Pages_AreReadAloudInOrder_TitleThenWordsThenBars()
    {
        var song = StudySongs.TwoGuitars(24);
        var document = Engraved(song, Notation.StaffAndTab);
        Assert.Contains("Tagged:          yes", Asked("pdfinfo", document), StringComparison.Ordinal);
        var tree = Asked("pdfinfo", document, "-struct-text").Split('\n').Select(line => line.Trim()).ToArray();
        Assert.Equal(["Document", "H1 (block)", $"\"{song.Info.Title}\""], tree[..3]);
        Assert.Equal(song.Sections.Count, tree.Count(line => line == "H2 (block)"));
        Assert.Equal(24, tree.Count(line => line == "Figure"));
        var words = System.Text.Encoding.Latin1.GetString(Bytes(document, Library));
        Assert.Matches(@"/Alt \(Bar 1\. [^.]+: String \d, fret \d+, [A-G]", words);
        foreach (var bar in Enumerable.Range(1, 24)) Assert.Contains($"/Alt (Bar {bar}. ", words, StringComparison.Ordinal);
    }

    [Fact]
    public void TitleAndSections_AreReadInTheSongsLanguage_AndOurWordsInEnglish()
    {
        var song = StudySongs.TwoGuitars(24);
        Assert.DoesNotContain("/Lang (fr)", TextOf(song), StringComparison.Ordinal);
        var french = TextOf(song with { Info = song.Info with { Language = "fr" } });
        Assert.Contains("/Lang (en)", french, StringComparison.Ordinal);
        Assert.Equal(1 + song.Sections.Count, french.Split("/Lang (fr)").Length - 1);
        Assert.Equal(1 + song.Sections.Count, System.Text.RegularExpressions.Regex.Count(french, @"/S /H[12][^>]*/Lang \(fr\)"));

        static string TextOf(Song song) => System.Text.Encoding.Latin1.GetString(Bytes(Engraved(song, Notation.StaffAndTab), Library));
    }

    [Theory]
    [InlineData(Notation.StaffAndTab)]
    [InlineData(Notation.Staff)]
    [InlineData(Notation.Tab)]
    public void EveryStroke_IsInAMarkedPart(Notation shown)
    {
        foreach (var song in new[] { StudySongs.EverySign(), StudySongs.TwoVoices() })
        {
            var document = Engraved(song, shown);
            Assert.Contains("No syntax or stream encoding errors found", Asked("qpdf", document), StringComparison.Ordinal);
            Assert.Contains("/Alt (Bar 2. String ", System.Text.Encoding.Latin1.GetString(Bytes(document, Library)), StringComparison.Ordinal);
            var depth = 0;
            // The pages' drawings alone have lines that are these operators.
            foreach (var line in Asked("qpdf", document, "--qdf", "--warning-exit-0", "--no-original-object-ids").Split('\n'))
            {
                if (line.EndsWith(" BDC", StringComparison.Ordinal) || line.EndsWith(" BMC", StringComparison.Ordinal)) Assert.Equal(1, ++depth);
                else if (line == "EMC") Assert.Equal(0, --depth);
                else if (line is "f" or "S" or "BT" or "ET") Assert.Equal(1, depth);
            }
            Assert.Equal(0, depth);
        }
    }

    [Fact]
    public void CharactersNoFontHas_BecomeBoxes_AndAreReported()
    {
        // A character of a private plane, which no font assigns.
        var document = new Document("t", null, "s", [new DrawnPage(20, 10, 1.75, [new Text("a\U0010fffdb", new Point(1, 5), 2, Face.Serif)])], []);
        using var pdf = new MemoryStream();
        var missing = PdfWriter.Write(document, Library, pdf);
        Assert.Equal([0x10fffd], missing.Runes.Select(rune => rune.Value));
        Assert.True(missing.Any);
        Assert.Contains("U+10FFFD", missing.ToString(), StringComparison.Ordinal);
        Assert.Contains("b", Asked("pdftotext", document, "-"), StringComparison.Ordinal);
    }

    [Fact]
    public void LettersOfManyScripts_NeverStopTheWriter()
    {
        foreach (var text in (string[])["漢字とかな", "مرحبا بالعالم", "שלום", "Привет", "Ελληνικά", "🎸", "e\u0301\u0323", "\u200d\u200f", "น้ำ"])
        {
            var document = new Document(text, text, text, [new DrawnPage(40, 10, 1.75, [new Text(text, new Point(1, 5), 2, Face.SerifBold)])], []);
            Assert.NotEmpty(Bytes(document, Library));
            Assert.NotEmpty(SvgWriter.Write(document, Library).Pages[0]);
        }
    }

    [Fact]
    public void OutputStream_StaysOpen()
    {
        using var pdf = new MemoryStream();
        PdfWriter.Write(SampleDrawing.Small(), Library, pdf);
        Assert.True(pdf.CanWrite);
    }

    private static Document Engraved(Song song, Notation shown) => Assert.IsType<EngravingResult.Pages>(
        new PageEngraver(Library.Music, Library.Texts).Engrave(song, Studies.SpelledByKey(song), new PageOptions { Show = shown })).Document;

    private static byte[] Bytes(Document document, FontLibrary fonts)
    {
        using var pdf = new MemoryStream();
        PdfWriter.Write(document, fonts, pdf);
        return pdf.ToArray();
    }

    private static string Asked(string program, Document document, params string[] after)
    {
        var path = Path.Combine(Path.GetTempPath(), $"fretlore-{Guid.NewGuid():N}.pdf");
        File.WriteAllBytes(path, Bytes(document, Library));
        try
        {
            return OutsideProgram.Run(program, program == "qpdf" ? after.Contains("--qdf") ? [.. after, path, "-"] : [.. after.DefaultIfEmpty("--check"), path] : [path, .. after]);
        }
        finally
        {
            File.Delete(path);
        }
    }
}
