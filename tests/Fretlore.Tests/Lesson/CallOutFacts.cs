using CsCheck;
using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.CallOuts.ReadingBack;

namespace Fretlore.Tests.Lesson;

public class CallOutFacts
{
    [Theory]
    [InlineData(StringNaming.LowString)]
    [InlineData(StringNaming.Number)]
    [InlineData(StringNaming.Pitch)]
    public void EveryRealRiff_ReadBackFromItsWords_IsTheRiff(StringNaming naming)
    {
        var song = RealRiffs.Song;
        var style = new CallOutStyle(naming);
        foreach (var callOut in CallOutWriter.For(song, null, style))
        {
            TestContext.Current.TestOutputHelper!.WriteLine($"{callOut.SpokenName}\n  H {callOut.Headline}\n  W {callOut.WalkThrough}\n  N {callOut.NoteByNote}");
            Assert.Null(CallOutCheck.Problem(callOut, song, style));
        }
    }

    [Fact]
    public void AnyRiff_ReadBackFromItsWords_IsTheRiff() => Gen.Select(GeneratedRiffs.Any, Gen.Enum<StringNaming>()).Sample((riff, naming) =>
    {
        var song = RealRiffs.Song with { Riffs = [riff], Shapes = [] };
        var style = new CallOutStyle(naming);
        var callOut = CallOutWriter.For(song, null, style)[0];
        var problem = CallOutCheck.Problem(callOut, song, style);
        Assert.True(problem is null, $"{problem}\nW {callOut.WalkThrough}\nN {callOut.NoteByNote}");
    }, iter: 1000, print: _ => "a riff");
}
