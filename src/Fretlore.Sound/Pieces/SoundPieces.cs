namespace Fretlore.Sound.Pieces;

/// <summary>The grid of pieces that a long sound is made in, from its first sample on: each can be made again by itself.</summary>
internal static class SoundPieces
{
    public const int Seconds = 10;

    /// <summary>Samples of every piece but the last.</summary>
    public const int Length = Seconds * SampleRate.Hertz;

    /// <summary>How many pieces a sound of so many samples has.</summary>
    public static int CountOf(long samples) => (int)((samples + Length - 1) / Length);

    /// <summary>Samples of one of them.</summary>
    public static int LengthOf(int piece, long samples) => (int)Math.Min(Length, samples - piece * (long)Length);
}
