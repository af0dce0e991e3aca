using Fretlore.Reading;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Syntax;
using Fretlore.Workspace;

namespace Fretlore.Tests.RoadMaps;

/// <summary>Road maps of test sheets where they stand.</summary>
internal static class MapStretch
{
    public static SoloStretch Stretch(this VariedMap map)
    {
        var workspace = SongWorkspace.Open(new SourceText(map.Sheet, "map.lore"));
        Assert.False(workspace.HasErrors, string.Join('\n', workspace.Findings.Select(f => $"{f.Line}: {f.Message}")) + "\n" + map.Sheet);
        var song = workspace.Song!;
        var use = song.RoadMapUses[0];
        return SoloStretch.Of(song, SongReader.Read(song), song.RoadMaps.Items.First(m => m.Name == use.RoadMap), use);
    }
}
