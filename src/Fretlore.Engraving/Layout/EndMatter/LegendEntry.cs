namespace Fretlore.Engraving.Layout.EndMatter;

/// <summary>A sign with what it tells the player to do.</summary>
/// <param name="Draw">Draws the sign, given the middle of its place and its baseline.</param>
/// <param name="Words">What it means.</param>
internal sealed record LegendEntry(Action<Pen, double, double> Draw, string Words);
