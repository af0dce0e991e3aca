namespace Fretlore.Cli.Json;

/// <summary>What <c>lesson --json</c> prints; times in seconds, rounded to hundredths.</summary>
internal sealed record LessonAnswer(
    string Title, double? Budget, double Seconds, int WordsAMinute, LessonOpening Opening, IReadOnlyList<LessonStepLine> Steps, IReadOnlyList<LeftOutLine> LeftOut,
    IReadOnlyList<string> OneMoreMinute, IReadOnlyList<string> Remarks, IReadOnlyList<OfferLine> AlsoInTheSong);

/// <summary>What is said first.</summary>
internal sealed record LessonOpening(IReadOnlyList<string> Says, double Seconds);

/// <summary>One step as filmed. <c>retune</c> is said before it where the guitar has to be tuned anew.</summary>
internal sealed record LessonStepLine(
    int Step, string Title, IReadOnlyList<string> Teaches, string Length, double Start, double SaySeconds, double PlaySeconds, string Difficulty,
    IReadOnlyList<string> HardBecause, IReadOnlyList<string> Needs, IReadOnlyList<string> Why, IReadOnlyList<string> Retune, IReadOnlyList<string> Says,
    IReadOnlyList<PlayLine> Plays);

/// <summary>One playing, a bar of counting in included.</summary>
internal sealed record PlayLine(int Percent, double QuartersAMinute, int Times, double Seconds);

/// <summary>A step there is no time for.</summary>
internal sealed record LeftOutLine(string Title, IReadOnlyList<string> Teaches, double ShortestSeconds);

/// <summary>Something else that could be taught; <c>teach</c> is what to write in a step.</summary>
internal sealed record OfferLine(string Teach, string Kind, string Difficulty, double SecondsHeard, IReadOnlyList<string> Because);
