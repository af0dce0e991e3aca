namespace Fretlore.Lesson.Steps;

/// <summary>Words from the sheet as sentences, one a breath.</summary>
internal static class Sentences
{
    /// <summary>Split after full stops, question and exclamation marks; the last one gets a full stop if it has no end.</summary>
    public static IEnumerable<string> Of(string text)
    {
        var words = text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        for (int start = 0, i = 0; i < words.Length; i++)
        {
            if (words[i][^1] is not ('.' or '!' or '?') && i + 1 < words.Length) continue;
            var sentence = string.Join(' ', words[start..(i + 1)]);
            yield return sentence[^1] is '.' or '!' or '?' ? sentence : sentence + ".";
            start = i + 1;
        }
    }
}
