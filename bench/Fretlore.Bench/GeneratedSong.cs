using System.Text;

namespace Fretlore.Bench;

/// <summary>The sheet of a song as long as asked for, with two parts, that uses most of the language in each stretch of 24 bars.</summary>
/// <remarks>Every section has riffs of its own, so that the text grows with the bars. The same bars give the same text.</remarks>
internal static class GeneratedSong
{
    private const int BarsOfASection = 8;

    private const string Head = """
        title   Long Measure
        artist  The Yardsticks
        credits Words and music by The Yardsticks
        rights  For measuring only.
        meter   4/4
        tempo   Q = 120
        key     E minor

        part rhythm "Rhythm guitar"
          tuning A1 E2 A2 D3 G3 B3 E4
          sound  driven

        part lead "Lead guitar"
          tuning E2 A2 D3 G3 B3 E4
          sound  singing

        shape low  [7 7 7 9 . . .]
        shape ring [0 0 7 5 5 0 0]
        shape em   [0 2 2 0 0 0]
        shape c    [. 3 2 0 1 0]


        """;

    /// <summary>Writes the sheet.</summary>
    /// <param name="bars">A multiple of 8.</param>
    public static string Sheet(int bars)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(bars % BarsOfASection, 0);
        var text = new StringBuilder(Head);
        var lesson = new StringBuilder("lesson\n  budget 20:00\n");
        for (var section = 0; section < bars / BarsOfASection; section++)
        {
            var shift = section / 3 % 4;
            switch (section % 3)
            {
                case 0: Gallop(text, section, shift); break;
                case 1: Ringing(text, section, shift); break;
                default: Runs(text, section, shift); break;
            }
            if (section < 12) lesson.Append($"  step \"Step {section + 1}\" teach r{section} at 60% 80% 100%\n");
        }
        return text.Append(lesson).ToString();
    }

    private static void Gallop(StringBuilder text, int n, int s) => text.Append($$"""
        -- Section {{n + 1}}: a gallop with a variation, bends over it.
        riff r{{n}}
          @765 ESS pm{ 0 0 0 } E {{7 + s}} {{7 + s}} ESS pm{ 0 0 0 } Q {{8 + s}}! |
          ESS pm{ 0 0 0 } E {{8 + s}} {{7 + s}} @6 S {{3 + s}},{{5 + s}},{{3 + s}} 0 @765 Q {{5 + s}} |
          E pm{ 0 0 } Q #low E pm{ 0 0 } Q {{3 + s}} |
          pm{ E 0 0 S 0 0 0 0 } @6 Q {{5 + s}};{{7 + s}} |

        riff r{{n}}.turn = r{{n}} with last bar:
          ESS pm{ 0 0 0 } E {{8 + s}} {{7 + s}} H #low |

        riff l{{n}}
          @2 Q {{15 + s}}+ E =- {{13 + s}} S @1 {{12 + s}},{{15 + s}},{{12 + s}} {{15 + s}}@2 @2 Q {{13 + s}}v |
          E:3 @3 {{12 + s}},{{14 + s}} @2 {{12 + s}},{{13 + s}},{{15 + s}} @1 {{12 + s}} H {{15 + s}}+v |
          Q =- E {{12 + s}} {{15 + s}} H {{17 + s}}+wh |
          @2 E {{15 + s}} {{13 + s}} @3 {{15 + s}} {{14 + s}} g{{12 + s}},{{14 + s}} {{12 + s}} Q {{10 + s}}v |

        section Gallop {{n + 1}}
          rhythm  r{{n}}, r{{n}}.turn
          lead    l{{n}} times 2


        """);

    private static void Ringing(StringBuilder text, int n, int s) => text.Append($$"""
        -- Section {{n + 1}}: a drone with ringing shapes, slides and harmonics over it.
        riff r{{n}}
          drone{ @7 W 0 } @54 Q. [{{7 + s}} {{9 + s}}] [{{9 + s}} {{10 + s}}] Q [{{7 + s}} {{9 + s}}] |
          drone{ @7 W 0 } @54 Q. [{{5 + s}} {{7 + s}}] [{{7 + s}} {{9 + s}}] Q [{{5 + s}} {{7 + s}}] |
          @765 let{ Q. #ring E #ring H #ring } |
          let{ H #ring } Q 0m ESS pm{ 0 0 0 } |

        riff l{{n}}
          @3 H 12* @2 12* |
          @3 E lo;{{12 + s}} {{14 + s}} @2 Q {{10 + s}}+h E =- {{10 + s}} @3 Q {{14 + s}}v |
          @4 Q {{7 + s}}:Y {{9 + s}}:Y @3 E {{7 + s}};{{9 + s}} Q {{9 + s}};lo |
          @6-1 du{ E #em #em #c #c } H #em |

        section Ringing {{n + 1}}
          rhythm  r{{n}} times 2
          lead    rest 4 | l{{n}}


        """);

    private static void Runs(StringBuilder text, int n, int s) => text.Append($$"""
        -- Section {{n + 1}}: two bars with two endings, tapping and a run in five over it.
        riff r{{n}}
          times 2{ @765 Q {{3 + s}} E pm{ 0 0 } Q {{5 + s}} {{7 + s}} | on 1{ H. {{5 + s}} Q R | } on 2{ W {{3 + s}}v | } }

        riff l{{n}}
          @1 E:3 t{{17 + s}},{{10 + s}},{{13 + s}} t{{17 + s}},{{10 + s}},{{13 + s}} t{{18 + s}},{{10 + s}},{{13 + s}} t{{18 + s}},{{10 + s}},{{13 + s}} |
          S:5/4 @2 {{10 + s}},{{11 + s}},{{13 + s}},{{11 + s}},{{10 + s}} Q {{13 + s}}+v S @3 {{14 + s}} x x {{12 + s}} E {{10 + s}}? {{12 + s}}' |
          pick #em{ E 5 3 2 1 2 3 4 3 } |
          @6-1 Q roll#em Q #c bass{ @6 H 0 } H roll-down#c |

        section Runs {{n + 1}}
          key E {{(s % 2 == 0 ? "minor" : "phrygian")}}
          rhythm  r{{n}} times 2
          lead    l{{n}} times 2


        """);
}
