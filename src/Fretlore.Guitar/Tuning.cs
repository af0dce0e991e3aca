using Fretlore.Music;

namespace Fretlore.Guitar;

/// <summary>The pitches of the open strings without capo, from the lowest-numbered-last string (low) to string 1 (high).</summary>
/// <param name="LowToHigh">One spelled pitch per string; the first is string N, the last is string 1.</param>
public sealed record Tuning(ValueList<Pitch> LowToHigh)
{
    public int StringCount => LowToHigh.Count;

    public Pitch this[StringNumber number] => LowToHigh[StringCount - number.Value];

    public bool Has(StringNumber number) => number.Value >= 1 && number.Value <= StringCount;

    /// <summary>Reads pitches between blanks, low to high, such as <c>E2 A2 D3 G3 B3 E4</c>.</summary>
    public static bool TryParse(string text, out Tuning tuning)
    {
        var pitches = new List<Pitch>();
        tuning = new Tuning([]);
        foreach (var word in text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        {
            if (!Pitch.TryParse(word, out var pitch)) return false;
            pitches.Add(pitch);
        }
        if (pitches.Count == 0) return false;
        tuning = new Tuning(pitches.ToValueList());
        return true;
    }

    /// <summary>The usual guitar tuning, E2 A2 D3 G3 B3 E4 (common practice).</summary>
    public static Tuning Standard => TryParse("E2 A2 D3 G3 B3 E4", out var tuning) ? tuning : throw new InvalidOperationException();

    public override string ToString() => string.Join(' ', LowToHigh);
}
