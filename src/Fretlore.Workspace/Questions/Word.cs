namespace Fretlore.Workspace.Questions;

/// <summary>A word of something typed, with its column from 1.</summary>
internal readonly record struct Word(string Text, int Column)
{
    /// <summary>The words between blanks and commas.</summary>
    public static IReadOnlyList<Word> In(string text)
    {
        var words = new List<Word>();
        var start = -1;
        for (var i = 0; i <= text.Length; i++)
        {
            var isBreak = i == text.Length || char.IsWhiteSpace(text[i]) || text[i] == ',';
            if (!isBreak && start < 0) start = i;
            if (!isBreak || start < 0) continue;
            words.Add(new Word(text[start..i], start + 1));
            start = -1;
        }
        return words;
    }
}
