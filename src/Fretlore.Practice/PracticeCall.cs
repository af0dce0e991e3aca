using System.Collections.Immutable;
using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Practice;

/// <summary>A free stretch played out once, for call and response: the page plays its phrases, and the student answers each.</summary>
public sealed record PracticeCall
{
    /// <summary>The road map where it stands in the song.</summary>
    public required RoadMapUse Use { get; init; }

    /// <summary>The song with the solo in the road map's place, as it sounds. Its bars are the song's own.</summary>
    public required PerformedSong Played { get; init; }

    public required SongReading Reading { get; init; }

    public required SongHands Hands { get; init; }

    /// <summary>In order, none over another.</summary>
    public required ValueList<PracticePhrase> Phrases { get; init; }

    /// <summary>The solo alone as a mono Opus file, from the start of its first bar on; null when there is none.</summary>
    public ImmutableArray<byte>? Sound { get; init; }
}

/// <summary>What a phrase is.</summary>
public enum PracticePhraseKind
{
    /// <summary>Made up by the rules.</summary>
    Free,

    /// <summary>Fixed by the road map.</summary>
    Fixed,

    /// <summary>Drawn from a lick.</summary>
    Lick,

    /// <summary>Says the phrase before it again, to another end.</summary>
    Answer,

    /// <summary>Says the phrase before it again at another height.</summary>
    Sequence,
}

/// <summary>A phrase that is called.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Of">The riff it is, or is drawn from; null for none.</param>
/// <param name="FirstBar">Bar of the stretch, from 1.</param>
/// <param name="BarCount">Bars.</param>
public sealed record PracticePhrase(PracticePhraseKind Kind, string? Of, int FirstBar, int BarCount);
