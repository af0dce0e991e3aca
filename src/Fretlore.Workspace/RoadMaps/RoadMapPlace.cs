using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;
using Fretlore.Syntax;
using Fretlore.Workspace.Questions;

namespace Fretlore.Workspace.RoadMaps;

/// <summary>A road map of a sheet, as typed at the prompt.</summary>
public static class RoadMapPlace
{
    /// <summary>The road map where it stands first, or first in a section.</summary>
    /// <param name="workspace">The sheet; there must be a song.</param>
    /// <param name="name">The road map's name.</param>
    /// <param name="section">The section's name; null for any.</param>
    public static Answer<SoloStretch> Find(SongWorkspace workspace, string name, string? section)
    {
        var song = workspace.Song ?? throw new InvalidOperationException("A sheet without a song has no road maps.");
        if (song.RoadMaps.Count == 0) return new Misread(name, 1, name.Length, "The sheet has no road map.", "Write one: `roadmap NAME` at the margin, its rules below, and `roadmap NAME 8 bars` where a part plays it.");
        if (song.RoadMaps.Items.FirstOrDefault(m => m.Name == name) is not { } map)
        {
            var names = song.RoadMaps.Select(m => m.Name).ToList();
            var all = names.Count == 1 ? $"The sheet's road map is {names[0]}." : $"The sheet's road maps are {string.Join(", ", names)}.";
            return new Misread(name, 1, name.Length, $"The sheet has no road map \"{name}\".", Nearest.To(name, names) is { } near && names.Count > 1 ? $"Perhaps {near} was meant. {all}" : all);
        }
        var uses = song.RoadMapUses.Where(u => u.RoadMap == name).OrderBy(u => u.FirstBar).ToList();
        if (uses.Count == 0) return new Misread(name, 1, name.Length, $"No part plays the road map \"{name}\".", $"Write `roadmap {name} 8 bars` in a section, in the line of the part that plays it.");
        if (section is not null)
        {
            var all = uses.Select(u => SectionOf(song, u).Name).Distinct().ToList();
            uses = [.. uses.Where(u => SectionOf(song, u).Name.Equals(section, StringComparison.OrdinalIgnoreCase))];
            if (uses.Count == 0) return new Misread(section, 1, section.Length, $"The road map is not played in a section \"{section}\".", $"It is played in {string.Join(", ", all)}.");
        }
        return SoloStretch.Of(song, workspace.Reading, map, uses[0]);
    }

    /// <summary>The section a road map's place is in.</summary>
    public static Section SectionOf(Song song, RoadMapUse use) => song.Sections.Items.First(s => s.FirstBar <= use.FirstBar && use.FirstBar < s.FirstBar + s.BarCount);
}
