namespace Fretlore.Syntax;

/// <summary>A half-open stretch of a text: from <paramref name="Start"/> up to, not including, <see cref="End"/>.</summary>
/// <param name="Start">Index of the first UTF-16 unit.</param>
/// <param name="Length">Number of UTF-16 units; 0 for a place between two.</param>
public readonly record struct TextSpan(int Start, int Length)
{
    public int End => Start + Length;

    public static TextSpan FromBounds(int start, int end) => new(start, end - start);
}
