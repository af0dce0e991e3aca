namespace Fretlore.Lesson.Kit;

/// <summary>Adds up how far a kit is while several of its sections are made at once, and tells it with one voice: what is being done is what was begun last.</summary>
/// <param name="tell">Told each time, one call at a time; from whatever thread got further.</param>
/// <param name="whole">The weight of all the work.</param>
internal sealed class KitShares(Action<KitMoment>? tell, double whole)
{
    private readonly Lock gate = new();
    private string doing = "";
    private double done;

    /// <summary>Says what is being done from now on.</summary>
    public void Begin(string what)
    {
        lock (gate)
        {
            doing = what;
            Tell();
        }
    }

    /// <summary>Takes the share of one piece of the work, from 0 to 1, each time it grows.</summary>
    /// <param name="weight">The piece's.</param>
    public Action<double> Piece(double weight)
    {
        var last = 0.0;
        return share =>
        {
            lock (gate)
            {
                if (share <= last) return;
                done += weight * (share - last);
                last = share;
                Tell();
            }
        };
    }

    private void Tell() => tell?.Invoke(new KitMoment(doing, Math.Min(done / whole, 1)));
}
