namespace Fretlore.Engraving.Layout.Spacing;

/// <summary>Springs in a row that are stretched or pressed together to a given width and stop at their least lengths.</summary>
internal static class Springs
{
    /// <summary>The lengths that fill a width: each its natural length times one common factor, but never under its least.</summary>
    /// <param name="natural">Lengths at rest, above 0.</param>
    /// <param name="least">Least lengths, from the ink.</param>
    /// <param name="width">What to fill.</param>
    /// <returns>Lengths that add up to the width; when even the least ones are too long they are all pressed in proportion.</returns>
    public static double[] Fill(ReadOnlySpan<double> natural, ReadOnlySpan<double> least, double width)
    {
        var lengths = new double[natural.Length];
        double free = 0, held = 0, allLeast = 0;
        for (var i = 0; i < natural.Length; i++)
        {
            free += natural[i];
            allLeast += least[i];
        }
        if (allLeast >= width)
        {
            for (var i = 0; i < natural.Length; i++) lengths[i] = allLeast > 0 ? least[i] * width / allLeast : 0;
            return lengths;
        }
        // Each round holds springs that would be shorter than they may; the factor only falls, so a held one stays held.
        var isHeld = new bool[natural.Length];
        for (var changed = true; changed && free > 0;)
        {
            changed = false;
            var factor = (width - held) / free;
            for (var i = 0; i < natural.Length; i++)
            {
                if (isHeld[i] || natural[i] * factor >= least[i]) continue;
                isHeld[i] = changed = true;
                held += least[i];
                free -= natural[i];
            }
        }
        for (var i = 0; i < natural.Length; i++) lengths[i] = isHeld[i] ? least[i] : natural[i] * (width - held) / free;
        return lengths;
    }
}
