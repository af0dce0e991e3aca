using Fretlore.RoadMaps.Checking;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Workspace.Questions;

namespace Fretlore.Workspace.RoadMaps;

/// <summary>Which rules of a road map does a solo keep?</summary>
/// <param name="Name">The road map.</param>
/// <param name="Section">The section it is played in; null for the first.</param>
/// <param name="Part">The part of the solo's sheet; null to look for it.</param>
/// <param name="From">The printed number of the solo's first bar; null to look for it.</param>
public sealed record SoloQuestion(string Name, string? Section = null, string? Part = null, int? From = null)
{
    /// <param name="workspace">The sheet with the road map; there must be a song.</param>
    /// <param name="solo">The sheet with the solo; there must be a song.</param>
    public Answer<SoloAnswer> Ask(SongWorkspace workspace, SongWorkspace solo)
    {
        var place = RoadMapPlace.Find(workspace, Name, Section);
        if (place.Misread is { } misread) return misread;
        var bars = SoloPlace.Find(solo.Song ?? throw new InvalidOperationException("A sheet without a song has no solo."), place.Value, Part, From);
        if (bars.Misread is { } noSolo) return noSolo;
        return new SoloAnswer(place.Value, RoadMapChecker.Check(place.Value, bars.Value));
    }
}

/// <summary>What a solo keeps and breaks.</summary>
public sealed record SoloAnswer(SoloStretch Stretch, RoadMapCheck Check);
