using System.Collections.Immutable;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Model;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>The names left of the staves: in full at the first system, short after that, none when one part is shown.</summary>
internal sealed class PartNames
{
    /// <summary>Room for the bracket left of a system.</summary>
    public const double Bracket = 1.2;

    private const double Gap = 0.6;

    private readonly ImmutableArray<string[]> full;
    private readonly ImmutableArray<string> brief;

    public PartNames(Ink ink, ImmutableArray<StaffPlan> staves)
    {
        full = [.. staves.Select(s => s.Part.Title.Split(' ', StringSplitOptions.RemoveEmptyEntries))];
        brief = [.. staves.Select((_, i) => BriefOf(i))];
        if (staves.Length == 1)
        {
            FirstIndent = Indent = Bracket;
            return;
        }
        FirstIndent = Bracket + Gap + full.Max(words => words.Max(w => ink.TextWidth(w, Face.Serif, HouseStyle.WordSize)));
        Indent = Bracket + Gap + brief.Max(b => ink.TextWidth(b, Face.Serif, HouseStyle.SmallSize));
    }

    /// <summary>How far the first system begins right of the margin.</summary>
    public double FirstIndent { get; }

    public double Indent { get; }

    /// <param name="pen">Draws it.</param>
    /// <param name="staff">Index among the shown parts.</param>
    /// <param name="isFirst">Whether this is the song's first system.</param>
    /// <param name="left">The system's left line.</param>
    /// <param name="middle">The middle of the part's staff and tablature.</param>
    public void Draw(Pen pen, int staff, bool isFirst, double left, double middle)
    {
        if (full.Length == 1) return;
        var right = left - Bracket - Gap / 2;
        if (!isFirst)
        {
            pen.Text(brief[staff], right, middle + 0.5, HouseStyle.SmallSize, Face.Serif, Anchor.End);
            return;
        }
        const double LineHeight = HouseStyle.WordSize * 1.2;
        var y = middle - (full[staff].Length - 1) * LineHeight / 2 + 0.6;
        foreach (var word in full[staff])
        {
            pen.Text(word, right, y, HouseStyle.WordSize, Face.Serif, Anchor.End);
            y += LineHeight;
        }
    }

    // The first word, or its beginning; the next word's initial too where that would not tell two parts apart.
    private string BriefOf(int index)
    {
        var words = full[index];
        if (words.Length == 0) return "";
        var alone = full.Count(w => w.Length > 0 && w[0] == words[0]) == 1;
        var start = words[0].Length <= 5 ? words[0] : words[0][..3] + ".";
        return alone || words.Length == 1 ? start : start + " " + words[^1][..Math.Min(3, words[^1].Length)];
    }
}
