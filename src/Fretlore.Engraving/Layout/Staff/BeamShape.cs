namespace Fretlore.Engraving.Layout.Staff;

/// <summary>A stem under a beam.</summary>
/// <param name="X">Its middle.</param>
/// <param name="HeadY">The head nearest to the beam, in spaces below the top line.</param>
/// <param name="Beams">How many beams it carries.</param>
/// <param name="Extra">The least length between the head and the innermost beam, where something stands on the stem.</param>
internal readonly record struct BeamStem(double X, double HeadY, int Beams, double Extra = 0);

/// <summary>The straight outer edge of a beam.</summary>
internal readonly record struct BeamEdge(double X1, double Y1, double X2, double Y2)
{
    public double At(double x) => X2 == X1 ? Y1 : Y1 + (Y2 - Y1) * (x - X1) / (X2 - X1);
}

/// <summary>Where a beam lies and how it slants.</summary>
/// <remarks>
/// After Gould: the slant follows the interval of the outer notes, from a quarter of a space for a second to one and a quarter for an octave, less
/// where the notes stand close; level when the outer notes are alike or an inner note is nearer to the beam than both. In the staff, a beam sits
/// on, straddles or hangs from a line and never floats in a space.
/// </remarks>
internal static class BeamShape
{
    private static ReadOnlySpan<double> SlantOfInterval => [0, 0.25, 0.5, 0.75, 1, 1, 1.25, 1.25];

    private const int MostRaises = 16;

    /// <param name="stems">What the beam joins, from left to right.</param>
    /// <param name="up">Whether it lies above the heads.</param>
    /// <param name="isFree">Whether a place is free of other voices' signs; the beam goes further out until it is, within four spaces.</param>
    public static BeamEdge Fit(ReadOnlySpan<BeamStem> stems, bool up, Func<BeamEdge, bool>? isFree = null)
    {
        var direction = up ? -1 : 1;
        BeamStem first = stems[0], last = stems[^1];
        var slant = SlantOf(stems, direction);
        var slope = last.X > first.X ? slant / (last.X - first.X) : 0;
        var reach = double.MinValue;
        foreach (var stem in stems)
        {
            var need = stem.HeadY * direction + Math.Max(LeastLength(stem.Beams), stem.Extra > 0 ? stem.Extra + stem.Beams * HouseStyle.BeamPitch : 0);
            if (Math.Abs(stem.HeadY - 2) > 3) need = Math.Max(need, 2 * direction);
            reach = Math.Max(reach, need - slope * (stem.X - first.X) * direction);
        }
        // Rounded outwards to quarters so that no stem gets shorter.
        var y = Math.Ceiling(reach * 4 - 1e-9) / 4 * direction;
        for (var tries = 0; tries < 4 && (Floats(y, direction) || Floats(y + slant, direction)); tries++) y += 0.25 * direction;
        var edge = new BeamEdge(first.X, y, last.X, y + slant);
        if (isFree is null || isFree(edge)) return edge;
        for (var raises = 1; raises <= MostRaises; raises++)
        {
            var raised = y + raises * 0.25 * direction;
            if (Floats(raised, direction) || Floats(raised + slant, direction)) continue;
            var further = new BeamEdge(first.X, raised, last.X, raised + slant);
            if (isFree(further)) return further;
        }
        return edge;
    }

    // The stem of the note nearest to the beam; the others are longer.
    private static double LeastLength(int beams) => beams switch
    {
        <= 1 => 3,
        2 => 3.25,
        3 => 4,
        _ => 4.75,
    };

    private static double SlantOf(ReadOnlySpan<BeamStem> stems, int direction)
    {
        BeamStem first = stems[0], last = stems[^1];
        var steps = (int)Math.Round(Math.Abs(last.HeadY - first.HeadY) * 2);
        if (steps == 0) return 0;
        var nearest = Math.Max(first.HeadY * direction, last.HeadY * direction);
        for (var i = 1; i < stems.Length - 1; i++)
        {
            if (stems[i].HeadY * direction > nearest + 1e-9) return 0;
        }
        var width = last.X - first.X;
        var slant = SlantOfInterval[Math.Min(steps, SlantOfInterval.Length - 1)];
        var bound = width < 2.2 ? 0.25 : width < 4 ? 0.5 : width < 6 ? 0.75 : 1.25;
        return Math.Min(slant, bound) * Math.Sign(last.HeadY - first.HeadY);
    }

    // The outer edge of a beam half a space thick; its middle may be on a line or a quarter off, not in the middle of a space.
    private static bool Floats(double edge, int direction)
    {
        var middle = edge - 0.25 * direction;
        if (middle is < -0.3 or > 4.3) return false;
        return Math.Abs(middle - Math.Floor(middle) - 0.5) < 0.1;
    }
}
