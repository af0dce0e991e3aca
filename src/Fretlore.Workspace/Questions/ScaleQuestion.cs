using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Music.Scales;
using Fretlore.Reading;
using Fretlore.Reading.Scales;
using Fretlore.Syntax;

namespace Fretlore.Workspace.Questions;

/// <summary>Which scales do these notes come from? Or, when a root and a scale's name are typed: which notes has it?</summary>
/// <param name="Notes">As typed, see <see cref="NotesText"/>; or a note and a scale's name.</param>
/// <param name="Root">As typed; null when it is to be found.</param>
public sealed record ScaleQuestion(string Notes, string? Root = null)
{
    private const int FewestNotes = 2;

    /// <summary>Scales, best first; the one named, when one is.</summary>
    public Answer<ImmutableArray<ScaleReading>> Ask()
    {
        NoteName? root = null;
        if (Root is not null)
        {
            var read = NotesText.ReadOne(Root);
            if (read.Misread is { } noRoot) return noRoot;
            root = read.Value;
        }
        var words = Word.In(Notes);
        if (words.Count > 1 && NoteName.TryParse(words[0].Text, out var tonic) && !NoteName.TryParse(words[1].Text, out _)
            && words[1].Text.Length >= LeastName && words.Skip(1).All(w => !NoteName.TryParse(w.Text, out _))) return Named(tonic, words[1]);
        var notes = NotesText.Read(Notes);
        if (notes.Misread is { } noNotes) return noNotes;
        if (notes.Value.Select(n => n.PitchClass).Distinct().Count() < FewestNotes)
        {
            return new Misread(Notes, 1, Notes.Length, $"{notes.Value[0]} alone is in too many scales to name one.",
                "Type two notes or more, or a scale's name to see its notes: \"A dorian\".");
        }
        return ScaleFinder.Find(notes.Value.AsSpan(), root);
    }

    // Shorter words are mistyped notes.
    private const int LeastName = 3;

    private Answer<ImmutableArray<ScaleReading>> Named(NoteName tonic, Word first)
    {
        var name = Notes[(first.Column - 1)..].TrimEnd();
        if (ScaleTable.TryFind(name, out var scale)) return ImmutableArray.Create(ScaleFinder.Whole(scale, tonic));
        var nearest = Nearest.To(name, ScaleTable.All.SelectMany(s => s.OtherNames.Prepend(s.Name)));
        return new Misread(Notes, first.Column, name.Length, $"\"{name}\" is no scale that we know.", nearest is null
            ? "Type note names to find scales they come from: \"A C D E G\"."
            : $"Did you mean \"{tonic} {nearest}\"?");
    }
}
