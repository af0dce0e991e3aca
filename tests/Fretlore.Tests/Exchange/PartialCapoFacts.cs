using System.Globalization;
using System.Xml.Linq;
using CsCheck;
using Fretlore.Exchange.Sheets;
using Fretlore.Tests.Exchange.Import;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Exchange;

/// <summary>A partial capo in files: other programs play it right, and our own readers know it again.</summary>
public sealed class PartialCapoFacts
{
    private const string Sheet = """
        title A
        tempo Q = 90
        tuning E2 A2 D3 G3 Bb3 E4
        capo 2 on 5-3
        section All
          @6 Q 0 2 @4 0 5 | @4 Q 14* 5*17 0~4 E 0,4 | (capo 3 on 1) @1 Q 0 5 @6 1 3 | (capo 1) @6 W 3 | (capo off) @6 W 3 |
        """;

    [Fact]
    public void MusicXml_HasTheStringsAsTheySound_AndSaysTheCapoInWords()
    {
        var document = Written.MusicXml(Songs.Sheets.Song(Sheet));
        Assert.Equal("1E2 2B2 3E3 4A3 5Bb3 6E4 / 1E2 2A2 3D3 4G3 5Bb3 6G4 / 1E2 2A2 3D3 4G3 5Bb3 6E4 / 1E2 2A2 3D3 4G3 5Bb3 6E4",
            string.Join(" / ", document.Descendants("staff-details").Select(Tuning)));
        Assert.Equal(["1"], document.Descendants("capo").Select(capo => capo.Value));
        Assert.Equal(["Capo at fret 2 on strings 5-3", "Capo at fret 3 on string 1"], document.Descendants("words").Select(words => words.Value));
    }

    /// <summary>As a program works a pitch out that knows tunings, capos and frets: the tuning of the string, and the fret.</summary>
    [Fact]
    public void InMusicXml_StringAndFret_GiveThePitch() => SongGen.Songs.Sample(song =>
    {
        foreach (var part in Written.MusicXml(song).Descendants("part"))
        {
            var (open, capo) = (new Dictionary<int, int>(), 0);
            foreach (var item in part.Elements("measure").Elements())
            {
                if (item.Element("staff-details") is { } details)
                {
                    var tunings = details.Elements("staff-tuning").ToList();
                    open = tunings.ToDictionary(t => tunings.Count + 1 - Number(t.Attribute("line")!.Value), t => Midi(t, "tuning-"));
                    capo = details.Element("capo") is { } said ? Number(said.Value) : 0;
                }
                if (item.Element("pitch") is null || item.Descendants("technical").FirstOrDefault() is not { } technical || technical.Element("harmonic") is not null) continue;
                Assert.Equal(Midi(item.Element("pitch")!, ""), open[Number(technical.Element("string")!.Value)] + capo + Number(technical.Element("fret")!.Value));
            }
        }
    }, iter: 200);

    [Fact]
    public void ThroughMusicXml_TheSheetIsTheSame() => Assert.Equal(Plain(), Plain(SheetWriter.Write(Imported.Xml(Written.MusicXmlBytes(Songs.Sheets.Song(Sheet))).Song).Text));

    // A file that Fretlore did not write is believed as it stands: the strings are as they sound.
    [Fact]
    public void InAnotherProgramsFile_TheWordsAreWords()
    {
        var document = Written.MusicXml(Songs.Sheets.Song(Sheet));
        document.Descendants("software").Remove();
        using var stream = new MemoryStream();
        document.Save(stream);
        var song = Imported.Xml(stream.ToArray()).Song;
        Assert.Equal("E2 B2 E3 A3 Bb3 E4", song.Parts[0].Neck.Tuning.ToString());
        Assert.True(song.Parts[0].Neck.Capo.IsOff);
        Assert.Contains(song.Parts[0].Bars[0].Strands[0].Events, item => item.Words == "Capo at fret 2 on strings 5-3");
    }

    private static string Plain(string? sheet = null)
    {
        var song = Songs.Sheets.Song(sheet ?? Sheet);
        return SheetWriter.Write(song, new SheetStyle(FindsRiffs: false)).Text;
    }

    // A place for each semitone.
    private const string Steps = "C D EF G A B";

    private static string Tuning(XElement details) => string.Join(' ', details.Elements("staff-tuning").Select(t =>
        $"{t.Attribute("line")!.Value}{t.Element("tuning-step")!.Value}{(t.Element("tuning-alter") is { } alter ? alter.Value == "-1" ? "b" : "#" : "")}{t.Element("tuning-octave")!.Value}"));

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);

    private static int Midi(XElement pitch, string prefix) => 12 * (Number(pitch.Element(prefix + "octave")!.Value) + 1)
        + Steps.IndexOf(pitch.Element(prefix + "step")!.Value, StringComparison.Ordinal) + (pitch.Element(prefix + "alter") is { } alter ? Number(alter.Value) : 0);
}
