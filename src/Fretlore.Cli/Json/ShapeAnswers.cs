namespace Fretlore.Cli.Json;

/// <summary>What <c>shapes --json</c> prints, best first.</summary>
/// <param name="Chord">The symbol as it was understood.</param>
/// <param name="Count">How many shapes there are in all.</param>
/// <param name="Shapes">The best of them.</param>
internal sealed record ShapesAnswer(string Chord, int Count, IReadOnlyList<ShapeLine> Shapes);

/// <summary>One shape: a fret and a finger for each string, low string first; x is not sounded, finger 0 an open string.</summary>
internal sealed record ShapeLine(string Shape, string Fingers, int Position, string About, double Effort, double Lack);
