using Fretlore.Engraving.Drawing;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>Letters above a row that say how a note is made: H hammered, P pulled off, T tapped, P.H. and A.H. for harmonics (common practice).</summary>
internal sealed class HandLetters(Pen pen)
{
    private const double Gap = 0.2;

    private readonly List<(string Letters, double X)> letters = [];

    /// <summary>The letters a note has of itself; those of a slur stand between its two notes.</summary>
    /// <param name="note">The note.</param>
    /// <param name="middle">The middle of its number or head.</param>
    public void Add(Note note, double middle)
    {
        if (note.Attack == Attack.Tap) Add("T", middle);
        if (note.Attack == Attack.HammerFromNowhere) Add("H", middle);
        if (note.Harmonic?.Kind == HarmonicKind.Pinch) Add("P.H.", middle);
        if (note.Harmonic?.Kind == HarmonicKind.Touched) Add("A.H.", middle);
    }

    /// <summary>The letter of a move without the pick, between where it starts and ends.</summary>
    public void AddMove(Attack attack, double from, double to) => Add(attack == Attack.HammerOn ? "H" : "P", (from + to) / 2);

    /// <summary>Puts the letters on a line, and on a second one where they would touch.</summary>
    public void Place(StackedRows row)
    {
        foreach (var (text, x) in letters)
        {
            var half = WidthOf(text) / 2;
            row.Add(x - half, x + half, y => pen.Text(text, x, y, HouseStyle.SmallSize, Face.Sans, Anchor.Middle));
        }
    }

    // Letters for one place are joined; the same letter for several notes of a chord stands once.
    private void Add(string letter, double x)
    {
        var at = letters.FindIndex(l => Math.Abs(l.X - x) < (WidthOf(l.Letters) + WidthOf(letter)) / 2 + Gap);
        if (at < 0) letters.Add((letter, x));
        else if (!letters[at].Letters.Split('/').Contains(letter)) letters[at] = (letters[at].Letters + "/" + letter, letters[at].X);
    }

    private double WidthOf(string text) => pen.Ink.TextWidth(text, Face.Sans, HouseStyle.SmallSize);
}
