using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.CallOuts.ReadingBack;

namespace Fretlore.Tests.Lesson;

public class CallOutFacts
{
    [Fact]
    public void EveryRealRiff_ReadBackFromItsWords_IsTheRiff()
    {
        var song = RealRiffs.Song;
        foreach (var callOut in CallOutWriter.For(song))
        {
            TestContext.Current.TestOutputHelper!.WriteLine($"{callOut.SpokenName}\n  H {callOut.Headline}\n  W {callOut.WalkThrough}\n  N {callOut.NoteByNote}\n  {CallOutCheck.Problem(callOut, song)}\n");
        }
        foreach (var callOut in CallOutWriter.For(song)) Assert.Null(CallOutCheck.Problem(callOut, song));
    }
}
