namespace Fretlore.Tests.Outside;

/// <summary>What the chord dataset's names mean, and where we differ from it for a reason.</summary>
internal static class ChordDatasetExceptions
{
    /// <summary>Semitones above the root that must sound, and those that may, by the dataset's suffix (common practice).</summary>
    public static IReadOnlyDictionary<string, (int[] Needed, int[] Optional)> Formulas { get; } = new Dictionary<string, (int[], int[])>
    {
        ["major"] = ([0, 4], [7]),
        ["minor"] = ([0, 3], [7]),
        ["dim"] = ([0, 3, 6], []),
        ["dim7"] = ([0, 3, 6, 9], []),
        ["sus2"] = ([0, 2, 7], []),
        ["sus4"] = ([0, 5, 7], []),
        ["7sus4"] = ([0, 5, 10], [7]),
        ["7sg"] = ([0, 4, 10], [7]),
        ["alt"] = ([0, 4, 6], [7]),
        ["aug"] = ([0, 4, 8], []),
        ["6"] = ([0, 4, 9], [7]),
        ["69"] = ([0, 2, 4, 9], [7]),
        ["7"] = ([0, 4, 10], [7]),
        ["7b5"] = ([0, 4, 6, 10], [7]),
        ["aug7"] = ([0, 4, 8, 10], []),
        ["9"] = ([2, 4, 10], [0, 7]),
        ["9b5"] = ([2, 4, 6, 10], [0]),
        ["aug9"] = ([2, 4, 8, 10], [0]),
        ["7b9"] = ([1, 4, 10], [0, 7]),
        ["7#9"] = ([3, 4, 10], [0, 2, 7]),
        ["11"] = ([5, 10], [0, 2, 4, 7]),
        ["9#11"] = ([4, 6, 10], [0, 2, 7]),
        ["13"] = ([4, 9, 10], [0, 2, 5, 7]),
        ["maj7"] = ([0, 4, 11], [7]),
        ["maj7b5"] = ([0, 4, 6, 11], [7]),
        ["maj7#5"] = ([0, 4, 8, 11], []),
        ["maj9"] = ([2, 4, 11], [0, 7]),
        ["maj11"] = ([4, 5, 11], [0, 2, 7]),
        ["maj13"] = ([4, 9, 11], [0, 2, 5, 7]),
        ["m6"] = ([0, 3, 9], [7]),
        ["m69"] = ([0, 2, 3, 9], [7]),
        ["m7"] = ([0, 3, 10], [7]),
        ["m7b5"] = ([0, 3, 6, 10], []),
        ["m9"] = ([2, 3, 10], [0, 7]),
        ["m11"] = ([3, 5, 10], [0, 2, 7]),
        ["mmaj7"] = ([0, 3, 11], [2, 7]),
        ["mmaj7b5"] = ([0, 3, 6, 11], []),
        ["mmaj9"] = ([2, 3, 11], [0, 7]),
        ["mmaj11"] = ([3, 5, 11], [0, 2, 7]),
        ["add9"] = ([0, 2, 4], [7]),
        ["madd9"] = ([0, 2, 3], [7]),
    };

    /// <summary>By suffix, intervals above the bass, and the bass above the dataset's root: which side is right, and why.</summary>
    public static IReadOnlyDictionary<string, string> Reasons { get; } = new Dictionary<string, string>
    {
        ["maj13 {0 4 5 9 11} over 0"] =
            "Ours: F A C E with B is a whole Fmaj7#11 over C; as Cmaj13 it lacks the fifth and the ninth and has an eleventh beside its third.",
        ["maj13 {0 2 3 7 8} over 9"] = "Ours: the same chord over another of its notes; Bmaj7#11 is whole, F#maj13 is not.",
        ["13 {0 2 3 5 9 10} over 7"] =
            "Either: over G these are Gm13 without its fifth; C13 with an eleventh beside its third, over its fifth, is our second name.",
        ["11 {0 3 5 9 10} over 7"] = "Either: as above without the ninth; B7add11 over its fifth is our second name.",
        ["11 {0 2 3 5 8 10} over 2"] = "Neither is sure: six of seven notes of one scale; the dataset's bass is the ninth, which we never take for a chord's own bass.",
        ["aug9 {0 4 6 8 10} over 4"] = "Either: five notes of a whole-tone scale; the lowest is as good a root as any, and the dataset's root is our second name.",
        ["9b5 {0 4 6 8 10} over 6"] = "Either: the same five notes of a whole-tone scale.",
        ["m9 {0 3 7 8} over 7"] = "Ours without context: Ebm9 without its root is a whole F#maj7 over its third; the rootless name is our third.",
        ["69 {0 2 5 7 10} over 2"] = "Ours: over F# these five notes are a whole F#9sus4; E6/9 over its ninth is the same set.",
        ["7b9 {0 3 6 9 11} over 1"] = "The dataset's, where a bass line leads to it: Ab7 over A, our second name; alone it is Adim7 with a major seventh.",
    };
}
