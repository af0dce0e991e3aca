using System.Globalization;
using Fretlore.Music;

namespace Fretlore.Lesson.Kit;

/// <summary>What changed from one kit to the next, for a note to those who have the old one.</summary>
public static class Errata
{
    /// <summary>The differences, a whole sentence each; none when the kits are the same.</summary>
    /// <param name="before">The list of the old kit.</param>
    /// <param name="now">The list of the new one.</param>
    public static ValueList<string> Between(KitList before, KitList now) =>
        [.. Titles(before, now), .. Bars(before, now), .. Files(before, now)];

    private static IEnumerable<string> Titles(KitList before, KitList now)
    {
        (string What, string? Was, string? Is)[] lines =
        [
            ("title", before.Title, now.Title), ("artist", before.Artist, now.Artist), ("credits", before.Credits, now.Credits),
            ("rights", before.Rights, now.Rights), ("permission", before.Permission, now.Permission),
        ];
        foreach (var (what, was, its) in lines)
        {
            if (was == its) continue;
            var verb = what is "credits" or "rights" ? "are" : "is";
            yield return was is null ? $"The {what} {verb} now said: {its}." : its is null ? $"The {what} {verb} no longer said." : $"The {what} changed from “{was}” to “{its}”.";
        }
    }

    private static IEnumerable<string> Bars(KitList before, KitList now)
    {
        foreach (var part in now.Music ?? [])
        {
            if (before.Music is not { } old) continue;
            if (old.FirstOrDefault(p => p.Part == part.Part) is not { } was) yield return $"{part.Title} is new.";
            else foreach (var line in Bars(part, was, now)) yield return line;
        }
        foreach (var part in before.Music ?? [])
        {
            if (now.Music is { } its && its.All(p => p.Part != part.Part)) yield return $"{part.Title} is no longer there.";
        }
    }

    private static IEnumerable<string> Bars(KitPart now, KitPart before, KitList list)
    {
        foreach (var (oldFirst, oldCount, first, count) in Runs(before.Bars, now.Bars))
        {
            var where = count > 0 ? Named(now, first, count) : Named(before, oldFirst, oldCount);
            var section = count > 0 && list.Sections?.LastOrDefault(s => s.FirstBar <= first) is { } found ? $" ({found.Name})" : "";
            yield return oldCount == 0 ? $"{now.Title}: {where}{section} {(count == 1 ? "is" : "are")} new."
                : count == 0 ? $"{now.Title}: {where} of the old kit {(oldCount == 1 ? "is" : "are")} gone."
                : $"{now.Title}: {where}{section} {(count == 1 ? "has" : "have")} changed{(count == oldCount ? "" : $", from {oldCount} to {count} bars")}.";
        }
    }

    private static string Named(KitPart part, int first, int count)
    {
        var (from, to) = (part.Numbers[first], part.Numbers[first + count - 1]);
        return count == 1 || from == to ? string.Create(CultureInfo.InvariantCulture, $"bar {from}") : string.Create(CultureInfo.InvariantCulture, $"bars {from} to {to}");
    }

    // Stretches that differ, by the longest run of bars that both have in common (as text is compared).
    private static List<(int OldFirst, int OldCount, int First, int Count)> Runs(IReadOnlyList<string> before, IReadOnlyList<string> now)
    {
        var common = new int[before.Count + 1, now.Count + 1];
        for (var i = before.Count - 1; i >= 0; i--)
        {
            for (var j = now.Count - 1; j >= 0; j--) common[i, j] = before[i] == now[j] ? common[i + 1, j + 1] + 1 : Math.Max(common[i + 1, j], common[i, j + 1]);
        }
        var runs = new List<(int, int, int, int)>();
        for (int i = 0, j = 0; i < before.Count || j < now.Count;)
        {
            var (oldFirst, first) = (i, j);
            while (i < before.Count || j < now.Count)
            {
                if (i < before.Count && j < now.Count && before[i] == now[j]) break;
                if (j == now.Count || (i < before.Count && common[i + 1, j] >= common[i, j + 1])) i++;
                else j++;
            }
            if (i > oldFirst || j > first) runs.Add((oldFirst, i - oldFirst, first, j - first));
            while (i < before.Count && j < now.Count && before[i] == now[j]) (i, j) = (i + 1, j + 1);
        }
        return runs;
    }

    private static IEnumerable<string> Files(KitList before, KitList now)
    {
        var was = before.Files.ToDictionary(f => f.Path, StringComparer.Ordinal);
        foreach (var file in now.Files)
        {
            if (!was.Remove(file.Path, out var old)) yield return $"New: {file.Path} ({file.For}).";
            else if (old.Sha256 != file.Sha256) yield return $"Changed: {file.Path} ({file.For}).";
            else if (old.Audience != file.Audience && old.Audience is not null) yield return $"{file.Path} is now for {file.Audience}.";
        }
        foreach (var path in was.Keys.Order(StringComparer.Ordinal)) yield return $"Gone: {path}.";
    }
}
