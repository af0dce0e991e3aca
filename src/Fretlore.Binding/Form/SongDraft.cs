using Fretlore.Binding.Draft;
using Fretlore.Binding.Settings;

namespace Fretlore.Binding.Form;

/// <summary>A stretch of one part's columns with a name.</summary>
internal readonly record struct PartSpan(int Part, string Name, int First, int End);

/// <summary>The song as played, every part bar by bar, before repeats are written again.</summary>
internal sealed class SongDraft(IEnumerable<DeclaredPart> parts)
{
    public IReadOnlyList<DeclaredPart> Parts { get; } = [.. parts];

    public List<Column> Columns { get; } = [];

    /// <summary>Jumps and the places they lead to.</summary>
    public required JumpCheck Jumps { get; init; }

    /// <summary>For each part a bar for each column.</summary>
    public List<DraftBar>[] Bars { get; } = [.. parts.Select(_ => new List<DraftBar>())];

    /// <summary>Repeats that some part's line asks for, in columns.</summary>
    public List<RepeatSpan> Repeats { get; } = [];

    public List<(string Name, int First, int End)> Sections { get; } = [];

    public List<PartSpan> Riffs { get; } = [];

    public List<PartSpan> RoadMaps { get; } = [];
}
