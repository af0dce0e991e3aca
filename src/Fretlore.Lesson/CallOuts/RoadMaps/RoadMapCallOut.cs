namespace Fretlore.Lesson.CallOuts.RoadMaps;

/// <summary>What a teacher says about a stretch that is played by rules.</summary>
/// <param name="RoadMap">The road map's name in the sheet.</param>
/// <param name="SpokenName">The name as said.</param>
/// <param name="Headline">How much of it is free, from which notes and where, what to land on and how it ends: a breath or two, three at most.</param>
/// <param name="WalkThrough">Every rule: what is fixed, the notes and their place, rhythm, licks, targets in order, what to avoid, the end.</param>
public sealed record RoadMapCallOut(string RoadMap, string SpokenName, Speech Headline, Speech WalkThrough);
