using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Engraving.Layout;

public class PageFacts
{
    private static readonly FontLibrary Fonts = new();

    [Fact]
    public void Pages_OfTheSameSong_AreTheSame()
    {
        var song = StudySongs.EverySign();
        Assert.Equal(Engrave(song).Pages.SelectMany(Flat), Engrave(song).Pages.SelectMany(Flat));
    }

    [Fact]
    public void PagesOfALongSong_AreTheSame_WhenStretchesOfItAreDrawnAtOnce()
    {
        var song = StudySongs.TwoGuitars(800);
        var (one, two) = (Pages(cores: 1), Pages(cores: 2));
        Assert.True(one.Pages.SelectMany(p => p.Marks.OfType<Group>()).Count(g => g.Id?.StartsWith("system-", StringComparison.Ordinal) == true) > 2 * 64);
        Assert.Equal(one, two);

        Document Pages(int cores)
        {
            var engraver = new PageEngraver(Fonts.Music, Fonts.Texts) { Cores = cores };
            return Assert.IsType<EngravingResult.Pages>(engraver.Engrave(song, SongReader.Read(song), new PageOptions { Degrees = true })).Document;
        }
    }

    [Fact]
    public void Systems_ButTheLast_EndExactlyAtTheRightMargin()
    {
        var song = StudySongs.TwoGuitars(24);
        var document = Engrave(song);
        var page = document.Pages[0];
        var margin = page.Width - Paper.A4.SideMargin / page.StaffSpace;
        var ends = document.Pages
            .SelectMany(p => p.Marks.OfType<Group>().Where(g => g.Id?.StartsWith("system-", StringComparison.Ordinal) == true))
            .Select(system => Flat(system).OfType<Line>().Max(l => l.To.X)).ToArray();
        Assert.True(ends.Length > 3);
        Assert.All(ends[..^1], end => Assert.Equal(margin, end, 6));
    }

    [Fact]
    public void EveryPickedNote_IsShownOnceInTheTablatureAndOnceOnTheStaff()
    {
        var song = StudySongs.EverySign();
        var ids = Engrave(song).Pages.SelectMany(Flat).OfType<Group>().Select(g => g.Id).OfType<string>().ToArray();
        Assert.Equal(ids.Length, ids.Distinct().Count());
        foreach (var note in song.Parts[0].Bars.SelectMany(b => b.Notes))
        {
            Assert.Contains($"head-{note.Id.Index}", ids);
            Assert.Equal(!note.IsTiedFromBefore, ids.Contains($"note-{note.Id.Index}"));
        }
    }

    [Fact]
    public void ACapo_IsToldUnderTheTitle_AndWhereItMoves_WithinRestsToo()
    {
        const string Top = "title A\ntempo Q = 90\ntuning E2 A2 D3 G3 B3 E4\nsection All\n  @6 W 0 | ";
        Assert.Equal(["Capo at fret 2 on strings 5-3, frets from the nut", "Capo at fret 3", "Capo off"],
            Texts(Top + "(capo 2 on 5-3) @6 W 0 | rest 2 | (capo 3) rest 2 | (capo off) @6 W 0 |").Where(text => text.StartsWith("Capo", StringComparison.Ordinal)));
        var under = Texts(Top.Replace("section", "capo 2 on 4\nsection", StringComparison.Ordinal));
        Assert.Contains("Guitar: standard tuning; capo at fret 2 on string 4, frets from the nut", under);
        Assert.DoesNotContain(under, text => text.StartsWith("Capo", StringComparison.Ordinal));
    }

    private static List<string> Texts(string sheet) => [.. Engrave(Sheets.Song(sheet)).Pages.SelectMany(Flat).OfType<Text>().Select(text => text.Value)];

    [Fact]
    public void Nothing_IsInkedOutsideThePaper()
    {
        foreach (var song in new[] { StudySongs.EverySign(), StudySongs.TwoGuitars(16), StudySongs.TwoVoices() })
        {
            foreach (var page in Engrave(song).Pages)
            {
                foreach (var box in InkBoxes.Of(page, Fonts).Select(p => p.Ink))
                {
                    Assert.True(box.Left > 2 && box.Top > 2 && box.Right < page.Width - 2 && box.Bottom < page.Height - 2, box.ToString());
                }
            }
        }
    }

    [Fact]
    public void PartThatRests_IsHiddenFromItsSystem()
    {
        var titles = Engrave(StudySongs.TwoGuitars(24)).Pages.SelectMany(Flat).OfType<Text>().Select(t => t.Value).ToArray();
        // The lead rests in the first system: its full name is never printed, the short one at each later system.
        Assert.Contains("Rhythm", titles);
        Assert.Contains("Lead", titles);
        Assert.DoesNotContain("guitar,", titles);
        Assert.Equal(titles.Count(t => t == "Rhy."), titles.Count(t => t == "Lead"));
    }

    [Fact]
    public void BarTooWideForThePaper_IsSetSmaller_AndRefusedWhenTooSmallToRead()
    {
        var b = new SongBuilder().Part("Guitar");
        b.Bar(Enumerable.Range(0, 64).Select(i => SongBuilder.Play(ValueBase.SixtyFourth, (1, 10 + i % 2 * 2))).ToArray());
        var song = b.Build();
        var reading = Studies.SpelledByKey(song);
        var engraver = new PageEngraver(Fonts.Music, Fonts.Texts);
        var small = Assert.IsType<EngravingResult.Pages>(engraver.Engrave(song, reading, new PageOptions()));
        Assert.True(small.StaffSpace < 1.6);
        var refused = Assert.IsType<EngravingResult.Refused>(engraver.Engrave(song, reading, new PageOptions { Paper = new Paper(60, 90) }));
        Assert.NotEmpty(refused.Remedy);
    }

    [Fact]
    public void LongTitle_IsWrappedAndNotCut()
    {
        var title = string.Join(' ', Enumerable.Repeat("Weathervane", 18));
        var song = StudySongs.TwoVoices() with { Info = new SongInfo(title) };
        var lines = Engrave(song).Pages[0].Marks.OfType<Group>().Single(g => g.Id == "title").Marks.OfType<Text>();
        Assert.Equal(title, string.Join(' ', lines.Where(t => t.Face == Face.SerifBold).Select(t => t.Value)));
    }

    [Fact]
    public void RestsOfAllParts_AreDrawnAsOneMultiBarRest()
    {
        var b = new SongBuilder().Part("Guitar").Bar(SongBuilder.Play(ValueBase.Whole, (1, 0))).Bar().Bar().Bar().Bar(SongBuilder.Play(ValueBase.Whole, (1, 0)));
        var groups = Engrave(b.Build()).Pages.SelectMany(Flat).OfType<Group>().ToArray();
        Assert.Contains(groups, g => g is { Id: "bar-2", Title: "Bars 2 to 4, rest" });
        Assert.DoesNotContain(groups, g => g.Id is "bar-3" or "bar-4");
    }

    [Fact]
    public void BarsAgain_AreShownAsSigns_AndOnlyOneForAPair()
    {
        var glyphs = Engrave(StudySongs.BarSigns()).Pages.SelectMany(Flat).OfType<Glyph>().ToArray();
        // Each once on the staff and once in the tablature: two single bars and one pair.
        Assert.Equal(4, glyphs.Count(g => g.CodePoint == Smufl.Repeat1Bar));
        Assert.Equal(2, glyphs.Count(g => g.CodePoint == Smufl.Repeat2Bars));
    }

    [Fact]
    public void BassIsWrittenInTheBassClef_AndVeryLowGuitarsTwoOctavesUp()
    {
        var glyphs = Engrave(StudySongs.BarSigns()).Pages.SelectMany(Flat).OfType<Glyph>().Select(g => g.CodePoint).ToArray();
        Assert.Contains(Smufl.FClef8vb, glyphs);
        Assert.Contains(Smufl.GClef15mb, glyphs);
        Assert.DoesNotContain(Smufl.GClef8vb, glyphs);
    }

    [Fact]
    public void TablatureAlone_WritesTimeItself_AndEveryHeldNoteAgain()
    {
        var song = StudySongs.EverySign();
        var both = Engrave(song).Pages.SelectMany(Flat).ToArray();
        var tab = Engrave(song, new PageOptions { Show = Notation.Tab }).Pages.SelectMany(Flat).ToArray();
        Assert.DoesNotContain(tab.OfType<Glyph>(), g => g.CodePoint is Smufl.GClef8vb or Smufl.NoteheadBlack or Smufl.AccidentalSharp);
        Assert.Equal(both.OfType<Glyph>().Count(g => g.CodePoint == Smufl.RestQuarter), tab.OfType<Glyph>().Count(g => g.CodePoint == Smufl.RestQuarter));
        foreach (var note in song.Parts[0].Bars.SelectMany(b => b.Notes)) Assert.Contains(tab.OfType<Group>(), g => g.Id == $"note-{note.Id.Index}");
    }

    [Fact]
    public void StaffAlone_HasNoStringLines()
    {
        var staff = Engrave(StudySongs.EverySign(), new PageOptions { Show = Notation.Staff }).Pages.SelectMany(Flat).ToArray();
        Assert.DoesNotContain(staff.OfType<Group>(), g => g.Id?.StartsWith("note-", StringComparison.Ordinal) == true);
        Assert.Contains(staff.OfType<Glyph>(), g => g.CodePoint == Smufl.GClef8vb);
    }

    [Fact]
    public void EveryPaperWeOffer_TakesASongInEachNotation()
    {
        foreach (var preset in PaperPreset.All)
        {
            foreach (var shown in Enum.GetValues<Notation>())
            {
                var document = Engrave(StudySongs.EverySign(), new PageOptions { Paper = preset.Paper, StaffSpace = preset.StaffSpace, Show = shown });
                Assert.All(document.Pages, page => Assert.All(InkBoxes.Of(page, Fonts), piece =>
                    Assert.True(piece.Ink.Left > 0.5 && piece.Ink.Top > 0.5 && piece.Ink.Right < page.Width - 0.5 && piece.Ink.Bottom < page.Height - 0.5, preset.Name + piece)));
            }
        }
    }

    [Fact]
    public void BentNote_ShowsTheReachedPitchAsASmallHead_AndTheHeldNoteAsItSounds()
    {
        var b = new SongBuilder().Part("Guitar");
        b.Bar(
            Studies.Note(SongBuilder.Play(ValueBase.Half, (2, 15)), n => n with { Bend = new Bend(0, [200]), IsHeldOn = true }),
            Studies.By(Studies.Note(SongBuilder.Play(ValueBase.Half, (2, 15)), n => n with { Bend = new Bend(200, [0]) }), Attack.Held));
        var heads = Engrave(b.Build()).Pages.SelectMany(Flat).OfType<Glyph>().Where(g => g.CodePoint is Smufl.NoteheadHalf or Smufl.NoteheadBlack).OrderBy(g => g.At.X).ToArray();
        // D with a small E; held as E with a small D.
        Assert.Equal([false, true, false, true], heads.Select(h => h.Scale < 1));
        Assert.Equal(0.5, heads[0].At.Y - heads[1].At.Y, 6);
        Assert.Equal(heads[1].At.Y, heads[2].At.Y, 6);
        Assert.Equal(heads[0].At.Y, heads[3].At.Y, 6);
    }

    [Fact]
    public void QuarterToneBend_ShowsNoOtherPitchOnTheStaff()
    {
        var b = new SongBuilder().Part("Guitar");
        b.Bar(Studies.Note(SongBuilder.Play(ValueBase.Whole, (2, 15)), n => n with { Bend = new Bend(0, [50]) }));
        Assert.DoesNotContain(Engrave(b.Build()).Pages.SelectMany(Flat).OfType<Glyph>(), g => g.CodePoint == Smufl.NoteheadBlack);
    }

    internal static Document Engrave(Song song, PageOptions? options = null) => Assert.IsType<EngravingResult.Pages>(
        new PageEngraver(Fonts.Music, Fonts.Texts).Engrave(song, Studies.SpelledByKey(song), options ?? new PageOptions())).Document;

    internal static IEnumerable<Mark> Flat(DrawnPage page) => page.Marks.SelectMany(Flat);

    internal static IEnumerable<Mark> Flat(Mark mark) => mark is Group group ? group.InPlace.SelectMany(Flat).Prepend(group) : [mark];
}
