using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Workspace.Questions;

/// <summary>Parts of a song as typed at the prompt: <c>rhythm,lead</c>.</summary>
public static class PartChoice
{
    /// <summary>Indexes into the song's parts, in the song's order; none for all of them.</summary>
    /// <param name="typed">What was typed; null for all parts.</param>
    /// <param name="song">The song.</param>
    public static Answer<ValueList<int>> Read(string? typed, Song song)
    {
        if (typed is null) return new ValueList<int>([]);
        var names = song.Parts.Select(part => part.Name).ToList();
        var all = $"The song's parts are {string.Join(", ", names)}.";
        var chosen = new SortedSet<int>();
        foreach (var word in Word.In(typed))
        {
            var index = names.FindIndex(name => name.Equals(word.Text, StringComparison.OrdinalIgnoreCase));
            if (index < 0)
            {
                var remedy = Nearest.To(word.Text, names) is { } near ? $"Perhaps {near} was meant. {all}" : all;
                return new Misread(typed, word.Column, word.Text.Length, $"The song has no part \"{word.Text}\".", remedy);
            }
            chosen.Add(index);
        }
        if (chosen.Count == 0) return new Misread(typed, 1, 0, "No part is named.", all);
        return new ValueList<int>([.. chosen]);
    }
}
