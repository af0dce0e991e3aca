using Fretlore.Engraving.Drawing;

namespace Fretlore.Engraving.Layout;

/// <summary>How far the ink of one row reaches up and down at each place from left to right.</summary>
/// <remarks>Kept in steps of a quarter staff space; a step holds the furthest ink that touches it, so it never says less than is there.</remarks>
internal sealed class Skyline
{
    private const double StepsPerSpace = 4;

    private readonly double[] tops;
    private readonly double[] bottoms;
    private readonly double left;

    /// <param name="left">Where it begins.</param>
    /// <param name="right">Where it ends; ink beyond either end counts at that end.</param>
    /// <param name="top">The row's own top line, which no ink is needed for.</param>
    /// <param name="bottom">The row's own bottom line.</param>
    public Skyline(double left, double right, double top, double bottom)
    {
        this.left = left;
        var steps = (int)Math.Ceiling((right - left) * StepsPerSpace) + 1;
        tops = new double[steps];
        bottoms = new double[steps];
        Clear(top, bottom);
    }

    /// <summary>The signs of the row.</summary>
    public SignMap Signs { get; } = new();

    /// <summary>Forgets all ink, for another row as wide.</summary>
    public void Clear(double top, double bottom)
    {
        Signs.Clear();
        Array.Fill(tops, top);
        Array.Fill(bottoms, bottom);
    }

    public void Add(Box ink)
    {
        var (first, last) = Steps(ink.Left, ink.Right);
        for (var i = first; i <= last; i++)
        {
            if (ink.Top < tops[i]) tops[i] = ink.Top;
            if (ink.Bottom > bottoms[i]) bottoms[i] = ink.Bottom;
        }
    }

    /// <summary>The highest ink between two places.</summary>
    public double Top(double from, double to)
    {
        var (first, last) = Steps(from, to);
        var top = double.MaxValue;
        for (var i = first; i <= last; i++) top = Math.Min(top, tops[i]);
        return top;
    }

    /// <summary>The lowest ink between two places.</summary>
    public double Bottom(double from, double to)
    {
        var (first, last) = Steps(from, to);
        var bottom = double.MinValue;
        for (var i = first; i <= last; i++) bottom = Math.Max(bottom, bottoms[i]);
        return bottom;
    }

    public double Highest => tops.Min();

    public double Lowest => bottoms.Max();

    /// <summary>How far below this row's origin the origin of a row beneath must be for their ink to keep a gap.</summary>
    public double DistanceTo(Skyline below, double gap)
    {
        var distance = double.MinValue;
        for (var i = 0; i < Math.Min(bottoms.Length, below.tops.Length); i++) distance = Math.Max(distance, bottoms[i] - below.tops[i]);
        return distance + gap;
    }

    /// <summary>Takes in the ink of a row whose origin is lower by an offset.</summary>
    public void Merge(Skyline other, double offset)
    {
        for (var i = 0; i < Math.Min(tops.Length, other.tops.Length); i++)
        {
            tops[i] = Math.Min(tops[i], other.tops[i] + offset);
            bottoms[i] = Math.Max(bottoms[i], other.bottoms[i] + offset);
        }
    }

    private (int First, int Last) Steps(double from, double to)
    {
        var first = Math.Clamp((int)Math.Floor((from - left) * StepsPerSpace), 0, tops.Length - 1);
        var last = Math.Clamp((int)Math.Floor((to - left) * StepsPerSpace), first, tops.Length - 1);
        return (first, last);
    }
}
