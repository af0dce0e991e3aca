namespace Fretlore.Tests.Outside;

/// <summary>Every kind of position of the chord dataset to which we give another name first, or whose notes are not its name: which side is right, and why.</summary>
internal static class ChordDatasetVerdicts
{
    /// <summary>Whose name is right.</summary>
    public enum Side
    {
        Ours,
        Dataset,
        Either,
        Neither,

        /// <summary>The position does not play the chord it is listed under.</summary>
        Mistake,
    }

    /// <param name="Ours">Our first name when the dataset's root is C.</param>
    /// <param name="Side">Who is right.</param>
    /// <param name="Why">The reason, told on C.</param>
    public sealed record Verdict(string Ours, Side Side, string Why);

    /// <summary>By the dataset's suffix, the semitones above its root and the bass above its root; a slash chord's bass is the bass that sounds.</summary>
    public static IReadOnlyDictionary<string, Verdict> All { get; } = new Dictionary<string, Verdict>
    {
        ["/… {0 4 7 8} over 8"] = new("Abmaj7#5", Side.Either, "Four notes with a name of their own; C/Ab says the same as a triad over a bass and is our second name."),
        ["/… {0 4 7 9} over 9"] = new("Am7", Side.Ours, "A minor seventh chord in root position; C/A is our second name."),
        ["/… {0 1 4 7} over 1"] = new("C#dim(maj7)", Side.Either, "Where a bass line leads to it, a C triad over C#, our second name; alone it is the diminished chord with a major seventh."),
        ["m/… {0 3 7 9} over 9"] = new("Am7b5", Side.Ours, "A half-diminished chord in root position; Cm/A is our second name."),
        ["m/… {0 3 7 8} over 8"] = new("Abmaj7", Side.Ours, "A major seventh chord in root position; Cm/Ab is our second name."),
        ["11 {0 1 4 5 7 10} over 1"] = new("Bbm6/9#11/Db", Side.Mistake, "A Db sounds in the bass, and no C11 has one."),
        ["11 {0 2 4 5 7 10} over 2"] = new("Gm13/D", Side.Neither, "Six of seven notes of one scale over its second: no name tells them from their neighbours."),
        ["11 {0 4 5 7 10} over 7"] = new("Gm13", Side.Either, "Over G a minor thirteenth chord without its fifth and ninth; C7add11 over its fifth is our second name."),
        ["13 {0 4 5 7 9 10} over 7"] = new("Gm13", Side.Either, "Over G a minor thirteenth chord without its fifth; C13 with an eleventh beside its third, over its fifth, is our second name."),
        ["13 {0 4 5 9 10} over 0"] = new("Fmaj7add11/C", Side.Either, "A whole Fmaj7 with its fifth in the bass and an eleventh; C13 lacks its fifth and has an eleventh beside its third, and is our second name."),
        ["69 {0 2 4 7 9} over 2"] = new("D9sus4", Side.Ours, "D A C E G: a whole D9sus4 in root position; C6/9 over its ninth is our third name."),
        ["69 {0 2 4 7 9} over 9"] = new("Am7add11", Side.Ours, "A whole Am7 with an eleventh, in root position; C6/9 over its sixth is our third name."),
        ["6 {0 3 8 11} over 0"] = new("G#m/C", Side.Mistake, "These are the notes of G#m over C; a C6 has an E, a G and an A."),
        ["6 {0 4 7 9} over 4"] = new("Am7/E", Side.Either, "C6 and Am7 are the same notes, and neither root is in the bass; C6/E is our second name."),
        ["6 {0 4 7 9} over 9"] = new("Am7", Side.Ours, "C6 and Am7 are the same notes, and A is in the bass."),
        ["6 {0 4 9} over 0"] = new("Am/C", Side.Either, "Three notes are a whole A minor triad; as a C6 they lack the fifth. C6 is our second name."),
        ["7b5 {0 4 6 10} over 10"] = new("F#7b5/A#", Side.Either, "Two seventh chords with a flat fifth, six semitones apart, have the same notes; neither root is in the bass."),
        ["7b5 {1 5 7 11} over 1"] = new("C#7b5", Side.Mistake, "The whole position is one fret too high."),
        ["7b9 {0 1 4 7 10} over 1"] = new("C#dim7addmaj7", Side.Dataset, "Where a bass line leads to it, C7 over C#, our second name; alone it is a diminished seventh chord with one note more."),
        ["7b9 {1 4 7 10} over 10"] = new("Bbdim7", Side.Ours, "Without its root nothing but a diminished seventh chord, which is named from its bass."),
        ["7sus4 {0 5 10} over 0"] = new("Fsus4/C", Side.Either, "Three notes a fourth apart: Fsus4, Bbsus2 and C7sus4 without its fifth; a whole chord comes first, C7sus4 is among the first three."),
        ["7sus4 {0 5 10} over 5"] = new("Fsus4", Side.Ours, "A whole Fsus4 in root position."),
        ["7sus4 {0 5 7 10} over 7"] = new("Gm7add11", Side.Either, "Over G a minor seventh chord with an eleventh and no fifth; C7sus4 over its fifth is our second name."),
        ["9#11 {3 6 10 11} over 11"] = new("Bmaj7", Side.Mistake, "The notes of Bmaj7: nothing of C9#11 but its sharp eleventh and seventh sounds."),
        ["9b5 {0 2 4 6 10} over 6"] = new("F#7#5#11", Side.Either, "Five notes of a whole-tone scale: the lowest is as good a root as any; C9b5 over its fifth is our third name."),
        ["9 {0 2 7 10} over 0"] = new("Gm/C", Side.Mistake, "A C9 has an E, and none sounds: a G minor triad over C."),
        ["add9 {1 2 5 10} over 10"] = new("Bbadd#9", Side.Mistake, "One finger is on the wrong fret: a Cadd9 has a C and an E."),
        ["aug9 {0 2 4 8 10} over 10"] = new("Bb9b5", Side.Either, "Five notes of a whole-tone scale: the lowest is as good a root as any; C9#5 over its seventh is our second name."),
        ["aug9 {0 2 4 8 10} over 4"] = new("E7#5#11", Side.Either, "Five notes of a whole-tone scale: the lowest is as good a root as any; C9#5 over its third is our second name."),
        ["aug9 {2 4 8 10} over 10"] = new("Bb7b5", Side.Ours, "Without a C: a whole Bb7b5 in root position."),
        ["aug {0 4 5 8} over 0"] = new("Fm(maj7)/C", Side.Mistake, "An F sounds, and no augmented triad has a fourth."),
        ["aug {0 4 8} over 4"] = new("Eaug", Side.Ours, "An augmented triad is named from its bass: each of its notes is a root."),
        ["aug {0 4 8} over 8"] = new("Abaug", Side.Ours, "An augmented triad is named from its bass: each of its notes is a root."),
        ["aug {0 5 10} over 0"] = new("Fsus4/C", Side.Mistake, "No augmented triad: C, F and Bb."),
        ["aug {0 5 7 10} over 7"] = new("Gm7add11", Side.Mistake, "No augmented triad: C, F, G and Bb."),
        ["dim7 {0 3 6 9} over 3"] = new("Ebdim7", Side.Ours, "A diminished seventh chord is named from its bass: each of its notes is a root."),
        ["dim7 {0 3 6 9} over 6"] = new("F#dim7", Side.Ours, "A diminished seventh chord is named from its bass: each of its notes is a root."),
        ["m6 {0 3 7 9} over 3"] = new("Am7b5/Eb", Side.Either, "Cm6 and Am7b5 are the same notes, and neither root is in the bass; Cm6/Eb is our second name."),
        ["m9 {0 2 3 7 10} over 3"] = new("Ebmaj13", Side.Either, "Over Eb a major seventh chord with a thirteenth; Cm9 over its third is our second name."),
        ["m9 {2 3 7 10} over 7"] = new("Ebmaj7/G", Side.Ours, "Without a C: a whole Ebmaj7 over its third."),
        ["madd9 {0 2 3 7} over 3"] = new("Ebmaj13", Side.Either, "Eb G C D is how many play an Ebmaj13; Cm(add9) over its third is our second name."),
        ["madd9 {1 3 4 8} over 1"] = new("C#madd9", Side.Mistake, "The whole position is one fret too high."),
        ["maj13 {0 4 5 9 11} over 0"] = new("Fmaj7#11/C", Side.Ours, "A whole Fmaj7 with its fifth in the bass and a sharp eleventh; as Cmaj13 it lacks fifth and ninth and has an eleventh beside its third."),
        ["maj13 {0 4 5 9 11} over 9"] = new("Fmaj7#11/A", Side.Ours, "A whole Fmaj7 over its third with a sharp eleventh; as Cmaj13 it lacks fifth and ninth and has an eleventh beside its third."),
        ["maj13 {0 4 9 11} over 9"] = new("Amadd9", Side.Ours, "A minor with a ninth, whole, in root position."),
        ["maj7b5 {0 1 4 6 8 11} over 8"] = new("Ab7#5#9add11", Side.Mistake, "A C# and a G# sound, and no Cmaj7b5 has them."),
        ["maj9 {2 4 7 11} over 11"] = new("Em7/B", Side.Ours, "Without a C: a whole Em7 over its fifth."),
        ["maj9 {2 4 7 11} over 7"] = new("G6", Side.Ours, "Without a C: a whole G6 in root position."),
        ["mmaj9 {2 3 7 11} over 7"] = new("Ebmaj7#5/G", Side.Ours, "Without a C: a whole Ebmaj7#5 over its third."),
        ["sus2 {0 2 7} over 2"] = new("Gsus4/D", Side.Either, "Csus2 and Gsus4 are the same notes, and neither root is in the bass."),
        ["sus2 {0 2 7} over 7"] = new("Gsus4", Side.Ours, "Csus2 and Gsus4 are the same notes, and G is in the bass."),
        ["/… {0 4 7 11} over 4"] = new("Cmaj7/E", Side.Mistake, "A B sounds too: not C/E but Cmaj7/E."),
        ["9 {0 2 4 7} over 4"] = new("Cadd9/E", Side.Mistake, "No Bb sounds: a Cadd9 over its third."),
        ["11 {0 4 6 7 10} over 0"] = new("C7#11", Side.Mistake, "An F# sounds in place of the F."),
        ["11 {0 2 4 6 10} over 0"] = new("C9b5", Side.Mistake, "An F# sounds in place of the F."),
        ["maj9 {0 1 4 11} over 0"] = new("Cmaj7b9", Side.Mistake, "One finger is a fret too low: Db in place of D."),
        ["mmaj11 {0 4 5 7} over 7"] = new("Cadd11/G", Side.Mistake, "A major third, and no seventh at all."),
        ["m69 {0 2 3 5 9 10} over 0"] = new("Cm13", Side.Mistake, "An F and a Bb sound as well: a Cm13."),
        ["m11 {0 4 5 11} over 0"] = new("Cmaj7add11", Side.Mistake, "A major third and a major seventh."),
        ["dim {0 2 3 5} over 0"] = new("Cm(add9,11)", Side.Mistake, "No Gb sounds: C minor with a D and an F."),
    };
}
