namespace Fretlore.Sound.Output;

/// <summary>What an encoder takes at once, filled sample by sample.</summary>
/// <param name="channels">1, of both sides' mean, or 2.</param>
internal sealed class OpusFrame(int channels)
{
    private readonly float[] samples = new float[channels * OpusOutput.FrameLength];
    private int filled;

    /// <summary>Sides beside each other.</summary>
    public ReadOnlySpan<float> Samples => samples;

    /// <summary>Adds a sample of each side; true when the frame is full, and the next sample begins another.</summary>
    public bool Add(double left, double right)
    {
        if (channels == 1)
        {
            samples[filled++] = (float)(0.5 * (left + right));
        }
        else
        {
            samples[filled++] = (float)left;
            samples[filled++] = (float)right;
        }
        if (filled < samples.Length) return false;
        filled = 0;
        return true;
    }
}
