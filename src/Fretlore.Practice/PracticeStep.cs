using Fretlore.Music;

namespace Fretlore.Practice;

/// <summary>One step of the lesson, as the practice page shows it.</summary>
/// <param name="Title">As shown.</param>
/// <param name="Teaches">Riffs, sections or road maps by name.</param>
/// <param name="SpeedPercents">Teaching speeds in percent of the song's tempo; may be empty.</param>
/// <param name="Say">The teacher's own words, or null.</param>
/// <param name="CallOuts">What is said of the riffs it teaches.</param>
public sealed record PracticeStep(
    string Title, ValueList<string> Teaches, ValueList<int> SpeedPercents, string? Say, ValueList<PracticeCallOut> CallOuts)
{
    /// <summary>What it teaches elsewhere on the neck and in other keys.</summary>
    public ValueList<PracticeVersion> Versions { get; init; }
}

/// <summary>A lick in another place or key.</summary>
/// <param name="Name">The lick's name as said.</param>
/// <param name="Title">What it is, such as "Same notes, two strings lower".</param>
/// <param name="Hand">How hard it is for the hand, in one word.</param>
/// <param name="Fingers">The fingers for it, as on its card; may be empty.</param>
/// <param name="Tab">Plain-text tab.</param>
public sealed record PracticeVersion(string Name, string Title, string Hand, string Fingers, string Tab);

/// <summary>What a teacher says about a riff, a sentence an item.</summary>
/// <param name="Name">The riff's name as said.</param>
/// <param name="Headline">What it is.</param>
/// <param name="WalkThrough">Every string and fret in order.</param>
/// <param name="NoteByNote">Every note with its value.</param>
public sealed record PracticeCallOut(string Name, ValueList<string> Headline, ValueList<string> WalkThrough, ValueList<string> NoteByNote);
