using CsCheck;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Output;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.Overlays;
using Fretlore.Lesson.Plans;
using Fretlore.Lesson.Steps;
using Fretlore.Lesson.Subjects;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Tests.Songs;
using SkiaSharp;

namespace Fretlore.Tests.Lesson.Overlays;

public class OverlayFacts
{
    private static readonly FontLibrary Fonts = new();

    private static readonly Song Song = Sheets.Song(Sheets.Top + """
        riff main
          times 2{ @6 E 0 0 3 0 @5 S 5,7,5 4 @6 Q 5 | }

        section All
          guitar  main

        """);

    [Fact]
    public void Moment_IsInTheFrameThatIsShownWhenItComes() =>
        Gen.Select(Gen.OneOf(FilmFrame.Rates.Select(Gen.Const).ToArray()), Gen.Int[1, 4000], Gen.Int[1, 400], Gen.Int[0, 5000], Gen.Int[1, 64], Gen.Int[0, 8])
        .Sample((rate, tenthsAMinute, percent, numerator, denominator, before) =>
    {
        var tempo = new Tempo(new NoteValue(ValueBase.Quarter), tenthsAMinute / 10m);
        var clock = new FrameClock([(Beats.Zero, tempo)], percent, rate, Beats.Of(before));
        // Seconds are quarters times 60 / (tempo * percent / 100): frames, as one fraction of whole numbers.
        var above = (Int128)60 * 1000 * (numerator + (Int128)before * denominator) * rate;
        var below = (Int128)tenthsAMinute * percent * denominator;
        Assert.Equal((long)(above / below), clock.FrameAt(Beats.Of(numerator, denominator)));
        Assert.Equal((long)((above + below - 1) / below), clock.FramesTo(Beats.Of(numerator, denominator)));
    }, iter: 2000);

    [Fact]
    public void TempoThatChanges_IsFollowedWithoutRounding()
    {
        // Four quarters at 90 and three at 70: 60*4/90 + 60*3/70 = 110/21 seconds.
        var clock = new FrameClock([(Beats.Zero, Of(90)), (Beats.Of(4), Of(70))], 100, 30, Beats.Zero);
        Assert.Equal(new ExactSeconds(110, 21), clock.SecondsAt(Beats.Of(7)));
        Assert.Equal(157, clock.FrameAt(Beats.Of(7)));
        Assert.Equal(158, clock.FramesTo(Beats.Of(7)));
    }

    [Theory]
    [InlineData(24)]
    [InlineData(25)]
    [InlineData(30)]
    [InlineData(60)]
    public void Cursor_IsAtEachNoteWithinTheFrameOfItsOnset(int rate)
    {
        using var overlay = Overlay(rate, 60);
        var motion = overlay.Motion;
        // Two times through a bar that is played twice: nine onsets each.
        Assert.Equal(36, motion.Moments.Length);
        foreach (var moment in motion.Moments)
        {
            Assert.True(motion.XAt(moment.Frame) <= moment.X + 1e-6 && moment.X < motion.XAt(moment.Frame + 1) + 1e-6, $"{moment} is not under the cursor in its frame");
        }
        // Five bars of four quarters at 60 percent of 120: 16 2/3 seconds, the last frame begun counts.
        Assert.Equal((50 * rate + 2) / 3, overlay.FrameCount);
        // The count-in is a bar: the first note comes at its end.
        Assert.Equal(10 * rate / 3, motion.Moments[0].Frame);
    }

    [Theory]
    [MemberData(nameof(DemoSongs.Names), MemberType = typeof(DemoSongs))]
    public void EveryRiffOfADemo_PassesTheCursorInTheFrameThatItSoundsIn(string name)
    {
        var song = DemoSongs.Load(name);
        foreach (var (riff, percent) in song.Riffs.SelectMany(riff => (IEnumerable<(Riff, int)>)[(riff, 100), (riff, 60)]))
        {
            var tempo = song.Bars[0].Tempos.Count > 0 ? song.Bars[0].Tempos[0].Tempo : Tempo.Default;
            // The times that sound and the practice page's cursor go by, a bar of counting in later.
            var strip = RiffSong.Of(song, UnrolledRiff.Of(riff, 1), tempo);
            var times = Performer.Play(strip).Tempo;
            var countIn = strip.Bars[0].Meter.Length.ToDouble() * 60 / (double)tempo.PerMinute / tempo.Beat.Length.ToDouble();
            foreach (var rate in FilmFrame.Rates)
            {
                using var overlay = TabOverlay.Of(song, riff, new PlayThrough(percent, tempo with { PerMinute = tempo.PerMinute * percent / 100 }, 1, 0), FilmFrame.All[0], rate, Fonts, PictureGround.Clear);
                foreach (var moment in overlay!.Motion.Moments)
                {
                    var sounds = (countIn + times.SecondsAt(moment.At)) * 100 / percent;
                    Assert.InRange(sounds, moment.Frame / (double)rate - 1e-9, (moment.Frame + 1) / (double)rate + 1e-9);
                }
            }
        }
    }

    [Fact]
    public void Frames_AreTheSameBytesTwice_AndShowNothingOutsideTheSafeArea()
    {
        foreach (var frame in FilmFrame.All)
        {
            using var overlay = Overlay(25, 100, frame);
            byte[] Bytes(long number)
            {
                using var stream = new MemoryStream();
                overlay.Write(number, stream);
                return stream.ToArray();
            }
            Assert.Equal(Bytes(70), Bytes(70));
            Assert.NotEqual(Bytes(70), Bytes(71));
            using var picture = SKBitmap.Decode(Bytes(70));
            Assert.Equal((frame.Width, frame.Height), (picture.Width, picture.Height));
            var inked = Inked(picture);
            Assert.True(inked.Left >= frame.Left && inked.Top >= frame.Top && inked.Right <= frame.Right && inked.Bottom <= frame.Bottom, $"{frame.Name}: {inked}");
            Assert.True(inked.Width > frame.SafeWidth / 2);
        }
    }

    [Fact]
    public void Pictures_OfAStep_StandInTheSafeArea_FromTheSentenceThatNamesThem()
    {
        var song = DemoSongs.Load("salt-furnace.lore");
        song = song with { Lesson = song.Lesson! with { Budget = null } };
        var hands = HandPlanner.Plan(song);
        var film = Assert.IsType<FilmPlanResult.Made>(FilmPlanner.Plan(Performer.Play(song), SongReader.Read(song), hands)).Plan;
        foreach (var frame in FilmFrame.All)
        {
            var overlays = OverlayPlan.Of(song, hands, film, frame, 25);
            var chorus = overlays.Shapes.Where(s => s.Path.StartsWith("04-chorus-shapes/", StringComparison.Ordinal)).ToArray();
            Assert.Equal(["ring A", "ring F", "ring D", "ring G"], chorus.Select(s => s.Title));
            for (var i = 1; i < chorus.Length; i++) Assert.Equal(chorus[i - 1].To, chorus[i].From);
            using var stream = new MemoryStream();
            PngWriter.Write(chorus[0].Picture, Fonts, 1, PictureGround.ClearUnderWhiteInk, stream);
            using var picture = SKBitmap.Decode(stream.ToArray());
            var inked = Inked(picture);
            Assert.True(inked.Left >= frame.Left && inked.Top >= frame.Top && inked.Right <= frame.Right && inked.Bottom <= frame.Bottom, $"{frame.Name}: {inked}");
        }
        Assert.Equal(["01-main-riff/tab-060", "01-main-riff/tab-080", "01-main-riff/tab-100"], OverlayPlan.Of(song, hands, film, FilmFrame.All[0], 25, 1).Tabs.Select(t => t.Folder));
    }

    private static TabOverlay Overlay(int rate, int percent, FilmFrame? frame = null)
    {
        var play = new PlayThrough(percent, Of(120 * percent / 100m), 2, 0);
        return TabOverlay.Of(Song, Song.Riffs[0], play, frame ?? FilmFrame.All[0], rate, Fonts, PictureGround.Clear)!;
    }

    private static Tempo Of(decimal perMinute) => new(new NoteValue(ValueBase.Quarter), perMinute);

    private static SKRectI Inked(SKBitmap picture)
    {
        int left = int.MaxValue, top = int.MaxValue, right = -1, bottom = -1;
        for (var y = 0; y < picture.Height; y++)
        {
            for (var x = 0; x < picture.Width; x++)
            {
                if (picture.GetPixel(x, y).Alpha == 0) continue;
                (left, top, right, bottom) = (Math.Min(left, x), Math.Min(top, y), Math.Max(right, x + 1), Math.Max(bottom, y + 1));
            }
        }
        return new SKRectI(left, top, right, bottom);
    }
}
