namespace Fretlore.Tests.RoadMaps;

/// <summary>Road maps of many kinds, all invented: the music each stands in, and its rules.</summary>
internal sealed record VariedMap(string Name, string Header, string Riffs, string Rules, int Bars, string Lead = "", string Bed = "bed times 2")
{
    public string Sheet => $"""
        title   {Name}
        {Header}
        part lead "Lead guitar"
        part bed  "Rhythm guitar"
        {Riffs}
        roadmap way
          {Rules.ReplaceLineEndings("\n  ")}

        section Solo
          lead  {(Lead.Length > 0 ? Lead : $"roadmap way {Bars} bars")}
          {(Bed.Length > 0 ? "bed   " + Bed : "")}
        """.ReplaceLineEndings("\n") + "\n";

    public override string ToString() => Name;
}

/// <summary>Twenty of them: tunings of four, six and seven strings, metres of 3 to 12, slow and fast, one bar's box and the whole neck.</summary>
internal static class VariedMaps
{
    private const string Standard = "tuning  E2 A2 D3 G3 B3 E4";

    private const string AMinorBed = """
        shape am [. 0 2 2 1 0]
        shape f  [1 3 3 2 1 1]
        shape c  [. 3 2 0 1 0]
        shape g  [3 2 0 0 0 3]
        riff bed
          @6-1 W #am | #f | #c | #g |
        """;

    public static VariedMap[] All { get; } =
    [
        new("Falling through the slate", "tuning  D2 A2 D3 G3 B3 E4\ntempo   Q = 92\nkey     D minor", """
            shape dm [0 0 0 2 3 1]
            shape bb [. 1 3 3 3 .]
            shape c  [. 3 2 0 1 0]
            riff bed
              @6-1 W #dm | #bb | #c | #dm |
            riff dive
              @2 E 15 13 @3 15 14 g12,14 12 Q 10v |
            riff talon
              @3 S 10,12,10 @4 12 @3 Q 10 E 12+ 10 @4 Q 12v |
            """, """
            fixed   dive in bar 1
            scale   D minor pentatonic on strings 1-4
            from    fret 15 to fret 5
            contour falling in bars 5-8
            density E to S
            rhythm  EE, ESS, SSE, Q.E, E:3, Q in bars 2-7
            may use talon in bars 3-6
            aim     A by a half-step bend of G# on beat 3 in bar 4
            aim     D in bar 8
            avoid   Eb, open strings, leaps over an octave
            end     D on string 3 by a slide from below, held
            """, 8),
        new("Up the hill", $"{Standard}\ntempo   Q = 104\nkey     A dorian", AMinorBed.Replace("#f", "#d", StringComparison.Ordinal).Replace("shape f  [1 3 3 2 1 1]", "shape d  [. . 0 2 3 2]", StringComparison.Ordinal), """
            scale   A dorian
            strings 1-3
            from    fret 5 to fret 14
            contour rising
            density Q to E
            end     A, held
            """, 8),
        new("One box", $"{Standard}\ntempo   Q = 76\nfeel    swing\nkey     A minor", AMinorBed, """
            scale   A minor pentatonic
            strings 1-3
            frets   5-8
            aim     A in bar 2
            aim     E by a whole-step bend in bar 6
            avoid   slides
            end     A
            """, 8),
        new("Only the chords", $"{Standard}\ntempo   Q = 88\nkey     A minor", AMinorBed, """
            roles   root, third, fifth, seventh
            strings 1-4
            frets   7-12
            density Q to E
            """, 8),
        new("Slow three", $"{Standard}\nmeter   3/4\ntempo   Q = 66\nkey     G major", """
            shape g [3 2 0 0 0 3]
            shape c [. 3 2 0 1 0]
            shape d [. . 0 2 3 2]
            riff bed
              @6-1 H. #g | #c | #d | #g |
            riff sigh
              @2 Q 8 E 7 5 Q 3v |
            """, """
            scale   G major
            strings 1-3
            frets   2-8
            density H to E
            roles   root, third, fifth in bars 4, 8
            may use sigh
            contour arch
            end     G from a step above, held
            """, 8),
        new("Six to a bar", "tuning  D2 A2 D3 G3 A3 D4\nmeter   6/8\ntempo   Q. = 60\nkey     D mixolydian", """
            shape home [0 0 0 2 0 0]
            shape fen  [. 3 2 0 0 0]
            riff bed
              @6-1 H. #home | #fen | #home | #fen |
            riff call
              @1 Q 4 E 2 Q. 0 | @2 Q 5 E 3 Q. 0 |
            """, """
            fixed   call in bar 1
            fixed   call in bar 5
            scale   D mixolydian
            strings 1-3
            frets   0-7
            density Q to S
            rhythm  EEE, QE, Q., ESSE
            contour wave in bars 2-4
            aim     A on beat 2 in bar 4
            end     D
            """, 8),
        new("Seven to a bar", $"{Standard}\nmeter   7/8 2+2+3\ntempo   Q = 120\nkey     E phrygian", """
            shape e [0 2 2 0 0 0]
            shape f [1 3 3 2 1 1]
            riff bed
              @6-1 Q #e Q #e Q. #f | Q #e Q #f Q. #e | Q #e Q #e Q. #f | Q #f Q #f Q. #e |
            """, """
            scale   E phrygian
            strings 1-4
            frets   7-12
            density Q to S
            aim     B in bars 2, 6
            avoid   leaps over a fifth
            end     E, held
            """, 8),
        new("Hammered home", $"{Standard}\ntempo   Q = 96\nkey     A minor", AMinorBed.Replace("#g", "#e", StringComparison.Ordinal).Replace("shape g  [3 2 0 0 0 3]", "shape e  [0 2 2 1 0 0]", StringComparison.Ordinal), """
            scale   A harmonic minor
            strings 1-4
            frets   4-9
            aim     C by a hammer-on in bar 3
            aim     G# by a pull-off from A in bar 4
            aim     E from a half step below in bar 6
            density E to S
            end     A by a hammer-on from G#
            """, 8),
        new("Let it ring", "tuning  D2 A2 D3 G3 A3 D4\ntempo   Q = 72\nkey     D minor", """
            shape low [0 0 0 0 0 0]
            shape up  [. 3 3 2 0 0]
            riff bed
              @6-1 W #low | #up | #low | #up |
            """, """
            scale   D dorian
            frets   0-5
            density Q to E
            avoid   bends
            end     D, held
            """, 6, Bed: "bed | @6-1 W #low | #up |"),
        new("No note twice", $"{Standard}\ntempo   Q = 132\nkey     A minor", AMinorBed, """
            scale   A minor
            strings 1-4
            frets   8-13
            contour wave
            density Q to E
            avoid   repeats, leaps over a fifth, bends, slides
            """, 8),
        new("Down and up again", $"{Standard}\ntempo   Q = 84\nkey     A minor", AMinorBed + """

            riff turn
              @3 E 9,7 @4 9 7 @3 Q 7 R |
            riff reach
              @2 S 8,10 E 8 @3 E 9 7 Q 9v R |
            """, """
            scale   A minor pentatonic
            strings 1-4
            frets   5-10
            contour valley
            density Q to S
            may use turn, reach in bars 2-7
            end     A
            """, 8),
        new("From door to door", $"{Standard}\ntempo   Q = 110\nkey     A minor", AMinorBed + """

            riff open-door
              @1 E 12 10 8 Q 5 E 8 Q 5v |
            riff close-door
              @2 E 5 8 10 8 @1 Q 5 R |
              @3 E 7 5 7 9 @2 H 10v |
            """, """
            fixed   open-door in bars 1, 5
            fixed   close-door in bars 7-8
            scale   A minor
            strings 1-3
            frets   5-12
            density Q to E
            aim     C in bar 4
            """, 8),
        new("Low seven", "tuning  B1 E2 A2 D3 G3 B3 E4\ntempo   Q = 90\nkey     B minor", """
            riff bed
              @76 Q [0 0] [0 0] H [3 3] | Q [0 0] [0 0] H [5 5] | Q [0 0] [0 0] H [3 3] | W [0 0] |
            riff stomp
              @7 ESS 0 0 0 3 0 0 5 0 0 3 0 0 | @7 ESS 0 0 0 3 0 0 H 0 |
            """, """
            fixed   stomp in last 2 bars
            scale   B minor pentatonic
            strings 5-7
            frets   0-7
            density E to S
            rhythm  ESS, EE, SSSS
            avoid   bends
            end     B
            """, 8),
        new("All in threes", $"{Standard}\ntempo   Q = 80\nkey     C lydian", """
            shape c [. 3 2 0 1 0]
            shape d [. . 0 2 3 2]
            riff bed
              @6-1 W #c | #d | #c | #d |
            """, """
            scale   C lydian
            strings 1-4
            frets   7-12
            rhythm  E:3, Q
            aim     F# in bar 6
            end     C
            """, 12, Bed: "bed times 3"),
        new("Twelve eighths", $"{Standard}\nmeter   12/8\ntempo   Q. = 58\nkey     E minor", """
            shape e  [0 2 2 0 0 0]
            shape a  [. 0 2 2 1 0]
            riff bed
              @6-1 W. #e | #e | #a | #e |
            """, """
            scale   E minor pentatonic
            strings 1-3
            frets   12-15
            density Q to S
            aim     E in bar 4
            end     E
            """, 8),
        new("Quick", $"{Standard}\ntempo   Q = 184\nkey     E minor", """
            riff bed
              @65 E [0 2] [0 2] [0 2] [0 2] H [3 5] | E [0 2] [0 2] [0 2] [0 2] H [5 7] | E [0 2] [0 2] [0 2] [0 2] H [3 5] | W [0 2] |
            """, """
            scale   E minor
            strings 1-3
            frets   12-17
            density E to S
            rhythm  EE, ESS, SSE, SSSS
            end     E, held
            """, 8),
        new("Four doors", $"{Standard}\ntempo   Q = 92\nkey     A minor", AMinorBed, """
            scale   A minor
            strings 1-4
            frets   5-9
            aim     C by a slide from below in bar 1
            aim     A from a step above in bar 2
            aim     E on string 2 in bar 3
            aim     D from C in bar 4
            aim     A by a slide from G in bar 6
            end     A by a half-step bend of G#
            """, 8),
        new("Standing still", $"{Standard}\ntempo   Q = 60\nkey     A minor", AMinorBed, """
            scale   A aeolian
            strings 2-3
            frets   5-10
            contour level
            density H to E
            """, 4, Bed: "bed"),
        new("Two keys", $"{Standard}\ntempo   Q = 100\nkey     A dorian", AMinorBed, """
            scale   A dorian in bars 1-8
            scale   C lydian in bars 9-16
            strings 1-4
            from    fret 5 to fret 12 in bars 1-8
            from    fret 12 to fret 3 in bars 9-16
            density Q to S
            contour arch in bars 1-8
            aim     E in bar 8
            end     E
            """, 16, Bed: "bed times 4"),
        new("Bass alone", "tuning  E1 A1 D2 G2\ncapo    2\ntempo   Q = 96\nkey     F# minor", "", """
            scale   F# minor pentatonic
            frets   0-5
            density Q to E
            avoid   bends, slides
            end     F#, held
            """, 8, Bed: ""),
    ];
}
