using System.Globalization;

namespace Fretlore.Tests;

/// <summary>How much a test that could go on for ever takes: a sample by itself, and as much as FRETLORE_SOAK says for a long run.</summary>
internal static class Soak
{
    private static int? Asked => int.TryParse(Environment.GetEnvironmentVariable("FRETLORE_SOAK"), CultureInfo.InvariantCulture, out var number) ? number : null;

    /// <summary>Damaged files to read.</summary>
    public static int Files(int usual) => Asked ?? usual;

    /// <summary>Generated songs to carry there and back; at most a few thousand, since each is written and read several times.</summary>
    public static int Songs(int usual) => Asked is { } asked ? Math.Clamp(asked, usual, 3000) : usual;

    /// <summary>Solos to make from each road map; at most a thousand.</summary>
    public static int Takes(int usual) => Asked is { } asked ? Math.Clamp(asked, usual, 1000) : usual;

    /// <summary>Road maps: some of them, spread over all; all for a long run.</summary>
    public static IEnumerable<T> Maps<T>(IReadOnlyList<T> all, int oneIn) => all.Where((_, i) => Asked is not null || i % oneIn == 0);
}
