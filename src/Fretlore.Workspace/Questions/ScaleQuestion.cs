using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Reading.Scales;

namespace Fretlore.Workspace.Questions;

/// <summary>Which scales do these notes come from?</summary>
/// <param name="Notes">As typed, see <see cref="NotesText"/>.</param>
/// <param name="Root">As typed; null when it is to be found.</param>
public sealed record ScaleQuestion(string Notes, string? Root = null)
{
    /// <summary>Scales, best first.</summary>
    public Answer<ImmutableArray<ScaleReading>> Ask()
    {
        var notes = NotesText.Read(Notes);
        if (notes.Misread is { } noNotes) return noNotes;
        NoteName? root = null;
        if (Root is not null)
        {
            var read = NotesText.ReadOne(Root);
            if (read.Misread is { } noRoot) return noRoot;
            root = read.Value;
        }
        return ScaleFinder.Find(notes.Value.AsSpan(), root);
    }
}
