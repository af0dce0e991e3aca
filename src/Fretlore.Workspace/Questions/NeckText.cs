using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Workspace.Questions;

/// <summary>A neck as typed at the prompt: a tuning low to high, and a capo.</summary>
public static class NeckText
{
    private const int MostStrings = 12;
    private const string HowTo = "Type a pitch with its octave for each string from low to high: \"D2 A2 D3 G3 A3 D4\" (C4 is middle C).";

    /// <summary>Reads a neck of 24 frets.</summary>
    /// <param name="tuning">What was typed for the tuning; null for the usual one.</param>
    /// <param name="capo">What was typed for the capo, see <see cref="CapoText"/>; null for none.</param>
    public static Answer<Neck> Read(string? tuning, string? capo = null)
    {
        var neck = new Neck(Tuning.Standard);
        if (tuning is not null)
        {
            var words = Word.In(tuning);
            if (words.Count == 0) return new Misread(tuning, 1, 0, "The tuning is empty.", HowTo);
            if (words.Count > MostStrings)
            {
                return new Misread(tuning, words[MostStrings].Column, 0, $"A tuning has at most {MostStrings} strings.", HowTo);
            }
            var pitches = new List<Pitch>();
            foreach (var word in words)
            {
                if (!Pitch.TryParse(word.Text, out var pitch))
                {
                    var message = NoteName.TryParse(word.Text, out _) ? $"\"{word.Text}\" has no octave." : $"\"{word.Text}\" is not a pitch.";
                    return new Misread(tuning, word.Column, word.Text.Length, message, HowTo);
                }
                pitches.Add(pitch);
            }
            neck = neck with { Tuning = new Tuning(pitches.ToValueList()) };
        }
        if (capo is null) return neck;
        var read = CapoText.Read(capo, neck.StringCount, neck.FretCount);
        return read.Misread is { } misread ? misread : neck with { Capo = read.Value };
    }
}
