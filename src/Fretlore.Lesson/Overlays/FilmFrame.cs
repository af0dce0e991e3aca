using System.Collections.Immutable;

namespace Fretlore.Lesson.Overlays;

/// <summary>The size of a film's frame, and where in it a picture is safe from edges and from what players lay over it.</summary>
/// <param name="Name">As asked for.</param>
/// <param name="Width">Pixels.</param>
/// <param name="Height">Pixels.</param>
/// <param name="Left">Safe from here on, in pixels.</param>
/// <param name="Top">Safe from here on.</param>
/// <param name="Right">Safe up to here.</param>
/// <param name="Bottom">Safe up to here.</param>
/// <remarks>
/// 16:9: the title-safe area of SMPTE ST 2046-1 and EBU R 95, 90 % of either side (from memory). 9:16: by judgement; phones' players put words and buttons
/// over the lowest quarter and the right edge of an upright film.
/// </remarks>
public sealed record FilmFrame(string Name, int Width, int Height, int Left, int Top, int Right, int Bottom)
{
    public static ImmutableArray<FilmFrame> All { get; } =
    [
        new("16:9", 1920, 1080, 96, 54, 1824, 1026),
        new("9:16", 1080, 1920, 60, 210, 930, 1400),
    ];

    /// <summary>Frames a second that overlays are made for.</summary>
    public static ImmutableArray<int> Rates { get; } = [24, 25, 30, 60];

    public int SafeWidth => Right - Left;
}
