namespace Fretlore.Engraving.Layout.Systems;

/// <summary>Signs of one kind that stand on one line above or below a row, as near to it as its ink allows.</summary>
internal sealed class AlignedRow(Pen pen)
{
    private readonly List<(double Left, double Right, Action<double> Draw)> pieces = [];

    public bool IsEmpty => pieces.Count == 0;

    /// <param name="left">Where the sign's ink begins.</param>
    /// <param name="right">Where it ends.</param>
    /// <param name="draw">Draws it, given its baseline.</param>
    public void Add(double left, double right, Action<double> draw) => pieces.Add((left, right, draw));

    /// <summary>Whether a sign would stand clear of all others of this row.</summary>
    public bool HasRoom(double left, double right) => !pieces.Any(p => p.Left < right + HouseStyle.ColumnGap && left < p.Right + HouseStyle.ColumnGap);

    /// <summary>Draws all signs with their baseline above everything that stands under them.</summary>
    /// <param name="descent">How far the signs reach below their baseline.</param>
    /// <param name="start">The least distance above the row's origin.</param>
    /// <param name="clear">White kept beside each sign too, so that it stands over its neighbours rather than among them.</param>
    public void DrawAbove(double descent, double start, double clear = 0)
    {
        if (IsEmpty) return;
        var y = -start;
        foreach (var (left, right, _) in pieces) y = Math.Min(y, pen.Skyline.Top(left - clear, right + clear) - HouseStyle.SkylineGap - descent);
        Draw(y);
    }

    /// <param name="ascent">How far the signs reach above their baseline.</param>
    /// <param name="start">The least distance below the row's origin.</param>
    public void DrawBelow(double ascent, double start)
    {
        if (IsEmpty) return;
        var y = start;
        foreach (var (left, right, _) in pieces) y = Math.Max(y, pen.Skyline.Bottom(left, right) + HouseStyle.SkylineGap + ascent);
        Draw(y);
    }

    private void Draw(double y)
    {
        foreach (var (_, _, draw) in pieces) draw(y);
        pieces.Clear();
    }
}
