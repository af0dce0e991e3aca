using Fretlore.Music;

namespace Fretlore.Workspace.Questions;

/// <summary>A key as typed at the prompt: <c>A dorian</c>, <c>Eb major</c>, <c>F#</c>.</summary>
public static class KeyText
{
    public static Answer<Key> Read(string typed)
    {
        var words = Word.In(typed);
        if (words.Count is 1 or 2 && Key.TryParse(words[0].Text, words.Count == 2 ? words[1].Text : "", out var key)) return key;
        var wrong = words.Count == 0 ? new Word("", 1) : NoteName.TryParse(words[0].Text, out _) && words.Count > 1 ? words[1] : words[0];
        return new Misread(
            typed, wrong.Column, wrong.Text.Length, wrong.Text.Length == 0 ? "The key is empty." : $"\"{wrong.Text}\" makes no key.",
            "Type a note and a mode: \"A dorian\", \"Eb major\", \"F# minor\", with one of ionian, dorian, phrygian, lydian, mixolydian, aeolian, locrian.");
    }
}
