using Fretlore.Lesson.Film;

namespace Fretlore.Tests.Lesson.Film;

public class ChapterListFacts
{
    private static readonly Fretlore.Music.ValueList<FilmSegment> Segments = [Segment("Opening", 0, 12), Segment("Main riff", 12, 60), Segment("Solo", 72, 30)];

    [Fact]
    public void ChaptersAsPlanned_ReadBack_AreThePlan()
    {
        Assert.Equal("0:00 Opening\n0:12 Main riff\n1:12 Solo\n", ChapterList.Write(Segments));
        var (times, problem) = ChapterList.Read(ChapterList.Write(Segments), Segments);
        Assert.Null(problem);
        Assert.Equal([0, 12, 72], times!.Starts);
        Assert.Equal(102, times.End);
    }

    [Fact]
    public void Times_MayHaveHoursAndFractions_AndAnEnd()
    {
        var (times, problem) = ChapterList.Read("\uFEFF0:01.5  opening\r\n\r\n59:00 MAIN RIFF\r\n1:00:00.25 Solo\r\n1:02:00 End\r\n", Segments);
        Assert.Null(problem);
        Assert.Equal([1.5, 3540, 3600.25], times!.Starts);
        Assert.Equal(3720, times.End);
    }

    [Theory]
    [InlineData("0:00 Opening\nMain riff\n1:12 Solo", 2, "no chapter")]
    [InlineData("0:00 Opening\n0:75 Main riff\n1:12 Solo", 2, "no chapter")]
    [InlineData("0:00 Opening\n0:12 Solo", 2, "“Main riff”")]
    [InlineData("0:00 Opening\n0:12 Main riff", 2, "“Solo” and what follows it are missing")]
    [InlineData("0:10 Opening\n0:10 Main riff\n1:12 Solo", 2, "no later than the one before")]
    [InlineData("0:00 Opening\n0:12 Main riff\n1:12 Solo\n1:20 Coda", 4, "this is one more")]
    [InlineData("0:00 Opening\n0:12 Main riff\n1:12 Solo\n1:20 End\n1:30 End", 5, "after the film's end")]
    [InlineData("", 0, "“Opening” and what follows it are missing")]
    public void WhatIsWrong_IsSaidWithItsLine(string text, int line, string says)
    {
        var (times, problem) = ChapterList.Read(text, Segments);
        Assert.Null(times);
        Assert.Equal(line, problem!.Line);
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
    }

    private static FilmSegment Segment(string title, double start, double seconds) => new(title, null, ["Hello."], 1, [], start, seconds);
}
