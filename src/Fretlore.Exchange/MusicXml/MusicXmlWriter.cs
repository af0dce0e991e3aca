using System.Text;
using System.Xml;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>Writes a song as MusicXML 4.0, partwise, as UTF-8 text.</summary>
/// <remarks>
/// Pitches are the ones that sound, spelled as the reading spells them. Frets count from the capo, as the standard has it; for a partial one see <see cref="PartialCapo"/>. Times are exact. The same song gives the same bytes.
/// </remarks>
public static class MusicXmlWriter
{
    public static void Write(Stream output, Song song, SongReading reading, StaffForm form = StaffForm.Notation)
    {
        var settings = new XmlWriterSettings
        {
            Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            Indent = true,
            IndentChars = " ",
            NewLineChars = "\n",
            CloseOutput = false,
        };
        using var writer = XmlWriter.Create(output, settings);
        var xml = new XmlOutput(writer);
        writer.WriteStartDocument();
        xml.Element("score-partwise", () =>
        {
            HeaderWriter.Write(xml, song);
            var frames = new FrameWriter(xml);
            for (var part = 0; part < song.Parts.Count; part++) new PartWriter(xml, song, reading, part, form, frames).Write();
        }, ("version", "4.0"));
        writer.WriteEndDocument();
    }
}
