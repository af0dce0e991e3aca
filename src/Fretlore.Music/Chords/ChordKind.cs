using System.Text;

namespace Fretlore.Music.Chords;

/// <summary>What a chord is apart from its root: a family, the tensions on it and the tones left out.</summary>
/// <param name="Family">The frame.</param>
/// <param name="Tensions">Semitones above the root that sound and are not in the family.</param>
/// <param name="Omitted">Tones of the family that do not sound, semitones above the root.</param>
public readonly record struct ChordKind(ChordFamily Family, PitchClassSet Tensions = default, PitchClassSet Omitted = default)
{
    /// <summary>The spelled degree of a tone of this kind, within the octave for the family and compound for tensions.</summary>
    /// <param name="semitones">0 to 11 above the root.</param>
    public Interval DegreeOf(int semitones)
    {
        foreach (var degree in Family.Degrees)
        {
            if (degree.Semitones == semitones) return degree;
        }
        return semitones switch
        {
            1 => new Interval(8, 13),
            2 => new Interval(8, 14),
            3 => Family.Third == 4 ? new Interval(8, 15) : new Interval(2, 3),
            4 => new Interval(2, 4),
            5 => new Interval(10, 17),
            6 => new Interval(10, 18),
            7 => new Interval(4, 7),
            8 => new Interval(12, 20),
            9 => new Interval(12, 21),
            10 => new Interval(6, 10),
            _ => new Interval(6, 11),
        };
    }

    /// <summary>The spelled degrees that sound, from the root up.</summary>
    public ValueList<Interval> Degrees
    {
        get
        {
            var kind = this;
            var degrees = new List<Interval>();
            foreach (var degree in Family.Degrees)
            {
                if (!Omitted.Contains(degree.Semitones)) degrees.Add(degree);
            }
            foreach (var tension in Tensions) degrees.Add(kind.DegreeOf(tension));
            degrees.Sort((a, b) => a.Steps == b.Steps ? a.Semitones.CompareTo(b.Semitones) : a.Steps.CompareTo(b.Steps));
            return degrees.ToValueList();
        }
    }

    /// <summary>The symbol without root and bass; empty for a major triad.</summary>
    public string Symbol(ChordStyle style = ChordStyle.Letters)
    {
        var pattern = style == ChordStyle.Letters ? Family.Letters : Family.Signs;
        if (Tensions.IsEmpty && Omitted.IsEmpty && !Family.Stacks) return pattern;
        var text = new StringBuilder();
        var added = new List<string>();
        var left = Tensions;
        if (Family.Stacks)
        {
            text.Append(pattern).Replace("{7}", TakeStack(ref left));
        }
        else if (Family.HasSixth && left.Contains(2))
        {
            text.Append(pattern).Replace("6", "6/9");
            left = left.Without(2);
        }
        else
        {
            text.Append(pattern);
        }
        // Altered tensions follow a seventh or sixth bare; anything else is said to be added.
        var takesAlterations = Family.Seventh > 0 || Family.HasSixth;
        foreach (var tension in TensionOrder)
        {
            if (!left.Contains(tension)) continue;
            var degree = DegreeOf(tension);
            if (takesAlterations && degree.Alteration != 0 && degree.Steps > 7) text.Append(degree.ToDegree());
            else added.Add(tension is 11 && degree.Steps == 6 ? "maj7" : degree.ToDegree());
        }
        if (added.Count == 1) text.Append("add").Append(added[0]);
        else if (added.Count > 1) text.Append("(add").AppendJoin(',', added).Append(')');
        if (Family.Third > 0 && Omitted.Contains(Family.Third)) text.Append("(no3)");
        return text.ToString();
    }

    public override string ToString() => Symbol();

    private static ReadOnlySpan<int> TensionOrder => [4, 7, 1, 2, 3, 5, 6, 8, 9, 10, 11];

    // 9, 11 or 13 in the place of 7, as far as the naturals below are there or usually left out (common practice).
    private string TakeStack(ref PitchClassSet left)
    {
        var ninth = !Family.Tones.Contains(2) && left.Contains(2);
        var alteredNinth = left.Contains(1) || DegreeOf(3).Steps == 8 && left.Contains(3);
        var eleventh = left.Contains(5);
        if (left.Contains(9))
        {
            left = left.Without(9).Without(2);
            if (Family.Third == 3) left = left.Without(5);
            return "13";
        }
        if (eleventh && (ninth || alteredNinth && Family.Third == 3))
        {
            left = left.Without(5).Without(2);
            return "11";
        }
        if (!ninth) return "7";
        left = left.Without(2);
        return "9";
    }
}
