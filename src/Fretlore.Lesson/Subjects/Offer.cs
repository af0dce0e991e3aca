using Fretlore.Music;

namespace Fretlore.Lesson.Subjects;

/// <summary>Why something is worth teaching.</summary>
public enum OfferKind
{
    /// <summary>A riff that the sheet names.</summary>
    Riff,

    /// <summary>Bars that come again and have no name.</summary>
    Repeat,

    /// <summary>Bars that stand out from what is around them.</summary>
    Peak,

    /// <summary>The hardest bars of their part.</summary>
    Hard,
}

/// <summary>Something of the song that could be taught, and why.</summary>
/// <param name="Subject">What.</param>
/// <param name="Kind">What speaks for it first.</param>
/// <param name="Because">What speaks for it, in whole sentences.</param>
public sealed record Offer(Subject Subject, OfferKind Kind, ValueList<string> Because);
