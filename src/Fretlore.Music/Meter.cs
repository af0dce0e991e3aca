namespace Fretlore.Music;

/// <summary>A metre (time signature) with its beat groups: 4/4, 6/8 as 3+3, 7/8 as 2+2+3.</summary>
public readonly record struct Meter
{
    private readonly int count;
    private readonly int unit;
    private readonly ValueList<int> groups;

    /// <param name="count">Upper number, 1 to 64.</param>
    /// <param name="unit">Lower number: 1, 2, 4, 8, 16, 32 or 64.</param>
    /// <param name="groups">Units in each beat group, adding up to <paramref name="count"/>; empty for the usual grouping.</param>
    public Meter(int count, int unit, ValueList<int> groups = default)
    {
        if (!IsValid(count, unit, groups)) throw new ArgumentOutOfRangeException(nameof(count), $"{count}/{unit} {groups} is no metre.");
        this.count = count;
        this.unit = unit;
        this.groups = groups;
    }

    public static Meter FourFour => new(4, 4);

    public int Count => count == 0 ? 4 : count;

    public int Unit => unit == 0 ? 4 : unit;

    /// <summary>The groups the writer stated; empty when the usual ones are meant.</summary>
    public ValueList<int> StatedGroups => groups;

    /// <summary>Units in each beat: as stated, or threes for compound metres (6, 9, 12, ... over 8 or less), or one unit each.</summary>
    public ValueList<int> Groups
    {
        get
        {
            if (groups.Count > 0) return groups;
            var compound = Count > 3 && Count % 3 == 0 && Unit >= 8;
            if (compound) return Enumerable.Repeat(3, Count / 3).ToValueList();
            if (Unit < 8) return Enumerable.Repeat(1, Count).ToValueList();
            // Simple and irregular metres in eighths and smaller: twos, with a last three when odd (common practice).
            var usual = new List<int>();
            for (var left = Count; left > 0;)
            {
                var size = left == 3 || left < 2 ? left : 2;
                usual.Add(size);
                left -= size;
            }
            return usual.ToValueList();
        }
    }

    /// <summary>The length of a full bar in quarter notes.</summary>
    public Beats Length => Beats.Of(4, Unit) * Count;

    public static bool IsValid(int count, int unit, ValueList<int> groups = default) =>
        count is >= 1 and <= 64 && unit is 1 or 2 or 4 or 8 or 16 or 32 or 64
        && (groups.Count == 0 || (groups.All(g => g > 0) && groups.Sum() == count));

    public override string ToString() => $"{Count}/{Unit}";
}
