using Fretlore.Lesson.CallOuts.ReadingBack;
using Fretlore.Music;
using Fretlore.Music.Chords;

namespace Fretlore.Lesson.CallOuts.Words;

/// <summary>Sentences about what notes are to the ear, and how they are understood again.</summary>
internal static class RoleWords
{
    public const string OfTheKey = " of the key";

    private static readonly HashSet<string> Degrees = [.. AllDegrees().Select(Degree.Words)];

    public static string Start(string degree) => $"You start on the {degree}";

    public static string Landing(string degree) => $"You land on the {degree}";

    public static string Both(string degree) => $"You start and land on the {degree}";

    public static string StartAndLanding(string start, string landing) => $"You start on the {start} and land on the {landing}";

    public static string InKey(string start, string landing) => $"In the key, you start on the {start} and land on the {landing}";

    public static string Bends(string[] goals) => goals.Length == 1 ? $"The bend reaches the {goals[0]}" : $"The bends reach the {string.Join(" and the ", goals)}";

    public static bool IsNext(WordRow row) =>
        (row.Current, row.Look(1)) is ("you", "start" or "land") or ("bend", "reaches") or ("bends", "reach") or ("in", "key");

    /// <summary>Steps over one of these sentences; false when it is not one we would say.</summary>
    public static bool TrySkip(WordRow row)
    {
        var start = row.Place;
        if (TryRead(row)) return true;
        row.Place = start;
        return false;
    }

    private static bool TryRead(WordRow row)
    {
        if (row.Take("bend reaches")) return TryDegree(row) && row.IsAtEnd;
        if (row.Take("bends reach")) return TryDegree(row) && TryDegree(row) && row.IsAtEnd;
        row.Take("in key ,");
        if (!row.Take("you")) return false;
        if (row.Take("start land on") || row.Take("land on")) return TryDegree(row) && row.IsAtEnd;
        if (!row.Take("start on") || !TryDegree(row)) return false;
        return row.IsAtEnd || row.Take("land on") && TryDegree(row) && row.IsAtEnd;
    }

    // The longest degree that the words begin with.
    private static bool TryDegree(WordRow row)
    {
        for (var length = 3; length > 0; length--)
        {
            var words = string.Join(' ', Enumerable.Range(0, length).Select(row.Look));
            if (!Degrees.Contains(words)) continue;
            row.Place += length;
            row.Take("of key");
            return true;
        }
        return false;
    }

    private static IEnumerable<Interval> AllDegrees() =>
        from number in Enumerable.Range(1, 13)
        from sign in (string[])["", "b", "#", "bb", "##"]
        select Degree.Parse(sign + number);
}
