using Fretlore.Music;

namespace Fretlore.Performance;

/// <summary>A number for a note by where it is played, for small differences that are the same each time.</summary>
/// <remarks>It depends on the moment and the string alone, so that what is written elsewhere in the song changes nothing here.</remarks>
public static class NoteSeed
{
    /// <param name="note">The note.</param>
    /// <param name="take">The recording.</param>
    /// <param name="varies">True where each time it is played is to differ; false for the same number at every moment.</param>
    public static ulong Of(PerformedNote note, int take, bool varies = true)
    {
        var onset = varies ? note.Onset : Beats.Zero;
        return unchecked(Mixed(Mixed((ulong)onset.Numerator) ^ (ulong)onset.Denominator << 16 ^ (ulong)(byte)note.String.Value << 8 ^ (byte)take));
    }

    /// <summary>The mixing step of Steele, Lea and Flood (2014), so that neighbouring numbers have nothing in common.</summary>
    public static ulong Mixed(ulong number)
    {
        unchecked
        {
            var mixed = number + 0x9E3779B97F4A7C15;
            mixed = (mixed ^ mixed >> 30) * 0xBF58476D1CE4E5B9;
            mixed = (mixed ^ mixed >> 27) * 0x94D049BB133111EB;
            return mixed ^ mixed >> 31;
        }
    }
}
