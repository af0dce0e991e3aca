using Fretlore.Lesson.Kit;
using Fretlore.Score;
using Fretlore.Workspace.Questions;

namespace Fretlore.Cli.Files;

/// <summary>How a kit was asked for, before there is a song.</summary>
/// <param name="Options">All but the parts.</param>
/// <param name="Parts">Parts on the pages, as typed; null for all.</param>
internal sealed record KitWish(KitOptions Options, string? Parts)
{
    /// <summary>The options for a song, or why it has no such parts.</summary>
    public Answer<KitOptions> For(Song song)
    {
        var chosen = PartChoice.Read(Parts, song);
        return chosen.Misread is { } misread ? misread : Options with { Parts = chosen.Value };
    }
}
