namespace Fretlore.Engraving.Layout.Systems;

/// <summary>The skylines of a system's rows, used again for the next system: they are large, and a system's are done with once it stands.</summary>
internal sealed class RowSkylines(double pageWidth)
{
    private readonly List<Skyline> all = [];
    private int used;

    /// <summary>The skyline of another row of the system, with no ink yet.</summary>
    public Skyline Next(double bottom)
    {
        if (used == all.Count) all.Add(new Skyline(0, pageWidth, 0, bottom));
        else all[used].Clear(0, bottom);
        return all[used++];
    }

    /// <summary>Another system begins.</summary>
    public void StartOver() => used = 0;
}
