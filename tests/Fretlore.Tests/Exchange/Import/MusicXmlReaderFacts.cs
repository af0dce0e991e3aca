using System.Globalization;
using System.IO.Compression;
using System.Text;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.MusicXml;
using Fretlore.Exchange.Sheets;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Tests.Outside;
using Fretlore.Tests.Songs;
using static Fretlore.Tests.Exchange.Import.Imported;

namespace Fretlore.Tests.Exchange.Import;

public sealed class MusicXmlReaderFacts
{
    public static TheoryData<string> Demos => DemoSongs.Names;

    [Theory]
    [MemberData(nameof(Demos))]
    public void ADemoSong_ThroughMusicXmlAndASheet_IsTheSameSong(string name) => SameThroughXml(DemoSongs.Load(name));

    [Fact]
    public void AGeneratedSong_ThroughMusicXmlAndASheet_IsTheSameSong() => SheetGen.Valid(1500, 1000, SameThroughXml);

    [Fact]
    public void APartOfNothingButRests_BesideBarsPlayedAgain_IsThatPart() => SameThroughXml(Fretlore.Tests.Songs.Sheets.Song(
        "title Ash\ntuning E2 A2 D3 G3 B3 E4\nmeter 3/4\ntempo Q = 208\npart part0 \"Part 0\"\npart part1 \"Part 1\"\nsection Part A\n"
        + "  part0 @1 E:3 6 13 3 Q 9 E R E 2 | again\n  part1 @1 Q R H R | rest 1\n"));

    [Fact]
    public void ShapesAndBarsPlayedAgain_ComeBackAsTheyWereWritten() => Assert.Equal(Shaped, string.Join('\n', SheetWriter.Write(Xml(Written.MusicXmlBytes(Fretlore.Tests.Songs.Sheets.Song(Shaped))).Song, new SheetStyle(FindsRiffs: false)).Text.Split('\n', StringSplitOptions.RemoveEmptyEntries)));

    private const string Shaped = """
        title   Ash
        tuning  E2 A2 D3 G3 B3 E4
        meter   4/4
        tempo   Q = 96
        key     E minor
        part guitar "Guitar"
        shape home [0 2f2 2f3 0 0 0]
        shape wall [3f1 5f3 5f4 4f2 3f1 3f1]
        section Verse
          guitar  H #home d#wall! | again pick #home{ E 6 4 3 2 1:3 2 3 4 } | H roll#wall #home | again 2
        """;

    [Fact]
    public void ABarUnderASignOfRepetition_ThatHoldsNothing_IsTheBarBefore()
    {
        const string sign = "<attributes><measure-style><measure-repeat type=\"{0}\">1</measure-repeat></measure-style></attributes>";
        var made = Measures(
            Note("E", 4, 8, "half", 1, 0) + Note("G", 4, 8, "half", 1, 3), string.Format(CultureInfo.InvariantCulture, sign, "start") + "<note><rest measure=\"yes\"/><duration>16</duration></note>",
            string.Format(CultureInfo.InvariantCulture, sign, "stop") + Note("A", 4, 16, "whole", 1, 5));
        Assert.Equal([0, 1, 0], made.Song.Parts[0].Bars.Select(b => b.Repeats));
        ThroughSheet(made.Song, out var sheet);
        Assert.Contains("@1 H 0 3 | again @1 W 5 |", sheet, StringComparison.Ordinal);
    }

    [Fact]
    public void ASignOfRepetition_OverOtherMusic_GivesWayToTheNotes()
    {
        var made = Measures(
            Note("E", 4, 16, "whole", 1, 0),
            "<attributes><measure-style><measure-repeat type=\"start\">1</measure-repeat></measure-style></attributes>" + Note("A", 4, 16, "whole", 1, 5));
        Assert.Equal([0, 5], made.Song.Parts[0].Bars.SelectMany(b => b.Notes).Select(n => n.Fret.Number));
        Assert.Contains("the notes are kept", Imported.Text(made.Remarks), StringComparison.Ordinal);
    }

    /// <summary>
    /// What MusicXML has no place for is taken out before the comparison: sounds, scale lengths and numbers of frets, shapes that are never played, road
    /// maps, riffs and the lesson; where shapes that are picked string by string end; a span of tremolo picking is a tremolo on each of its notes; the line of a repeat is
    /// the repeat's; a strand
    /// of nothing but rests is none.
    /// </summary>
    private static void SameThroughXml(Song song)
    {
        var made = Xml(Written.MusicXmlBytes(song));
        var sheet = SheetWriter.Write(made.Song, new SheetStyle(FindsRiffs: false));
        var read = Fretlore.Tests.Songs.Sheets.Song(sheet.Text);
        SameSong.Same(SameSong.Written(Plain(song)), SameSong.Written(Plain(read)), sheet.Text + "\n" + Imported.Text(made.Remarks));
    }

    private static Song Plain(Song song) => song with
    {
        Shapes = song.Shapes.Where(shape => song.Parts.Any(p => p.Bars.Any(b => b.Strands.Any(s => s.Events.Any(e => e.Shape == shape.Name))))).OrderBy(s => s.Name, StringComparer.Ordinal).ToValueList(),
        Parts = song.Parts.Select((p, i) => p with
        {
            Name = $"part{i}",
            Sound = null,
            Neck = new Neck(p.Neck.Tuning, p.Neck.Capo),
            Bars = p.Bars.Select(b => b with { RoadMap = null, Neck = new Neck(b.Neck.Tuning, b.Neck.Capo), Strands = b.Strands.Where((s, i) => i == 0 || s.Events.Any(e => !e.IsRest)).Select(Plain).ToValueList() }).ToValueList(),
        }).ToValueList(),
        RoadMaps = [],
        RoadMapUses = [],
        Lesson = null,
        Bars = song.Bars.Select(b => b with { EndLine = b.RepeatCount > 0 ? BarLine.Single : b.EndLine }).ToValueList(),
    };

    private static Strand Plain(Strand strand) => strand with
    {
        Events = strand.Events.Select(e => e with
        {
            Shape = e.Notes.Count > 1 && !e.Notes.Any(n => n.LetsRing) ? e.Shape : null,
            Notes = e.Spans.HasFlag(Spans.TremoloPicking) ? e.Notes.Select(n => n with { Tremolo = n.Tremolo ?? ValueBase.ThirtySecond }).ToValueList() : e.Notes,
            Spans = e.Spans & ~Spans.TremoloPicking,
        }).ToValueList(),
    };

    /// <remarks>W3C's MusicXML tutorial, "Tablature": string 3, fret 5 hammered on to 7, then 8, pulled off to 7 and to 5.</remarks>
    [Fact]
    public void TheTutorialsTablature_IsHammeredAndPulledOnStringThree()
    {
        var path = Repository.Check("musicxml/examples/tutorial-tablature.musicxml");
        Assert.SkipWhen(path is null, "The check values are not beside the checkout.");
        var made = Xml(File.ReadAllBytes(path));
        var tab = made.Song.Parts[1];
        var notes = tab.Bars[0].Strands[0].Events.SelectMany(e => e.Notes).ToList();
        Assert.Equal(
            [(3, 5, Attack.Picked), (3, 7, Attack.HammerOn), (3, 8, Attack.Picked), (3, 7, Attack.PullOff), (3, 5, Attack.PullOff)],
            notes.Select(n => (n.String.Value, n.Fret.Number, n.Attack)));
        Assert.Equal([60, 62, 63, 62, 60], made.Song.Parts[0].Bars[0].Notes.Select(n => n.Sounding.Midi));
        ThroughSheet(made.Song, out var sheet);
        Assert.Contains("5,7 E 8,7 Q ,5", sheet, StringComparison.Ordinal);
    }

    /// <remarks>W3C's MusicXML tutorial, "Chord Symbols": three symbols with diagrams, the last one with fingers and a barre.</remarks>
    [Fact]
    public void TheTutorialsChordSymbols_AreShapesWithTheirFingers()
    {
        var path = Repository.Check("musicxml/examples/tutorial-chord-symbols.musicxml");
        Assert.SkipWhen(path is null, "The check values are not beside the checkout.");
        ThroughSheet(Xml(File.ReadAllBytes(path)).Song, out var sheet);
        Assert.Contains("shape g6-over-d [. 5 5 4 3 0]\nshape aadd9 [. 7 7 6 0 0]\nshape a11 [. 0 6f3 4f2 3f1 3f1]\n", sheet, StringComparison.Ordinal);
    }

    [Fact]
    public void ATuningAndCapo_AreTheNecks()
    {
        var details = "<attributes><clef><sign>TAB</sign><line>5</line></clef><staff-details><staff-lines>4</staff-lines>"
            + string.Concat(new[] { ("E", 1), ("A", 1), ("D", 2), ("G", 2) }.Select((t, i) => $"<staff-tuning line=\"{i + 1}\"><tuning-step>{t.Item1}</tuning-step><tuning-octave>{t.Item2}</tuning-octave></staff-tuning>"))
            + "<capo>2</capo></staff-details></attributes>";
        var neck = Measures(details + Note("A", 1, 16, "whole", 4, 3)).Song.Parts[0].Neck;
        Assert.Equal(("E1 A1 D2 G2", 2), (neck.Tuning.ToString(), neck.Capo));
    }

    [Fact]
    public void ABend_IsCountedFromThePitchStopped()
    {
        var note = Measures(Note("D", 4, 16, "whole", 3, 7, "<bend><bend-alter>1</bend-alter><pre-bend/></bend><bend><bend-alter>1</bend-alter></bend><bend><bend-alter>-2</bend-alter><release/></bend>")).Song.Parts[0].Bars[0].Notes.Single();
        Assert.Equal(new Bend(100, [200, 0]), note.Bend);
    }

    [Fact]
    public void AScoreWithoutFrets_IsPlayedLowOnTheNeck_AndSaysSo()
    {
        var made = Measures(Note("E", 4, 4, "quarter") + Note("F", 4, 4, "quarter") + Note("G", 4, 4, "quarter") + Note("C", 4, 4, "quarter"));
        Assert.Equal([(1, 0), (1, 1), (1, 3), (2, 1)], made.Song.Parts[0].Bars[0].Notes.Select(n => (n.String.Value, n.Fret.Number)));
        Assert.Contains(made.Remarks, r => r.Text.Contains("placed on a neck tuned E2 A2 D3 G3 B3 E4", StringComparison.Ordinal));
    }

    [Fact]
    public void ATimewiseScore_IsThePartwiseOne()
    {
        var partwise = ScoreOf(Note("E", 4, 16, "whole", 1, 0), Note("G", 4, 16, "whole", 1, 3));
        var timewise = partwise
            .Replace("<part id=\"P1\">", "", StringComparison.Ordinal).Replace("</part></score-partwise>", "</score-timewise>", StringComparison.Ordinal)
            .Replace("score-partwise", "score-timewise", StringComparison.Ordinal);
        timewise = System.Text.RegularExpressions.Regex.Replace(timewise, "(<measure[^>]*>)", "$1<part id=\"P1\">").Replace("</measure>", "</part></measure>", StringComparison.Ordinal);
        Assert.Equal(SameSong.Written(Xml(partwise).Song), SameSong.Written(Xml(timewise).Song));
    }

    [Fact]
    public void RepeatsAndEndings_AreKept()
    {
        string Whole(int fret) => Note("E", 4, 16, "whole", 1, fret);
        var song = Measures(
            "<barline location=\"left\"><repeat direction=\"forward\"/></barline>" + Whole(0),
            "<barline location=\"left\"><ending number=\"1,3\" type=\"start\"/></barline>" + Whole(1) + "<barline location=\"right\"><ending number=\"1,3\" type=\"stop\"/><repeat direction=\"backward\"/></barline>",
            "<barline location=\"left\"><ending number=\"2\" type=\"start\"/></barline>" + Whole(2) + "<barline location=\"right\"><ending number=\"2\" type=\"stop\"/><repeat direction=\"backward\"/></barline>",
            Whole(3)).Song;
        Assert.Equal([0, 1, 0, 2, 0, 1, 3], PlayOrder.Of(song.Bars).Select(b => song.Parts[0].Bars[b.Bar].Notes.Single().Fret.Number));
        Assert.Equal(SameSong.Performed(song), SameSong.Performed(ThroughSheet(song, out _)).Replace("part", "part", StringComparison.Ordinal));
    }

    [Fact]
    public void WhatIsNotCarriedOver_IsNamedWithItsBar()
    {
        var made = Measures(Note("E", 4, 16, "whole", 1, 0), Note("E", 4, 16, "whole", 1, 0, notations: "<non-arpeggiate type=\"top\"/><ornaments><turn/></ornaments>"));
        Assert.Contains("LeftOut bar 2 of Guitar: The sign non-arpeggiate is not carried over.", Imported.Text(made.Remarks), StringComparison.Ordinal);
        Assert.Contains("LeftOut bar 2 of Guitar: The sign turn is not carried over.", Imported.Text(made.Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public void ATrillOfAnotherProgram_IsAWholeStep_AndSaidToBe()
    {
        var made = Measures(Note("E", 4, 16, "whole", 1, 0, notations: "<fermata/><ornaments><trill-mark/></ornaments>"));
        var item = made.Song.Parts[0].Bars[0].Strands[0].Events[0];
        Assert.True(item.HasFermata);
        Assert.Equal(new Fret(2), item.Notes[0].Trill);
        Assert.Contains("Changed bar 1 of Guitar: A trill's other pitch is not said: a whole step above is taken.", Imported.Text(made.Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public void ASlurThatJoinsNoLegato_IsNamedAsLeftOut()
    {
        const string start = "<slur type=\"start\" number=\"1\"/>";
        const string stop = "<slur type=\"stop\" number=\"1\"/>";
        var phrasing = Measures(Note("E", 4, 8, "half", 1, 0, notations: start) + Note("G", 4, 8, "half", 1, 3, notations: stop));
        Assert.Contains("LeftOut bar 1 of Guitar: The sign slur is not carried over.", Imported.Text(phrasing.Remarks), StringComparison.Ordinal);
        var hammered = Measures(
            Note("E", 4, 8, "half", 1, 0, notations: start + "<technical><hammer-on type=\"start\" number=\"1\">H</hammer-on></technical>")
            + Note("G", 4, 8, "half", 1, 3, notations: stop + "<technical><hammer-on type=\"stop\" number=\"1\"/></technical>"));
        Assert.DoesNotContain("slur", Imported.Text(hammered.Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public void ASlurThatNeverEnds_IsNamedWhereItBegins() => Assert.Contains(
        "LeftOut bar 2 of Guitar: A slur that begins here and never ends is not carried over.",
        Imported.Text(Measures(Note("E", 4, 16, "whole", 1, 0), Note("E", 4, 16, "whole", 1, 0, notations: "<slur type=\"start\" number=\"1\"/>")).Remarks), StringComparison.Ordinal);

    [Fact]
    public void ACompressedScore_IsFoundThroughItsContainer()
    {
        var container = "<container><rootfiles><rootfile full-path=\"inner/score.xml\"/></rootfiles></container>";
        var made = Xml(Zip(("META-INF/container.xml", container), ("other.xml", "<nothing/>"), ("inner/score.xml", ScoreOf(Note("E", 4, 16, "whole", 1, 0)))));
        Assert.Single(made.Song.Bars);
    }

    [Theory]
    [InlineData("../../etc/passwd")]
    [InlineData("/etc/passwd")]
    [InlineData("..\\score.xml")]
    [InlineData("missing.xml")]
    public void AContainerThatPointsOutOfTheArchive_IsRefused(string path)
    {
        var file = Zip(("META-INF/container.xml", $"<container><rootfiles><rootfile full-path=\"{path}\"/></rootfiles></container>"), ("score.xml", ScoreOf(Note("E", 4, 16, "whole"))));
        Assert.IsType<ImportResult.Refused>(MusicXmlReader.Read(file));
    }

    [Fact]
    public void AZipBomb_IsRefused()
    {
        using var stream = new MemoryStream();
        using (var archive = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            using var entry = archive.CreateEntry("score.xml", CompressionLevel.SmallestSize).Open();
            entry.Write("<score-partwise>"u8);
            var blank = new byte[1 << 20];
            Array.Fill(blank, (byte)' ');
            for (var i = 0; i < 80; i++) entry.Write(blank);
        }
        Assert.IsType<ImportResult.Refused>(MusicXmlReader.Read(stream.ToArray()));
    }

    [Theory]
    [InlineData("<!DOCTYPE a [<!ENTITY b SYSTEM \"file:///etc/passwd\">]><score-partwise><part-list/><part><measure><direction>&b;</direction></measure></part></score-partwise>")]
    [InlineData("<!DOCTYPE a [<!ENTITY b \"bbbbbbbbbb\"><!ENTITY c \"&b;&b;&b;&b;&b;\">]><score-partwise>&c;</score-partwise>")]
    [InlineData("<score-partwise><part><measure>")]
    [InlineData("no xml at all")]
    [InlineData("")]
    [InlineData("<html/>")]
    [InlineData("<score-partwise/>")]
    [InlineData("<?xml version=\"1.0\" encoding=\"nothing\"?><score-partwise/>")]
    public void AHostileFile_IsRefusedWithAReason(string text) =>
        Assert.NotEmpty(Assert.IsType<ImportResult.Refused>(MusicXmlReader.Read(Encoding.UTF8.GetBytes(text))).Reason);

    [Fact]
    public void ADocumentTypeOfTheStandard_IsPassedOver() => Assert.Single(Xml(
        "<!DOCTYPE score-partwise PUBLIC \"-//Recordare//DTD MusicXML 4.0 Partwise//EN\" \"http://www.musicxml.org/dtds/partwise.dtd\">" + ScoreOf(Note("E", 4, 16, "whole"))).Song.Bars);

    [Fact]
    public void ElementsWithinElementsWithoutEnd_AreRefused() => Assert.IsType<ImportResult.Refused>(
        MusicXmlReader.Read(Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat("<a>", 100_000)))));

    private static byte[] Zip(params (string Name, string Text)[] files)
    {
        using var stream = new MemoryStream();
        using (var archive = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in files)
            {
                using var entry = archive.CreateEntry(name).Open();
                entry.Write(Encoding.UTF8.GetBytes(text));
            }
        }
        return stream.ToArray();
    }
}
