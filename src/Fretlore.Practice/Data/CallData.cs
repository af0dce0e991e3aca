namespace Fretlore.Practice.Data;

/// <summary>A free stretch played out once, phrase by phrase.</summary>
internal sealed record CallData
{
    /// <summary>The road map's name.</summary>
    public required string Name { get; init; }

    public required int Part { get; init; }

    /// <summary>Seconds of the song where its first bar begins, and its sound with it.</summary>
    public required double Start { get; init; }

    public required IReadOnlyList<PhraseData> Phrases { get; init; }

    /// <summary>The notes as they are heard, in order of time. Their ids are on no page.</summary>
    public required IReadOnlyList<NoteData> Notes { get; init; }

    /// <summary>The element that holds its sound; null when there is none.</summary>
    public string? Sound { get; init; }
}

/// <summary>A phrase that is called.</summary>
/// <param name="Kind"><c>free</c>, <c>fixed</c>, <c>lick</c>, <c>answer</c> or <c>sequence</c>.</param>
/// <param name="Of">The riff it is, or is drawn from; null for none.</param>
/// <param name="First">Index into the played bars.</param>
/// <param name="Count">Played bars.</param>
internal sealed record PhraseData(string Kind, string? Of, int First, int Count);
