using System.Text;

namespace Fretlore.Workspace.Sheets;

/// <summary>The sheet that <c>fretlore new</c> writes: a short song that works, with comments that explain it.</summary>
public static class StarterSheet
{
    /// <summary>The sheet for a file's name without extension, whose words become the title.</summary>
    public static string For(string name) => Text.ReplaceLineEndings("\n").Replace("{title}", TitleOf(name), StringComparison.Ordinal);

    /// <summary>For example <c>Salt Furnace</c> for <c>salt-furnace</c>.</summary>
    internal static string TitleOf(string name)
    {
        var title = new StringBuilder();
        var startsWord = true;
        foreach (var c in name)
        {
            if (!char.IsLetterOrDigit(c) && c != '\'')
            {
                startsWord = true;
                continue;
            }
            if (startsWord && title.Length > 0) title.Append(' ');
            title.Append(startsWord ? char.ToUpperInvariant(c) : c);
            startsWord = false;
        }
        return title.Length == 0 ? "Untitled" : title.ToString();
    }

    private const string Text = """
        title   {title}
        artist  Your name
        tuning  E2 A2 D3 G3 B3 E4  -- open strings, low to high
        meter   4/4
        tempo   Q = 100  -- Q is a quarter note
        key     E minor

        part guitar "Guitar"

        -- A shape: a fret for each string from low to high, a dot where a string is not sounded.
        shape home [0 2 2 0 0 0]

        -- UPPER CASE IS TIME: W H Q E S are whole, half, quarter, eighth and 16th; R is a rest.
        -- @ IS WHERE: @6 is the lowest string, @1 the highest. DIGITS ARE FRETS.
        -- A blank: picked. A comma: hammered or pulled. A semicolon: glided. pm{ } is palm-muted.
        riff main
          @6 E pm{ 0 0 } Q 3 E 5,7 Q 5 |
          @6 E pm{ 0 0 } Q 3 H #home |

        -- The same riff with another last bar.
        riff main.turn = main with last bar:
          @5 Q 2 0 @6 H 0v |

        section Intro
          guitar  main times 3, main.turn

        section Verse
          guitar  @2 Q 0 3 H 5+ | @2 Q 5 3 H 0 | main.turn

        lesson
          budget 3:00
          step "The riff"  teach main       at 60% 80% 100%
          step "The turn"  teach main.turn  at 80% 100%

        """;
}
