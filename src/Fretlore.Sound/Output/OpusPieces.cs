using System.Collections.Immutable;
using Concentus;
using Concentus.Enums;
using Fretlore.Sound.Pieces;

namespace Fretlore.Sound.Output;

/// <summary>Opus in Ogg whose packets are made piece by piece, each by an encoder of its own, so that a piece can be made again by itself.</summary>
/// <remarks>
/// An encoder hears what is before its piece first, so that its filters have settled. The two packets that meet at a join predict nothing
/// from those before them (a restart of energies, and no pitch filter), so that a decoder needs nothing that only the other encoder knew.
/// </remarks>
/// <param name="sound">What is encoded.</param>
/// <param name="channels">2, or 1 for the middle between left and right.</param>
/// <param name="bitsASecond">What it may take.</param>
internal sealed class OpusPieces(LevelledSound sound, int channels, int bitsASecond)
{
    private const int PacketsAPiece = SoundPieces.Length / OpusOutput.FrameLength;
    private const int RunUp = 20; // Packets: 0.4 s, seven times as long as the encoder's highpass remembers.

    /// <summary>How many pieces there are; the last may hold nothing but what the encoder is late by.</summary>
    public int Count
    {
        get
        {
            using var encoder = OpusOutput.Encoder(channels, bitsASecond);
            return (Packets(encoder) + PacketsAPiece - 1) / PacketsAPiece;
        }
    }

    /// <summary>Makes the packets of a piece; several may be made at once.</summary>
    public ImmutableArray<byte[]> Encode(int piece)
    {
        using var encoder = OpusOutput.Encoder(channels, bitsASecond);
        encoder.ForceMode = OpusMode.MODE_CELT_ONLY;
        var (first, all) = (piece * PacketsAPiece, Packets(encoder));
        var after = Math.Min(first + PacketsAPiece, all);
        var made = ImmutableArray.CreateBuilder<byte[]>(after - first);
        var (frame, packet) = (new OpusFrame(channels), new byte[OpusOutput.LongestPacket]);
        var number = Math.Max(0, first - RunUp);
        var from = number * (long)OpusOutput.FrameLength;
        sound.Play(from, after * (long)OpusOutput.FrameLength - from, Put);
        // After the end there is silence.
        while (number < after) Put(0, 0);
        return made.DrainToImmutable();

        void Put(double left, double right)
        {
            if (!frame.Add(left, right)) return;
            encoder.PredictionDisabled = (first > 0 && (number == first - 1 || number == first)) || (after < all && number == after - 1);
            var length = encoder.Encode(frame.Samples, OpusOutput.FrameLength, packet, packet.Length);
            if (number++ >= first) made.Add(packet[..length]);
        }
    }

    /// <summary>Writes the file.</summary>
    /// <param name="output">Where it goes.</param>
    /// <param name="tags">Its second packet.</param>
    /// <param name="pieces">The packets of each piece.</param>
    public void Write(Stream output, byte[] tags, IEnumerable<ImmutableArray<byte[]>> pieces)
    {
        using var encoder = OpusOutput.Encoder(channels, bitsASecond);
        var file = new OpusFile(output, tags, channels, encoder.Lookahead);
        foreach (var packet in pieces.SelectMany(piece => piece)) file.Add(packet, sound.Length);
        file.End();
    }

    private int Packets(IOpusEncoder encoder) => (int)((sound.Length + encoder.Lookahead + OpusOutput.FrameLength - 1) / OpusOutput.FrameLength);
}
