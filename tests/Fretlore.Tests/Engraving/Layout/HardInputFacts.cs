using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout;
using Fretlore.Engraving.Output;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Engraving.Layout;

/// <summary>Songs that no one would print gladly: laid out whole, or refused with a word of what to do.</summary>
public class HardInputFacts
{
    private static readonly FontLibrary Fonts = new();

    [Fact]
    public void BarOfSixtyFourChords_IsLaidOutSmaller_AndRefusedWhereItCannotBeRead()
    {
        var three = Chords(1, (4, 12), (3, 10), (2, 13));
        var pages = Laid(three);
        Assert.True(pages.StaffSpace < new PageOptions().StaffSpace);
        Assert.Equal(64 * 3, pages.Document.Pages.SelectMany(PageFacts.Flat).OfType<Group>().Count(g => g.Id?.StartsWith("head-", StringComparison.Ordinal) == true));
        InsideThePaper(pages.Document);
        var crowded = Chords(3, (6, 3), (5, 2), (4, 1), (3, 0), (2, 12), (1, 15));
        var refused = Assert.IsType<EngravingResult.Refused>(new PageEngraver(Fonts.Music, Fonts.Texts).Engrave(crowded, Studies.SpelledByKey(crowded), new PageOptions()));
        Assert.Contains("larger than the paper", refused.Reason);

        static Song Chords(int frets, params (int, int)[] places) => new SongBuilder().Part("Guitar").Bar(
            Enumerable.Range(0, 64).Select(i => SongBuilder.Play(ValueBase.SixtyFourth, [.. places.Select(p => (p.Item1, p.Item2 + i % frets))])).ToArray()).Build();
    }

    [Fact]
    public void TupletOfForty_IsLaidOutWithItsNumber()
    {
        var b = new SongBuilder().Part("Guitar");
        b.Bar(Enumerable.Range(0, 40).Select(i => Studies.Change(
            SongBuilder.Play(ValueBase.ThirtySecond, (1, 5 + i % 8)), e => e with { Tuplet = new Tuplet(40, 32, ValueBase.ThirtySecond) })).ToArray());
        var pages = Laid(b.Build());
        var digits = pages.Document.Pages.SelectMany(PageFacts.Flat).OfType<Glyph>().Where(g => g.CodePoint is >= Smufl.Tuplet0 and <= Smufl.Tuplet0 + 9).OrderBy(g => g.At.X);
        Assert.Equal([Smufl.Tuplet0 + 4, Smufl.Tuplet0], digits.Select(g => g.CodePoint));
        InsideThePaper(pages.Document);
    }

    [Theory]
    [InlineData("\u05E9\u05D9\u05E8 \u05D4\u05E8\u05D5\u05D7 \u05D1\u05D4\u05E8\u05D9\u05DD")]
    [InlineData("\u0623\u063A\u0646\u064A\u0629 \u0627\u0644\u062C\u0628\u0644")]
    [InlineData("\u5C71\u306E\u98A8 \u2013 \uC0B0\uBC14\uB78C")]
    [InlineData("\U0001F3B8 \u0308\u0301 z\u0361\u0301\u0302\u0303")]
    public void TitlesAndWordsOfAnyScript_AreLaidOutWholeAndWrittenEverywhere(string text)
    {
        var b = new SongBuilder().Part("Guitar");
        b.Bar(Studies.Change(SongBuilder.Play(ValueBase.Whole, (1, 3)), e => e with { Words = text }));
        var song = b.Build() with { Info = new SongInfo(text, text, text, text), Sections = [new Section(text, 0, 1)] };
        var document = Laid(song).Document;
        var texts = document.Pages.SelectMany(PageFacts.Flat).OfType<Text>().Select(t => t.Value).ToArray();
        Assert.Equal(6, texts.Count(t => t == text));
        InsideThePaper(document);
        using var stream = new MemoryStream();
        PdfWriter.Write(document, Fonts, stream);
        Assert.True(stream.Length > 1000);
        Assert.NotEmpty(SvgWriter.Write(document, Fonts).Pages);
    }

    [Theory]
    [InlineData(' ')]
    [InlineData('x')]
    public void TextsOfTwoHundredCharacters_AreWrappedAndStayOnThePaper(char between)
    {
        var text = string.Join(between, Enumerable.Repeat("Weathervane", 17));
        var b = new SongBuilder().Part("Guitar");
        b.Bar(Studies.Change(SongBuilder.Play(ValueBase.Whole, (1, 3)), e => e with { Words = text })).Bar(SongBuilder.Play(ValueBase.Whole, (1, 3)));
        var song = b.Build() with { Info = new SongInfo(text, text, text, text), Sections = [new Section(text, 0, 1), new Section(text, 1, 1)] };
        foreach (var preset in PaperPreset.All)
        {
            InsideThePaper(Laid(song, new PageOptions { Paper = preset.Paper, StaffSpace = preset.StaffSpace }).Document);
        }
    }

    [Fact]
    public void LongPartNames_LeaveRoomForTheMusic()
    {
        var name = string.Concat(Enumerable.Repeat("Contrabass", 12));
        var b = new SongBuilder().Part(name).Bar(SongBuilder.Play(ValueBase.Whole, (1, 3))).Part(name + "2").Bar(SongBuilder.Play(ValueBase.Whole, (1, 3)));
        InsideThePaper(Laid(b.Build()).Document);
    }

    [Fact]
    public void PaperTooSmallForOneBar_IsRefusedWithARemedy()
    {
        var song = StudySongs.EverySign();
        var refused = Assert.IsType<EngravingResult.Refused>(
            new PageEngraver(Fonts.Music, Fonts.Texts).Engrave(song, Studies.SpelledByKey(song), new PageOptions { Paper = new Paper(30, 40, 5, 5, 5) }));
        Assert.Contains("larger than the paper", refused.Reason);
        Assert.Contains("larger paper", refused.Remedy);
    }

    [Fact]
    public void NeckOfTwelveStrings_IsLaidOut()
    {
        var b = new SongBuilder().Part("Twelve", "A0 D1 G1 C2 F2 A#2 D#3 G#3 C#4 F#4 B4 E5");
        b.Bar(SongBuilder.Play(ValueBase.Whole, [.. Enumerable.Range(1, 12).Select(s => (s, s + 3))]));
        InsideThePaper(Laid(b.Build()).Document);
    }

    private static EngravingResult.Pages Laid(Song song, PageOptions? options = null) => Assert.IsType<EngravingResult.Pages>(
        new PageEngraver(Fonts.Music, Fonts.Texts).Engrave(song, Studies.SpelledByKey(song), options ?? new PageOptions()));

    private static void InsideThePaper(Document document)
    {
        foreach (var page in document.Pages)
        {
            var outside = InkBoxes.Of(page, Fonts).Where(p => p.Ink.Left <= 0 || p.Ink.Top <= 0 || p.Ink.Right >= page.Width || p.Ink.Bottom >= page.Height).Select(p => p.Path);
            Assert.Equal("", string.Join('\n', outside.Distinct()));
        }
    }
}
