namespace Fretlore.Hands.Placing;

/// <summary>One way to play notes that are joined on a string.</summary>
/// <param name="String">The string's number; 0 where they are left out.</param>
/// <param name="Places">One for each note; empty where they are left out.</param>
/// <param name="Cost">What it costs before hands are looked at.</param>
internal sealed record PlaceCandidate(int String, NotePlace[] Places, double Cost)
{
    public bool IsLeftOut => String == 0;
}

/// <summary>Notes joined on one string, and the ways to play them.</summary>
internal sealed class PlaceChain(int[] notes, double end)
{
    /// <summary>Indexes of the notes, in order.</summary>
    public int[] Notes { get; } = notes;

    /// <summary>Until when, in seconds, the string is taken.</summary>
    public double End { get; } = end;

    /// <summary>The cheapest first.</summary>
    public PlaceCandidate[] Candidates { get; set; } = [];
}
