using System.Collections.Immutable;
using System.Collections.ObjectModel;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding;

/// <summary>A song with the places in its sheet that its notes come from.</summary>
/// <param name="Song">The song; null when the sheet has errors that leave nothing to make a song of.</param>
/// <param name="Spans">For each note id, where it is written. Notes of a riff point into the riff each time it is played.</param>
/// <param name="Diagnostics">What the parser and the binder found, in the order of the text.</param>
public sealed record BoundSong(Song? Song, ImmutableArray<TextSpan> Spans, ImmutableArray<Diagnostic> Diagnostics)
{
    public bool HasErrors => Diagnostics.Any(d => d.Severity == Severity.Error);

    /// <summary>Where a chord symbol is stated, by the first note of its event.</summary>
    public IReadOnlyDictionary<NoteId, TextSpan> Symbols { get; init; } = ReadOnlyDictionary<NoteId, TextSpan>.Empty;

    public TextSpan SpanOf(NoteId note) => Spans[note.Index];
}
