using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout;
using Fretlore.Engraving.Output;
using Fretlore.Lesson.Steps;
using Fretlore.Lesson.Subjects;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Lesson.Overlays;

/// <summary>A strip of tablature that passes a cursor while a riff is played at a speed: every frame of it, to lay over a film.</summary>
public sealed class TabOverlay : IDisposable
{
    // Of the safe width, from its left: what comes is seen longer than what has gone.
    private const double CursorShare = 0.3;

    // Of the frame's width; the strip's staff space follows from it.
    private const double SpaceShare = 1 / 100.0;

    private readonly FrameWriter writer;
    private readonly TabMotion motion;
    private readonly FilmFrame frame;
    private readonly double space;
    private readonly double height;

    private TabOverlay(FrameWriter writer, TabMotion motion, FilmFrame frame, double space, double height) =>
        (this.writer, this.motion, this.frame, this.space, this.height) = (writer, motion, frame, space, height);

    public long FrameCount => motion.FrameCount;

    /// <summary>The onsets, in order: frame, seconds by frames, bar as played, quarter notes from the first bar.</summary>
    public IEnumerable<(long Frame, int Bar, string At)> Onsets => motion.Moments.Select(m => (m.Frame, m.Bar, m.At.ToString()));

    internal TabMotion Motion => motion;

    /// <param name="song">The song.</param>
    /// <param name="riff">What is played.</param>
    /// <param name="play">At which speed and how often.</param>
    /// <param name="frame">The film's frame.</param>
    /// <param name="framesASecond">One of <see cref="FilmFrame.Rates"/>.</param>
    /// <param name="fonts">Fonts to draw with.</param>
    /// <param name="ground">What colour the ink is.</param>
    /// <returns>Null when there is nothing to engrave.</returns>
    public static TabOverlay? Of(Song song, Riff riff, PlayThrough play, FilmFrame frame, int framesASecond, FontLibrary fonts, PictureGround ground)
    {
        var tempo = play.Tempo with { PerMinute = play.Tempo.PerMinute * 100 / play.Percent };
        var unrolled = UnrolledRiff.Of(riff, play.Times);
        var strip = RiffSong.Of(song, unrolled, tempo) with { NoteCount = unrolled.Content.Sum(bar => bar.Notes.Count()) };
        if (Engrave(strip, fonts) is not { } page) return null;
        var played = Performer.Play(strip);
        var clock = new FrameClock(played.Tempo.Changes.Select(c => (c.At, c.Tempo)), play.Percent, framesASecond, unrolled.Bars[0].Meter.Length);
        var space = frame.Width * SpaceShare * (frame.Height > frame.Width ? 1.5 : 1);
        var (top, bottom) = InkOf(page);
        var height = (bottom - top) * space;
        var still = Still(frame, height, space);
        return new TabOverlay(new FrameWriter(page, still, fonts, frame.Width, frame.Height, ground), TabMotion.Of(page, played, clock), frame, space, height) { Top = top };
    }

    private double Top { get; init; }

    /// <summary>Writes a frame as a PNG picture.</summary>
    /// <param name="number">From 0.</param>
    /// <param name="to">Takes it; left open.</param>
    public void Write(long number, Stream to)
    {
        var cursor = frame.SafeWidth * CursorShare / space;
        var window = new Box(frame.Left, frame.Bottom - height, frame.Right, frame.Bottom);
        writer.Write(new FrameView(motion.XAt(number) - cursor, Top, space, window), to);
    }

    public void Dispose() => writer.Dispose();

    // The cursor: a line over the height of the strip.
    private static DrawnPage Still(FilmFrame frame, double height, double space)
    {
        var x = frame.Left + frame.SafeWidth * CursorShare;
        ValueList<Mark> marks = [new Line(new Point(x, frame.Bottom - height), new Point(x, frame.Bottom), space * 0.25)];
        return new DrawnPage(frame.Width, frame.Height, 1, marks);
    }

    // One system on paper as wide as it takes.
    private static DrawnPage? Engrave(Song strip, FontLibrary fonts)
    {
        const double Space = 1.6;
        var engraver = new PageEngraver(fonts.Music, fonts.Texts);
        var reading = SongReader.Read(strip);
        var events = strip.Parts[0].Bars.Sum(bar => bar.Strands.Sum(s => s.Events.Count)) + 4 * strip.Bars.Count;
        for (var width = Space * (60 + 5 * events); width < Space * 200 * (60 + events); width *= 2)
        {
            var asked = new PageOptions { Paper = new Paper(width, 400), StaffSpace = Space, Show = Notation.Tab, ChordSymbols = false, Subject = "Overlay" };
            if (engraver.Engrave(strip, reading, asked) is not EngravingResult.Pages { Document.Pages: [var page] }) continue;
            var systems = page.Marks.OfType<Group>().Where(g => g.Id is { } id && id.StartsWith("system-", StringComparison.Ordinal)).ToArray();
            if (systems.Length == 1) return page with { Marks = [systems[0]] };
        }
        return null;
    }

    private static (double Top, double Bottom) InkOf(DrawnPage page)
    {
        var (top, bottom) = (double.MaxValue, double.MinValue);
        Measure(page.Marks);
        return (top - 1, bottom + 1);

        void Measure(ValueList<Mark> marks)
        {
            foreach (var mark in marks)
            {
                switch (mark)
                {
                    case Group group: Measure(group.InPlace); break;
                    case Line line: Take(line.From.Y, line.To.Y); break;
                    case Text text: Take(text.At.Y - text.Size, text.At.Y + text.Size * 0.3); break;
                    case Glyph glyph: Take(glyph.At.Y - glyph.Scale, glyph.At.Y + glyph.Scale); break;
                    case Curve curve: Take(curve.From.Y, curve.To.Y); break;
                    case Slur slur: Take(Math.Min(slur.From.Y, slur.Control1.Y), Math.Max(slur.To.Y, slur.Control2.Y)); break;
                }
            }
        }

        void Take(double a, double b) => (top, bottom) = (Math.Min(top, Math.Min(a, b)), Math.Max(bottom, Math.Max(a, b)));
    }
}
