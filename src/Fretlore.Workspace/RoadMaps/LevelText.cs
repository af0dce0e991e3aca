using Fretlore.Workspace.Questions;

namespace Fretlore.Workspace.RoadMaps;

/// <summary>How much a solo asks of its player.</summary>
/// <param name="Share">From 0, easy, to 1, full; null for from one to the other.</param>
public readonly record struct Level(double? Share);

/// <summary>Levels as typed at the prompt.</summary>
public static class LevelText
{
    public static Answer<Level> Read(string? typed) => typed?.ToLowerInvariant() switch
    {
        null => new Level(null),
        "easy" => new Level(0),
        "medium" => new Level(0.5),
        "full" => new Level(1),
        _ => new Misread(typed, 1, typed.Length, $"\"{typed}\" is no level.", "Write easy, medium or full."),
    };

    /// <summary>The word nearest to a share.</summary>
    public static string Word(double share) => share switch { < 0.25 => "easy", < 0.75 => "medium", _ => "full" };
}
