using System.Collections.Immutable;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.CallOuts;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Subjects;

/// <summary>What kind of thing is taught.</summary>
public enum SubjectKind
{
    /// <summary>A riff of the sheet, whole.</summary>
    Riff,

    /// <summary>Some bars of a riff or section.</summary>
    Passage,

    /// <summary>A section of the song, whole.</summary>
    Section,

    /// <summary>A free stretch with rules.</summary>
    RoadMap,
}

/// <summary>A stretch of one part.</summary>
/// <param name="Part">Index into the song's parts.</param>
/// <param name="FirstBar">Index into the song's written bars.</param>
/// <param name="BarCount">Written bars.</param>
public readonly record struct Place(int Part, int FirstBar, int BarCount);

/// <summary>One line of music that a subject consists of.</summary>
/// <param name="Riff">The music; a passage is a riff of its own.</param>
/// <param name="Loads">What each of its bars asks of the fretting hand.</param>
/// <param name="Hardest">How hard it is as a whole.</param>
public sealed record SubjectLine(Riff Riff, ImmutableArray<HandLoad> Loads, Difficulty Hardest);

/// <summary>Something of a song that can be taught.</summary>
/// <param name="What">How the sheet points at it after <c>teach</c>.</param>
/// <param name="Kind">Riff, passage, section or road map.</param>
/// <param name="Lines">Its music, in the order it is told; none for a road map.</param>
/// <param name="RoadMap">Its rules, for a road map.</param>
/// <param name="Places">Where the song has it, in order; none for a riff the song does not play.</param>
/// <param name="Needs">Riffs that a learner should know first, by name.</param>
/// <param name="Why">Why it matters, in sentences a teacher can say.</param>
public sealed record Subject(
    Taught What, SubjectKind Kind, ValueList<SubjectLine> Lines, RoadMap? RoadMap, ValueList<Place> Places, ValueList<string> Needs, Speech Why)
{
    /// <summary>Seconds the song plays it, repeats included; parts that play it together count once.</summary>
    public double SecondsHeard { get; init; }

    /// <summary>Its share of the song's time, from 0 to 1.</summary>
    public double Share { get; init; }

    /// <summary>True when it has a technique that the rest of the song has not.</summary>
    public bool HasOwnTechnique { get; init; }

    /// <summary>True for the riff that the song opens with: what it is known by (common practice).</summary>
    public bool OpensSong { get; init; }

    public Difficulty Difficulty => Lines.Select(line => line.Hardest).DefaultIfEmpty(Difficulty.None).Max();

    /// <summary>True for a riff or passage that has nothing but rests.</summary>
    public bool IsSilent => Kind is SubjectKind.Riff or SubjectKind.Passage && Lines.All(line => line.Riff.IsSilent());

    /// <summary>What makes it hard for the fretting hand, the hardest bar's reasons first; three at most.</summary>
    public ValueList<string> HardBecause => Lines.SelectMany(line => line.Loads).OrderByDescending(load => load.Difficulty).ThenByDescending(load => load.Cost)
        .SelectMany(load => load.Reasons).Distinct().Take(3).ToValueList();
}
