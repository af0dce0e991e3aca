using System.Collections.Immutable;
using System.Text;
using Fretlore.Exchange.Midi;
using Fretlore.Exchange.MusicXml;
using Fretlore.Exchange.Reports;
using Fretlore.Exchange.TextTab;
using Fretlore.Performance;

namespace Fretlore.Workspace.Exchange;

/// <summary>The files a song can be exported as.</summary>
public enum ExportForm
{
    MusicXml,
    Mxl,
    Midi,
    Text,
}

/// <summary>Writes songs for other programs.</summary>
/// <param name="Bytes">The file; the same song gives the same bytes.</param>
/// <param name="Remarks">What the file leaves out or says otherwise than the sheet, as far as it is told one by one: for plain-text tab.</param>
public sealed record SongExport(byte[] Bytes, ImmutableArray<Remark> Remarks)
{
    /// <summary>The usual width of plain-text tab.</summary>
    public const int UsualWidth = TabStyle.UsualWidth;

    /// <summary>The narrowest and the widest plain-text tab.</summary>
    public static (int Narrowest, int Widest) Widths => (TabStyle.Narrowest, TabStyle.Widest);

    /// <summary>Makes a file of a song. There must be a song.</summary>
    /// <param name="workspace">The song.</param>
    /// <param name="form">The kind of file.</param>
    /// <param name="width">The most characters in a line of plain-text tab.</param>
    public static SongExport Write(SongWorkspace workspace, ExportForm form, int width = UsualWidth)
    {
        var song = workspace.Song ?? throw new InvalidOperationException("A sheet without a song can't be exported.");
        using var stream = new MemoryStream();
        switch (form)
        {
            case ExportForm.Text:
                var tab = TextTabWriter.Write(song, workspace.Reading, new TabStyle(width));
                return new SongExport(Encoding.UTF8.GetBytes(tab.Text), tab.Remarks);
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
        return new SongExport(stream.ToArray(), []);
    }
}
