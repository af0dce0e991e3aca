using Fretlore.Exchange.Midi;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>What stands before the music: title, credits, rights and the list of parts.</summary>
internal static class HeaderWriter
{
    /// <summary>How a file says that Fretlore wrote it.</summary>
    public const string Software = "Fretlore";

    public static string IdOf(int part) => "P" + XmlOutput.Digits(part + 1);

    public static void Write(XmlOutput xml, Song song)
    {
        xml.Element("work", () => xml.Text("work-title", song.Info.Title));
        xml.Element("identification", () =>
        {
            if (song.Info.Credits is { } credits) xml.Text("creator", credits, ("type", "composer"));
            if (song.Info.Artist is { } artist) xml.Text("creator", artist, ("type", "artist"));
            if (song.Info.Rights is { } rights) xml.Text("rights", rights);
            xml.Element("encoding", () =>
            {
                xml.Text("software", Software);
                xml.Empty("supports", ("element", "accidental"), ("type", "yes"));
                xml.Empty("supports", ("element", "beam"), ("type", "yes"));
                xml.Empty("supports", ("element", "stem"), ("type", "no"));
            });
        });
        xml.Element("part-list", () =>
        {
            for (var part = 0; part < song.Parts.Count; part++) WritePart(xml, song.Parts[part], part);
        });
    }

    private static void WritePart(XmlOutput xml, Part part, int index)
    {
        var instrument = IdOf(index) + "-I1";
        xml.Element("score-part", () =>
        {
            xml.Text("part-name", part.Title);
            xml.Element("score-instrument", () => xml.Text("instrument-name", part.Title), ("id", instrument));
            xml.Element("midi-instrument", () =>
            {
                var channel = index % 15 + 1;
                xml.Number("midi-channel", channel >= 10 ? channel + 1 : channel);
                xml.Number("midi-program", GeneralMidi.ProgramOf(part) + 1);
            }, ("id", instrument));
        }, ("id", IdOf(index)));
    }
}
