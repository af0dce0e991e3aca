using Fretlore.Music;

namespace Fretlore.Engraving.Layout.Model;

/// <summary>The pitch a bent string sounds, as it is written on the staff.</summary>
/// <remarks>In whole semitones: what is left over, a quarter tone above all, only the tablature shows.</remarks>
internal static class BentPitch
{
    /// <summary>Whole semitones of a bend; a quarter tone more does not count.</summary>
    public static int SemitonesOf(int cents) => (int)Math.Floor((cents + 40) / 100.0);

    /// <param name="fretted">The pitch without the bend.</param>
    /// <param name="cents">How far it is bent.</param>
    /// <param name="key">The key around it, whose notes are spelled as in the key.</param>
    public static Pitch Of(Pitch fretted, int cents, Key? key)
    {
        var semitones = SemitonesOf(cents);
        if (semitones == 0) return fretted;
        var height = fretted.Height + semitones;
        if (key is { } known)
        {
            foreach (var name in known.Notes)
            {
                if (name.PitchClass == height.PitchClass) return height.Spell(name);
            }
        }
        if (semitones is < 0 or > 11) return height.Spell(SimplestName(height));
        var pitch = fretted.Transpose(Interval.Chromatic(semitones));
        return Math.Abs(pitch.Name.Alteration) < 2 ? pitch : height.Spell(SimplestName(height));
    }

    private static NoteName SimplestName(Height height)
    {
        // From F on the line of fifths: naturals first, then sharps.
        for (var fifths = -1; ; fifths++)
        {
            var name = NoteName.FromFifths(fifths);
            if (name.PitchClass == height.PitchClass) return name;
        }
    }
}
