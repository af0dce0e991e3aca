using System.Text;
using Fretlore.RoadMaps.Checking;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Syntax;

namespace Fretlore.Workspace.RoadMaps;

/// <summary>Puts a take into a sheet as it was typed: the take's riff in place of the road map's block, its name where the road map was played and taught.</summary>
internal static class SheetSplice
{
    /// <summary>The new text; null where the road map is played more than once, or where its place needs more than a riff's name.</summary>
    /// <param name="workspace">The sheet.</param>
    /// <param name="stretch">The road map where it stands.</param>
    /// <param name="riff">The name of the take's riff.</param>
    /// <param name="whole">The song written anew with the take as that riff.</param>
    public static string? InPlace(SongWorkspace workspace, SoloStretch stretch, string riff, string whole)
    {
        var root = workspace.Sheet.Root;
        var map = stretch.Map.Name;
        var plays = root.DescendantsAndSelf().OfType<RoadMapUseSyntax>().Where(u => u.Name.Text == map).ToList();
        var blocks = root.Blocks.OfType<RoadMapSyntax>().Where(b => b.Name.Text == map).ToList();
        if (plays.Count != 1 || blocks.Count != 1 || stretch.Song.RoadMapUses.Count(u => u.RoadMap == map) != 1 || RiffBlock(whole, riff) is not { } block) return null;
        var taught = root.Blocks.OfType<LessonSyntax>().SelectMany(l => l.DescendantsAndSelf().OfType<SettingSyntax>()).SelectMany(s => s.Values).Where(v => v.Text == map);
        var edits = taught.Select(t => (t.Span, Text: riff)).Append((plays[0].Span, riff)).Append((blocks[0].Span, block)).OrderByDescending(e => e.Span.Start);
        var text = new StringBuilder(workspace.Sheet.Text.Text);
        foreach (var (span, instead) in edits) text.Remove(span.Start, span.Length).Insert(span.Start, instead);
        var made = text.ToString();
        return IsTake(made, stretch) ? made : null;
    }

    // From the riff's line to the blank line after it.
    private static string? RiffBlock(string whole, string riff)
    {
        var start = whole.IndexOf($"riff {riff}\n", StringComparison.Ordinal);
        if (start < 0) return null;
        var end = whole.IndexOf("\n\n", start, StringComparison.Ordinal);
        return end < 0 ? null : whole[start..end];
    }

    /// <summary>True when the sheet has no errors and what stands in the road map's place keeps its rules.</summary>
    private static bool IsTake(string text, SoloStretch stretch)
    {
        var made = SongWorkspace.Open(new SourceText(text, ""));
        if (made.HasErrors || made.Song is not { } song || song.Bars.Count != stretch.Song.Bars.Count) return false;
        return RoadMapChecker.Check(stretch, [.. song.Parts[stretch.Use.Part].Bars.Items.Slice(stretch.Use.FirstBar, stretch.Count)]).KeepsAll;
    }
}
