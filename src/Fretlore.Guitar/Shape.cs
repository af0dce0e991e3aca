using Fretlore.Music;

namespace Fretlore.Guitar;

/// <summary>One fret, or none, for each string, sounded together; from the low string to the high one.</summary>
/// <param name="LowToHigh">A fret per string, as written under the capo; null where the string is not sounded.</param>
public sealed record Shape(ValueList<Fret?> LowToHigh)
{
    /// <summary>The heights that sound on a neck with as many strings, low string first.</summary>
    public IEnumerable<(StringNumber String, Fret Fret, Height Height)> On(Neck neck)
    {
        for (var i = 0; i < LowToHigh.Count; i++)
        {
            if (LowToHigh[i] is not { } fret) continue;
            var number = new StringNumber(LowToHigh.Count - i);
            yield return (number, fret, neck.Sounding(number, fret));
        }
    }

    /// <summary>For example <c>x 3 2 0 1 0</c>.</summary>
    public override string ToString() => string.Join(' ', LowToHigh.Select(f => f?.ToString() ?? "x"));
}
