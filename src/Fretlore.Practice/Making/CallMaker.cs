using Fretlore.Practice.Data;

namespace Fretlore.Practice.Making;

/// <summary>The phrases to answer, where each is played first.</summary>
internal sealed class CallMaker(TheoryMaker theory)
{
    /// <param name="call">The stretch played out.</param>
    /// <param name="sound">The element that holds its sound; null for none.</param>
    /// <returns>The call; null where repeats cut the stretch up, so that it is nowhere played from its start to its end.</returns>
    public CallData? Of(PracticeCall call, string? sound)
    {
        var (played, use) = (call.Played, call.Use);
        if (FirstPlayed(call) is not { } first) return null;
        var (start, end) = (played.Bars[first].StartSeconds, first + use.BarCount < played.Bars.Length ? played.Bars[first + use.BarCount].StartSeconds : played.Seconds);
        var parts = new PartMaker(played, call.Reading, call.Hands, theory);
        return new CallData
        {
            Name = use.RoadMap,
            Part = use.Part,
            Start = Seconds.Rounded(start),
            Phrases = [.. call.Phrases.Select(phrase => new PhraseData(NameOf(phrase.Kind), phrase.Of, first + phrase.FirstBar - 1, phrase.BarCount))],
            Notes = [.. parts.NotesOf(use.Part, start, end)],
            Sound = sound,
        };
    }

    private static int? FirstPlayed(PracticeCall call)
    {
        var (bars, use) = (call.Played.Bars, call.Use);
        for (var i = 0; i + use.BarCount <= bars.Length; i++)
        {
            if (Enumerable.Range(0, use.BarCount).All(bar => bars[i + bar].Bar == use.FirstBar + bar)) return i;
        }
        return null;
    }

    private static string NameOf(PracticePhraseKind kind) => kind switch
    {
        PracticePhraseKind.Fixed => "fixed",
        PracticePhraseKind.Lick => "lick",
        PracticePhraseKind.Answer => "answer",
        PracticePhraseKind.Sequence => "sequence",
        _ => "free",
    };
}
