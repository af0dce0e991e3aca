using Fretlore.Sound.Mixing;
using Fretlore.Sound.Pieces;

namespace Fretlore.Sound.Output;

/// <summary>What the last writing of a song and its stems leaves for the next: rendered tracks, in the streams they were rendered into, and packets. The bytes are the same with it and without.</summary>
/// <remarks>One writing at a time. Memory holds some 2 MB a minute and part; streams hold 23 MB a minute and part, and half of that once more.</remarks>
public sealed class EarlierSound : IDisposable
{
    private readonly bool keeps;
    private readonly List<Stream> streams = [];
    private readonly List<TrackPieces> tracks = [];

    public EarlierSound()
        : this(true)
    {
    }

    internal EarlierSound(bool keeps) => (this.keeps, Memo) = (keeps, new PieceMemo(keeps));

    internal PieceMemo Memo { get; private set; }

    internal FrameStore Curve { get; private set; } = new(Stream.Null);

    internal IReadOnlyList<TrackPieces> Tracks => tracks;

    public void Dispose()
    {
        streams.ForEach(stream => stream.Dispose());
        streams.Clear();
        tracks.Clear();
        Memo = new PieceMemo(keeps);
    }

    /// <summary>How much of a mix was not played alike the last time and is to be rendered: from 0 to 1, a little less than it will be.</summary>
    public double ShareOf(SongMix mix) => mix.Parts.Length == tracks.Count ? tracks.Select((track, i) => track.ShareOf(mix, i)).Average() : 1;

    /// <summary>Makes room for so many tracks.</summary>
    internal void Begin(int count, Func<Stream> room)
    {
        if (tracks.Count != count) Dispose();
        if (streams.Count == 0)
        {
            streams.Add(room());
            Curve = new FrameStore(streams[0], 1);
        }
        while (tracks.Count < count)
        {
            streams.Add(room());
            tracks.Add(new TrackPieces(new FrameStore(streams[^1]), keeps));
        }
    }

    /// <summary>All that a piece of the mix and its surroundings depend on.</summary>
    internal object KeyOf(int piece) => keeps ? string.Concat(tracks.Select(track => KeyOf(track, piece))) : "";

    /// <summary>All that a piece of a track and its surroundings depend on.</summary>
    internal object KeyOf(int track, int piece) => keeps ? KeyOf(tracks[track], piece) : "";

    private static string KeyOf(TrackPieces track, int piece) => $"{track.Tail(piece - 1)}{track.Whole(piece)}{track.Head(piece + 1)}/";
}
