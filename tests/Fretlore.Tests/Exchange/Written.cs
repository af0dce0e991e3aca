using System.Xml.Linq;
using Fretlore.Exchange.Midi;
using Fretlore.Exchange.MusicXml;
using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Reading;

namespace Fretlore.Tests.Exchange;

/// <summary>Songs as written files, for tests to look into.</summary>
internal static class Written
{
    public static XDocument MusicXml(Song song, StaffForm form = StaffForm.Notation)
    {
        using var stream = new MemoryStream(MusicXmlBytes(song, form));
        return XDocument.Load(stream);
    }

    public static byte[] MusicXmlBytes(Song song, StaffForm form = StaffForm.Notation)
    {
        using var stream = new MemoryStream();
        MusicXmlWriter.Write(stream, song, SongReader.Read(song), form);
        return stream.ToArray();
    }

    public static byte[] Midi(Song song)
    {
        using var stream = new MemoryStream();
        MidiWriter.Write(stream, Performer.Play(song));
        return stream.ToArray();
    }
}
