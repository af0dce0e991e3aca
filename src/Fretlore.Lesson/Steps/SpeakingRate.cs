using Fretlore.Lesson.CallOuts;

namespace Fretlore.Lesson.Steps;

/// <summary>How fast a teacher speaks on film.</summary>
/// <param name="WordsAMinute">Breaths and pauses included.</param>
/// <remarks>130 is what stands for a teacher who has not measured: unhurried speech is usually put at 120 to 150 words a minute (common practice).</remarks>
public readonly record struct SpeakingRate(int WordsAMinute)
{
    public static SpeakingRate Usual => new(130);

    public double Seconds(string sentence) => Words(sentence) * 60.0 / WordsAMinute;

    public double Seconds(Speech speech) => speech.Breaths.Sum(Seconds);

    private static int Words(string text) => text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length;
}
