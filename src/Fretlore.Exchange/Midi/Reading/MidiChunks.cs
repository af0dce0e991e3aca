using System.Buffers.Binary;
using System.Globalization;
using Fretlore.Exchange.Import;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>The chunks of a Standard MIDI File: how its time is counted, and the bytes of its tracks.</summary>
/// <param name="TicksPerQuarter">Ticks a quarter note; where the file counts frames of film, as many as pass in one at 120 quarters a minute.</param>
/// <param name="CountsFrames">True when its ticks are parts of a second and its tempos say nothing of them.</param>
/// <param name="Tracks">The tracks, in order.</param>
internal sealed record MidiChunks(double TicksPerQuarter, bool CountsFrames, IReadOnlyList<ReadOnlyMemory<byte>> Tracks)
{
    private const int MostTracks = 512;
    private const string Again = "Export it again from the program it comes from.";

    public static bool IsMidi(ReadOnlySpan<byte> file) => file.Length >= 4 && file[..4].SequenceEqual("MThd"u8);

    public static MidiChunks Of(ReadOnlyMemory<byte> file)
    {
        var bytes = file.Span;
        if (!IsMidi(bytes)) throw new RefusedFileException("The file does not begin as a MIDI file does.", "Give a file of MusicXML, MIDI or plain-text tab.");
        if (bytes.Length < 14) throw new RefusedFileException("The MIDI file breaks off in its header.", Again);
        var headerLength = BinaryPrimitives.ReadUInt32BigEndian(bytes[4..]);
        if (headerLength < 6 || headerLength > bytes.Length - 8) throw new RefusedFileException("The header of the MIDI file has a length that can't be.", Again);
        var (format, count, division) = (BinaryPrimitives.ReadUInt16BigEndian(bytes[8..]), BinaryPrimitives.ReadUInt16BigEndian(bytes[10..]), BinaryPrimitives.ReadUInt16BigEndian(bytes[12..]));
        if (format > 1)
        {
            throw new RefusedFileException(
                string.Create(CultureInfo.InvariantCulture, $"The MIDI file is of format {format}: formats 0 and 1 are read, in which all tracks are one song."),
                "Export the song you want on its own, as format 1.");
        }
        var (ticks, frames) = TicksOf(division);
        var tracks = TracksOf(file, 8 + (int)headerLength);
        if (tracks.Count < count)
        {
            throw new RefusedFileException(
                string.Create(CultureInfo.InvariantCulture, $"The MIDI file is cut off: it says it has {count} tracks, and holds {tracks.Count}."), Again);
        }
        return new MidiChunks(ticks, frames, tracks);
    }

    // A high bit says that frames a second are counted (24, 25, 29.97 or 30, as a negative number), and the ticks of each.
    private static (double Ticks, bool Frames) TicksOf(ushort division)
    {
        if ((division & 0x8000) == 0) return division > 0 ? (division, false) : throw new RefusedFileException("The MIDI file says that a quarter note has no ticks.", Again);
        var (frames, ticks) = (256 - (division >> 8), division & 0xFF);
        if (frames is not (24 or 25 or 29 or 30) || ticks == 0) throw new RefusedFileException("The MIDI file counts its time in a way that the standard does not know.", Again);
        return ((frames == 29 ? 30_000.0 / 1001 : frames) * ticks / 2, true);
    }

    private static List<ReadOnlyMemory<byte>> TracksOf(ReadOnlyMemory<byte> file, int at)
    {
        var tracks = new List<ReadOnlyMemory<byte>>();
        while (file.Length - at >= 8)
        {
            var head = file.Span.Slice(at, 8);
            var length = BinaryPrimitives.ReadUInt32BigEndian(head[4..]);
            if (length > file.Length - at - 8)
            {
                throw new RefusedFileException(
                    string.Create(CultureInfo.InvariantCulture, $"The MIDI file is cut off: the piece at byte {at} says it has {length} bytes, and {file.Length - at - 8} are left."), Again);
            }
            // Chunks of other kinds are passed over, as the standard asks.
            if (head[..4].SequenceEqual("MTrk"u8)) tracks.Add(file.Slice(at + 8, (int)length));
            if (tracks.Count > MostTracks) throw new RefusedFileException("The MIDI file has more tracks than are taken.", "Export the tracks you want on their own.");
            at += 8 + (int)length;
        }
        return tracks;
    }
}
