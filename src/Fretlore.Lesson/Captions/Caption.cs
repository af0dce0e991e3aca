using Fretlore.Music;

namespace Fretlore.Lesson.Captions;

/// <summary>Words shown under a film for a while.</summary>
/// <param name="Start">Milliseconds from the film's start.</param>
/// <param name="End">Milliseconds; after <paramref name="Start"/>.</param>
/// <param name="Lines">One or two.</param>
public sealed record Caption(long Start, long End, ValueList<string> Lines)
{
    /// <summary>Characters of a line.</summary>
    public const int MostCharacters = 42;

    public const int MostLines = 2;

    /// <summary>Characters a second a viewer can read.</summary>
    public const int ReadingSpeed = 17;

    /// <summary>Milliseconds a caption stays at least: one that flashes by can't be read, however short it is.</summary>
    public const int Shortest = 1000;

    public int Characters => Lines.Sum(line => line.Length);

    /// <summary>Milliseconds it takes to read.</summary>
    internal static long ReadingTime(IEnumerable<string> lines) => Math.Max(Shortest, (lines.Sum(line => line.Length) * 1000L + ReadingSpeed - 1) / ReadingSpeed);
}

/// <summary>Captions in order of time; none overlaps the next.</summary>
/// <param name="Captions">In order.</param>
/// <param name="Problems">What could not be shown, in whole sentences.</param>
public sealed record CaptionTrack(ValueList<Caption> Captions, ValueList<string> Problems);
