using Fretlore.Lesson.CallOuts.Telling;

namespace Fretlore.Lesson.CallOuts.Words;

/// <summary>Lists as spoken: "E flat, open strings and bends", in as many sentences as there are breaths in them.</summary>
internal static class SpokenList
{
    /// <summary>Sentences that name all items.</summary>
    /// <param name="lead">How the first begins.</param>
    /// <param name="goingOn">How those after it begin.</param>
    /// <param name="items">What is named.</param>
    /// <param name="joint">What stands before a sentence's last item: "and", "or".</param>
    /// <param name="tail">What ends each sentence.</param>
    /// <param name="separator">What stands between items: a comma, or a semicolon where items are lists.</param>
    public static IEnumerable<string> Of(string lead, string goingOn, IEnumerable<string> items, string joint, string tail = "", string separator = ",")
    {
        var taken = new List<string>();
        var start = lead;
        foreach (var item in items)
        {
            if (taken.Count > 0 && Words(Sentence([.. taken, item])) > Breaths.Limit)
            {
                yield return Sentence(taken);
                (start, taken) = (goingOn, []);
            }
            taken.Add(item);
        }
        if (taken.Count > 0) yield return Sentence(taken);

        string Sentence(List<string> said)
        {
            var text = $"{start} {Joined(said, joint, separator)}{(tail.Length > 0 ? " " + tail : "")}.";
            return char.ToUpperInvariant(text[0]) + text[1..];
        }
    }

    /// <summary>"one, two and three"; items that are lists themselves are kept apart by semicolons, the last two too.</summary>
    public static string Joined(IEnumerable<string> words, string joint, string separator = ",")
    {
        var list = words.ToList();
        if (list.Count < 2) return string.Concat(list);
        return string.Join(separator + " ", list[..^1]) + (separator == "," ? "" : separator) + $" {joint} {list[^1]}";
    }

    /// <summary>How many words are said.</summary>
    public static int Words(string text) => text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length;
}
