using System.Globalization;

namespace Fretlore.Workspace.Questions;

/// <summary>The time for a film as typed at the prompt: <c>6</c>, <c>6.5</c> or <c>6:30</c> minutes.</summary>
public static class FilmTimeText
{
    private const int MostMinutes = 600;

    private const string Remedy = "Type minutes, such as 6, 6.5 or 6:30; ten hours at most.";

    public static Answer<TimeSpan> Read(string typed)
    {
        var text = typed.Trim();
        if (Seconds(text) is not { } seconds) return new Misread(typed, 1, typed.Length, "That is no length of a film.", Remedy);
        if (seconds == 0) return new Misread(typed, 1, typed.Length, "A film of no minutes has room for nothing.", Remedy);
        if (seconds > MostMinutes * 60) return new Misread(typed, 1, typed.Length, "That is longer than a film can be planned.", Remedy);
        return TimeSpan.FromSeconds((double)seconds);
    }

    private static decimal? Seconds(string text)
    {
        if (text.Split(':') is [var minutes, { Length: 2 } rest])
        {
            return int.TryParse(minutes, NumberStyles.None, CultureInfo.InvariantCulture, out var m) && m <= 100_000
                && int.TryParse(rest, NumberStyles.None, CultureInfo.InvariantCulture, out var s) && s < 60 ? m * 60 + s : null;
        }
        return decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number < 100_000 ? number * 60 : null;
    }
}
