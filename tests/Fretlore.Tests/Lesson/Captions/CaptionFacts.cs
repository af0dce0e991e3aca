using CsCheck;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.Captions;
using Fretlore.Lesson.Film;
using Fretlore.Lesson.Plans;
using Fretlore.Performance;
using Fretlore.Reading;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Lesson.Captions;

public class CaptionFacts
{
    private static readonly Gen<string> Sentence = Gen.Char["abcdefgh,"].Array[1, 60].Array[1, 24].Select(words =>
        string.Join(' ', words.Select(w => new string(w).Trim(',')).Where(w => w.Length > 0).Append("end")) + ".");

    [Fact]
    public void Captions_OfAnyWords_HoldEveryLimit_AndLoseNoWordThatThereIsTimeFor() =>
        Gen.Select(Sentence.Array[0, 8], Gen.Int[1, 200], Gen.Int[0, 20]).Sample((sentences, saySeconds, playSeconds) =>
    {
        var segment = Segment(sentences, saySeconds, playSeconds);
        var track = CaptionMaker.OfSegment(segment, 5_000, 5_000 + (saySeconds + playSeconds) * 1000L);
        Holds(track, 5_000, 5_000 + (saySeconds + playSeconds) * 1000L);
        if (track.Problems.Count > 0) return;
        var said = string.Concat(sentences).Replace(" ", "", StringComparison.Ordinal);
        var shown = string.Concat(track.Captions.SelectMany(c => c.Lines).Where(l => l[0] != '[')).Replace(" ", "", StringComparison.Ordinal);
        Assert.Equal(said, shown);
    }, iter: 500);

    [Theory]
    [MemberData(nameof(DemoSongs.Names), MemberType = typeof(DemoSongs))]
    public void Captions_OfADemo_HoldEveryLimit_ForTheFilmAndForEachStep(string name)
    {
        var plan = Plan(name);
        var film = CaptionMaker.OfFilm(plan);
        Assert.Empty(film.Problems);
        Holds(film, 0, (long)Math.Ceiling(plan.Seconds * 1000));
        foreach (var segment in FilmSegment.Of(plan)) Holds(CaptionMaker.OfSegment(segment), 0, (long)Math.Ceiling(segment.Seconds * 1000));
    }

    [Fact]
    public void Captions_BreakAtTheEndsOfSentencesAndPhrases()
    {
        var cuts = CaptionCutter.Of(CaptionCutter.Words(["Bar one.", "One finger across the low three strings: gallop on the open strings, palm-muted.", "Ten, accented for a beat."]));
        Assert.Equal(
            ["Bar one. One finger across the low three | strings: gallop on the open strings,", "palm-muted. Ten, accented for a beat."],
            cuts.Select(c => string.Join(" | ", c.Lines)));
    }

    [Fact]
    public void WordsSpokenTooFastToRead_AreSaidToBeLeftOut()
    {
        var track = CaptionMaker.OfSegment(Segment(["One two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen."], 2, 0));
        Assert.Contains("is spoken faster than it can be read", Assert.Single(track.Problems));
    }

    [Fact]
    public void Caption_ComesWithItsWords()
    {
        // Twelve words in twelve seconds: the second sentence's first word is the seventh.
        var track = CaptionMaker.OfSegment(Segment(["One two three four five, six.", "Seven eight nine ten eleven and twelve."], 13, 10), 60_000, 83_000);
        Assert.Equal((60_000L, 73_000L), (track.Captions[0].Start, track.Captions[0].End));
        Assert.Equal(["One two three four five, six.", "Seven eight nine ten eleven and twelve."], track.Captions[0].Lines);
        Assert.Equal(73_000, track.Captions[1].Start);
        var long3 = CaptionMaker.OfSegment(Segment(["One two three four five six seven eight nine ten eleven twelve.", "Thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty."], 20, 0));
        Assert.Equal((12_000L, "Thirteen"), (long3.Captions[1].Start, long3.Captions[1].Lines[0].Split(' ')[0]));
    }

    [Fact]
    public void SilentStep_HasNoCaptions() => Assert.Empty(CaptionMaker.OfSegment(Segment([], 0, 0)).Captions);

    [Fact]
    public void WhatIsPlayed_IsNotedInBrackets()
    {
        var track = CaptionMaker.OfSegment(Segment(["Now listen."], 3, 10));
        Assert.Equal((3_000L, 6_000L, "[Plays it at 60 percent, twice]"), (track.Captions[1].Start, track.Captions[1].End, track.Captions[1].Lines[0]));
    }

    [Fact]
    public void Recording_ThatIsSlowerThanPlanned_StretchesItsCaptions()
    {
        var plan = Plan("salt-furnace.lore");
        var segments = FilmSegment.Of(plan);
        var slow = new RecordedTimes([.. segments.Select(s => s.Start * 1.5 + 7)], plan.Seconds * 1.5 + 7);
        var (planned, recorded) = (CaptionMaker.OfFilm(plan).Captions, CaptionMaker.OfFilm(plan, slow).Captions);
        Assert.Equal(planned.Where(c => c.Lines[0][0] != '[').Select(c => c.Lines), recorded.Where(c => c.Lines[0][0] != '[').Select(c => c.Lines));
        Holds(new CaptionTrack(recorded, []), 7_000, (long)(slow.End * 1000) + 1);
        // A caption whose words were shown longer than they were spoken may begin a little earlier in slow speech.
        Assert.All(planned.Zip(recorded), pair => Assert.InRange(pair.Second.Start, pair.First.Start * 1.5 + 7_000 - 3_000, pair.First.Start * 1.5 + 7_003));
    }

    private static void Holds(CaptionTrack track, long start, long end)
    {
        var last = start;
        foreach (var caption in track.Captions)
        {
            Assert.InRange(caption.Lines.Count, 1, 2);
            Assert.All(caption.Lines, line => Assert.InRange(line.Length, 1, 42));
            Assert.True(caption.Start >= last, "captions overlap");
            Assert.True(caption.End <= end, $"{caption.End} is after {end}");
            Assert.True(caption.Characters * 1000.0 / (caption.End - caption.Start) <= 17.0001, $"{caption} is too fast");
            Assert.True(caption.End - caption.Start >= 1000);
            last = caption.End;
        }
    }

    private static FilmSegment Segment(string[] sentences, double saySeconds, double playSeconds) => new("Test", null, [.. sentences], saySeconds,
        playSeconds > 0 ? [new(60, Fretlore.Music.Tempo.Default, 2, playSeconds)] : [], 0, saySeconds + playSeconds);

    private static FilmPlan Plan(string demo)
    {
        var song = DemoSongs.Load(demo);
        return Assert.IsType<FilmPlanResult.Made>(FilmPlanner.Plan(Performer.Play(song), SongReader.Read(song), HandPlanner.Plan(song))).Plan;
    }
}
