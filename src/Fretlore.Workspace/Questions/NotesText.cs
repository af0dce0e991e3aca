using System.Collections.Immutable;
using Fretlore.Music;

namespace Fretlore.Workspace.Questions;

/// <summary>Note names as typed at the prompt, in the order played: <c>A C D E G</c>.</summary>
public static class NotesText
{
    private const string HowTo = "Type note names with blanks between them, sharps as # and flats as b: \"A C# E Bb\".";

    public static Answer<ImmutableArray<NoteName>> Read(string typed)
    {
        var notes = ImmutableArray.CreateBuilder<NoteName>();
        foreach (var word in Word.In(typed))
        {
            if (!NoteName.TryParse(word.Text, out var note))
            {
                return new Misread(typed, word.Column, word.Text.Length, $"\"{word.Text}\" is not a note name.", HowTo);
            }
            notes.Add(note);
        }
        if (notes.Count == 0) return new Misread(typed, 1, 0, "There are no notes.", HowTo);
        return notes.ToImmutable();
    }

    public static Answer<NoteName> ReadOne(string typed)
    {
        if (NoteName.TryParse(typed.AsSpan().Trim(), out var note)) return note;
        return new Misread(typed, 1, typed.Length, $"\"{typed}\" is not a note name.", "Type one note name: A, F#, Bb.");
    }
}
