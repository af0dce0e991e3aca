using Fretlore.Music;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>What the accidentals printed so far in a bar, and the key signature, say about each staff position.</summary>
/// <remarks>An accidental holds for its own octave until the bar line (common practice).</remarks>
internal sealed class AccidentalMemory
{
    private readonly Dictionary<int, int> inBar = [];
    private readonly Dictionary<int, int> barBefore = [];
    private readonly int[] signature = new int[7];

    /// <summary>A bar line: forgets the bar and takes up its key signature.</summary>
    /// <param name="fifths">Sharps, or flats when negative.</param>
    public void StartBar(int fifths)
    {
        barBefore.Clear();
        foreach (var (position, alteration) in inBar) barBefore[position] = alteration;
        inBar.Clear();
        Array.Clear(signature);
        for (var i = 0; i < Math.Min(Math.Abs(fifths), 7); i++)
        {
            // Sharps come in the order F C G D A E B, flats the other way round.
            var name = NoteName.FromFifths(fifths > 0 ? -1 + i : 5 - i);
            signature[(int)name.Step] = Math.Sign(fifths);
        }
    }

    /// <summary>A courtesy: what to print where nothing need be, because the bar before had the note otherwise; null for nothing.</summary>
    /// <param name="pitch">The written pitch, for which no accidental is due.</param>
    public int? Remind(Pitch pitch)
    {
        if (inBar.ContainsKey(pitch.DiatonicNumber) || !barBefore.TryGetValue(pitch.DiatonicNumber, out var before) || before == pitch.Name.Alteration) return null;
        return inBar[pitch.DiatonicNumber] = pitch.Name.Alteration;
    }

    /// <summary>The alteration to print before a note, or null when it is understood.</summary>
    /// <param name="pitch">The written pitch.</param>
    /// <param name="tied">Whether it is tied from a note before, which needs no accidental and says nothing about later ones.</param>
    public int? Print(Pitch pitch, bool tied)
    {
        var understood = inBar.TryGetValue(pitch.DiatonicNumber, out var alteration) ? alteration : signature[(int)pitch.Name.Step];
        if (tied || understood == pitch.Name.Alteration) return null;
        inBar[pitch.DiatonicNumber] = pitch.Name.Alteration;
        return pitch.Name.Alteration;
    }
}
