namespace Fretlore.Engraving.Layout.Systems;

/// <summary>Signs of one kind on one line above a row, or on further lines over it where they would touch each other.</summary>
internal sealed class StackedRows(Pen pen)
{
    private readonly List<AlignedRow> rows = [];

    /// <param name="left">Where the sign's ink begins.</param>
    /// <param name="right">Where it ends.</param>
    /// <param name="draw">Draws it, given its baseline.</param>
    public void Add(double left, double right, Action<double> draw)
    {
        var row = rows.Find(r => r.HasRoom(left, right));
        if (row is null) rows.Add(row = new AlignedRow(pen));
        row.Add(left, right, draw);
    }

    public bool IsEmpty => rows.Count == 0;

    /// <param name="descent">How far the signs reach below their baseline.</param>
    /// <param name="start">The least distance above the row's origin.</param>
    /// <param name="clear">White kept beside each sign too, so that it stands over its neighbours rather than among them.</param>
    public void DrawAbove(double descent, double start, double clear = 0)
    {
        foreach (var row in rows) row.DrawAbove(descent, start, clear);
    }
}
