namespace Fretlore.Listening.Alignment;

/// <summary>Roughly when a take plays what the sheet has at a time: what is left of a coarse way when its steps are smoothed away.</summary>
internal sealed class RoughTempo
{
    private const double SmoothSeconds = 8; // To either side.
    private const double SlowestShare = 0.4; // Of the sheet's tempo, so that time never stands still.

    // When the take plays each second of the sheet.
    private readonly double[] seconds;

    private RoughTempo(double[] seconds) => this.seconds = seconds;

    /// <param name="way">For each moment of the sheet the take's.</param>
    /// <param name="rate">Moments a second.</param>
    public static RoughTempo Of(int[] way, double rate)
    {
        var seconds = new double[(int)(way.Length / rate) + 2];
        for (var s = 0; s < seconds.Length; s++)
        {
            var at = LineThrough(way, s * rate, SmoothSeconds * rate) / rate;
            seconds[s] = s == 0 ? at : Math.Max(at, seconds[s - 1] + SlowestShare);
        }
        return new RoughTempo(seconds);
    }

    /// <summary>Seconds in the take at a time of the sheet; before its start where the take begins later.</summary>
    public double TimeOf(double sheetSeconds)
    {
        var s = (int)Math.Clamp(sheetSeconds, 0, seconds.Length - 2);
        return seconds[s] + (sheetSeconds - s) * (seconds[s + 1] - seconds[s]);
    }

    /// <summary>Where the straight line that comes nearest to a way around a moment is at that moment.</summary>
    /// <param name="way">For each moment here one there.</param>
    /// <param name="moment">Here.</param>
    /// <param name="around">Moments to either side that count.</param>
    public static double LineThrough(int[] way, double moment, double around)
    {
        var first = Math.Clamp((int)(moment - around), 0, Math.Max(0, way.Length - 2));
        var last = Math.Clamp((int)(moment + around), Math.Min(first + 1, way.Length - 1), way.Length - 1);
        double n = last - first + 1, x = 0, y = 0, xx = 0, xy = 0;
        for (var i = first; i <= last; i++)
        {
            double dx = i - moment;
            (x, y, xx, xy) = (x + dx, y + way[i], xx + dx * dx, xy + dx * way[i]);
        }
        var spread = n * xx - x * x;
        return spread == 0 ? way[first] : (y - (n * xy - x * y) / spread * x) / n;
    }
}
