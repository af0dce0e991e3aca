using Fretlore.Exchange.Midi;
using Fretlore.Exchange.MusicXml;
using Fretlore.Performance;

namespace Fretlore.Workspace.Exchange;

/// <summary>The files a song can be exported as.</summary>
public enum ExportForm
{
    MusicXml,
    Mxl,
    Midi,
}

/// <summary>Writes songs for other programs.</summary>
public static class SongExport
{
    /// <summary>The file's bytes; the same song gives the same bytes. There must be a song.</summary>
    public static byte[] Write(SongWorkspace workspace, ExportForm form)
    {
        var song = workspace.Song ?? throw new InvalidOperationException("A sheet without a song can't be exported.");
        using var stream = new MemoryStream();
        switch (form)
        {
            case ExportForm.Midi:
                MidiWriter.Write(stream, Performer.Play(song));
                break;
            case ExportForm.Mxl:
                CompressedMusicXmlWriter.Write(stream, song, workspace.Reading);
                break;
            default:
                MusicXmlWriter.Write(stream, song, workspace.Reading);
                break;
        }
        return stream.ToArray();
    }
}
