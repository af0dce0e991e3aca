namespace Fretlore.Tests.Syntax;

/// <summary>Valid sheets that together use every construct of the language.</summary>
internal static class SheetSamples
{
    public const string Furnace = """
        title   Salt Furnace
        artist  Breakwater Engine
        tuning  A1 E2 A2 D3 F#3 B3          -- low to high
        meter   4/4
        tempo   Q = 104
        key     A dorian
        scale-length 26.5 in

        part rhythm "Rhythm guitar"   sound driven
        part lead   "Lead guitar"     sound singing
          capo 2

        shape lift [7 7 7 9 . .]

        riff furnace
          @654 ESS pm{ 0 0 0 } 7 0m 0m E 10 0m Q 7 | E 0 8 S @5 4,6,4 0 E @654 8 7 Q @6 R |

        riff furnace.turn = furnace with bar 2:
          H #lift [8 8 8 10 . .] |

        riff tail
          meter 7/8 2+2+3
          @6-4 E 0 0 x5 x 5? 5! 5' ||

        riff cut = furnace without bar 1 with last bar: @6 W 0 |

        section Intro
          key D dorian
          rhythm  furnace times 3, furnace.turn
          lead    rest 8, again 2

        section Solo 2 like Intro
          rhythm  furnace as sounded times 4
          lead    @2 E 10 12 S @3 11,12,11 10@2 Q 13+v R | roadmap descent 6 bars

        roadmap descent
          scale   A dorian on strings 1-4
          from    fret 14   to fret 4
          density E to S
          aim     E by a half-step bend of D# in bar 6
          may use furnace.lick, ember-run

        lesson
          budget 6:00
          step "Main riff"      teach furnace          at 60% 80% 100%
          step "The turn"       teach furnace.turn     say "Watch the little finger."
          step "Solo road map"  teach descent

        """;

    /// <summary>Music of one riff with every sign there is.</summary>
    public const string EverySign = """
        title Signs
        tuning E2 A2 D3 G3 B3 E4

        riff signs
          upbeat{ @2 E 5 } (meter 7/8 2+2+3) (Q = 96) (key D dorian) (f) (chord Am(maj7)) "slowly"
          @3 Q. 4,6,4 ,8 t17,10,13 5;9 lo;15 15;lo hi;9;lo 5; 9 | E:3 7+ 7+h 7+q S:5/4 7+wh 7+w20c 7+20c +h15- 7+ww
          Q 17+v 17v+ 15+- +15- Q 15+ = E =- x x5 xm 5? 5! 5' 0m 12* 3*15 5*p g5,7 gd5 17:Y 7f3 17@2+v 7@54 |
          [7 7 9 0] [5 . 6 6 5 .] #lift roll[5 5] roll-down[5 5]! d#lift? u[x x =] dR
          pick #c{ E 52 3 2 1 2 3 5:7 R = 3 } du{ 5 5 } ddu{ 5 5 5 } d5 u5 d=
          pm{ 5 let{ 5 | 5 } } trem{ 5 } arm{ 5 } wah{ 5 } cresc{ 5 } dim{ 5 } by pima{ 5 }
          pm on 5 pm off bass{ @6 H 0 | 0 } drone{ @5 W 0 } top{ @1 Q 3 } ||
          rest rest 8 again again 2 -- a comment
          times 2{ @3 Q 5 5 | on 1{ 7 } on 2-3{ 8 } on 4,5{ 9 } } signs-2 as fretted times 3, signs-3

        """;
}
