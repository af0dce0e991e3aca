using Fretlore.Score;

namespace Fretlore.Hands.Grips;

/// <summary>A hand on the neck at one moment: which finger holds what, and the position it stands in.</summary>
/// <remarks>
/// The position is the fret under the index finger when the hand is at rest; the other fingers rest on the frets after it. It is part of the
/// state because a finger may reach a fret out of the position without the hand moving.
/// </remarks>
internal sealed class Grip
{
    public const int FingerCount = 5;

    // By finger, thumb first: fret (0 where it is not used), and the low and the high string it lies on.
    private readonly byte[] fret = new byte[FingerCount];
    private readonly byte[] lowString = new byte[FingerCount];
    private readonly byte[] highString = new byte[FingerCount];

    public Grip(Hold hold, ReadOnlySpan<Finger> fingers, int position, bool isBeyondReach)
    {
        Hold = hold;
        Fingers = fingers.ToArray();
        Position = position;
        IsBeyondReach = isBeyondReach;
        for (var i = 0; i < fingers.Length; i++)
        {
            var (finger, press) = ((int)fingers[i], hold.Presses[i]);
            fret[finger] = (byte)press.Fret;
            if (lowString[finger] == 0 || press.String > lowString[finger]) lowString[finger] = (byte)press.String;
            if (highString[finger] == 0 || press.String < highString[finger]) highString[finger] = (byte)press.String;
        }
    }

    public Hold Hold { get; }

    /// <summary>The finger of each press.</summary>
    public Finger[] Fingers { get; }

    public int Position { get; }

    /// <summary>True where the sheet's own fingers ask for more than the hand's reach.</summary>
    public bool IsBeyondReach { get; }

    /// <summary>What holding it costs.</summary>
    public double Cost { get; set; }

    public bool Uses(int finger) => fret[finger] != 0;

    public int FretOf(int finger) => fret[finger];

    /// <summary>The string of the largest number the finger lies on.</summary>
    public int LowStringOf(int finger) => lowString[finger];

    public int HighStringOf(int finger) => highString[finger];

    public int StringsUnder(int finger) => fret[finger] == 0 ? 0 : lowString[finger] - highString[finger] + 1;
}
