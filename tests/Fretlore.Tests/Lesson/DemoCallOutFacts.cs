using Fretlore.Binding;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.CallOuts.ReadingBack;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Syntax;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Lesson;

public class DemoCallOutFacts
{
    public static TheoryData<string> Demos =>
        [.. Directory.GetFiles(Path.Combine(Repository.Root, "demo"), "*.lore").Order().Select(p => Path.GetFileName(p))];

    [Theory]
    [MemberData(nameof(Demos))]
    public void EveryRiffOfADemo_ReadBackFromItsWords_IsTheRiff(string name)
    {
        var song = Song(name);
        var problems = new List<string>();
        foreach (var style in Enum.GetValues<StringNaming>().Select(n => new CallOutStyle(n)))
        {
            var hands = HandPlanner.Plan(song);
            foreach (var callOut in CallOutWriter.For(song, SongReader.Read(song), style, hands))
            {
                if (style.Strings == StringNaming.LowString) TestContext.Current.TestOutputHelper!.WriteLine($"{callOut.SpokenName}\n  H {callOut.Headline}\n  W {callOut.WalkThrough}\n  N {callOut.NoteByNote}");
                if ((callOut.Caution ?? CallOutCheck.Problem(callOut, song, style, hands)) is { } problem) problems.Add($"{callOut.Riff}: {problem}");
            }
        }
        Assert.NotEmpty(song.Riffs);
        Assert.Empty(problems);
    }

    internal static Song Song(string name)
    {
        var text = new SourceText(File.ReadAllText(Path.Combine(Repository.Root, "demo", name)));
        return SongBinder.Bind(Sheet.Parse(text)).Song!;
    }
}
