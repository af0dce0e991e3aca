namespace Fretlore.Syntax.Formatting;

/// <summary>A piece of music that no line end parts.</summary>
/// <param name="Text">As it is written out.</param>
/// <param name="Before">What stands before it; a restated time or place has nothing.</param>
/// <param name="Depth">How many groups it stands in.</param>
internal readonly record struct Chunk(string Text, Trivia? Before, int Depth)
{
    public bool EndsBar => Text is "|" or "||";

    public bool HasComments => Before is { Comments.Count: > 0 };

    public bool BeginsLine => Before is { HasLineEnd: true };
}
