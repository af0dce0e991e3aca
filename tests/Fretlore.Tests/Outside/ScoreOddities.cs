namespace Fretlore.Tests.Outside;

/// <summary>Bars of the real scores where several notes are printed otherwise than we spell them, and which side is right.</summary>
/// <remarks>Bar numbers count written bars from 1. Single notes that differ elsewhere are mostly chromatic steps whose goal comes in another voice.</remarks>
internal static class ScoreOddities
{
    private const string DSharp =
        "The composer goes from B major to D# major, with F double sharp and B sharp, within a song in E minor; Eb major sounds the same and is read more easily.";

    private const string TwoSides = "The voice is printed in flats (Db, Fb) and the piano below it in sharps (C#, E) at the same time; we spell both alike.";

    public static readonly IReadOnlyDictionary<(string Score, int Bar), string> Reasons = new Dictionary<(string, int), string>
    {
        [("lc5904752.mxl", 16)] = "The bars before are printed in flats and the next has six, but this one dominant is printed as C#7; Db7, which we say, belongs to both sides.",
        [("lc5904752.mxl", 30)] = "Six flats are signed and the chord is A7 with a ninth, printed A C# G B E; we keep it in flats from C# on. The score is right.",
        [("lc5904752.mxl", 31)] = "The voice is printed in sharps (C# A# G# E#) over the piano's Db and Ab of the same chord; we spell both alike.",
        [("lc5904752.mxl", 55)] = "The voice holds Gb over the piano's D F# A; we spell both alike.",
        [("lc6258930.mxl", 19)] = DSharp,
        [("lc6258930.mxl", 20)] = DSharp,
        [("lc6447825.mxl", 18)] = "G#m over D# and Abm with Fb in the voice are printed at the same time; we spell both alike.",
        [("lc6447825.mxl", 38)] = "G#m over D# and Abm with Fb in the voice are printed at the same time; we spell both alike.",
        [("lc6447825.mxl", 39)] = TwoSides,
        [("lc6447825.mxl", 40)] = TwoSides,
        [("lc6568070.mxl", 61)] = "The first bar back in flats after a passage in sharps: we turn a bar later. The score is right.",
        [("lc6568070.mxl", 62)] = "The second bar back in flats: see the bar before.",
        [("lc6481941.mxl", 72)] = "Cb Db Fb Ab after flats; we take up C# minor for it. The score is right.",
        [("lc6652787.mxl", 34)] = "A diminished chord with Bbb in the voice and A beside it in the piano; we write A for both.",
    };
}
