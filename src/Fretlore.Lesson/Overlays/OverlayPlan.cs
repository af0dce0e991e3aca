using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Engraving.Drawing;
using Fretlore.Lesson.Diagrams;
using Fretlore.Lesson.Film;
using Fretlore.Lesson.Kit;
using Fretlore.Lesson.Plans;
using Fretlore.Lesson.Steps;
using Fretlore.Lesson.Subjects;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Overlays;

/// <summary>A moving tab to make: one riff of a step at one of its speeds.</summary>
/// <param name="Folder">Where it goes, such as <c>01-main-riff/tab-060</c>.</param>
/// <param name="Riff">What is played.</param>
/// <param name="Play">How fast and how often.</param>
public sealed record TabToMake(string Folder, Riff Riff, PlayThrough Play);

/// <summary>A picture of a shape, or of a riff's place on the neck, and when it is shown.</summary>
/// <param name="Path">Where it goes.</param>
/// <param name="Title">What it shows.</param>
/// <param name="Picture">The frame, one unit a pixel.</param>
/// <param name="From">The first frame it is shown in, from the step's start.</param>
/// <param name="To">The frame from which on it is not.</param>
public sealed record ShapeToMake(string Path, string Title, DrawnPage Picture, long From, long To);

/// <summary>All overlays of a film's steps.</summary>
/// <param name="Tabs">Moving tabs.</param>
/// <param name="Shapes">Pictures.</param>
public sealed record OverlayPlan(ImmutableArray<TabToMake> Tabs, ImmutableArray<ShapeToMake> Shapes)
{
    // Of the safe width, and of the safe height for the tallest of pictures.
    private const double PictureShare = 0.34;

    /// <param name="song">The song.</param>
    /// <param name="hands">Its hand plan, for the fingers on pictures.</param>
    /// <param name="plan">The film.</param>
    /// <param name="frame">The film's frame.</param>
    /// <param name="framesASecond">One of <see cref="FilmFrame.Rates"/>.</param>
    /// <param name="onlyStep">One step by its number from 1; null for all.</param>
    public static OverlayPlan Of(Song song, Fretlore.Hands.Plans.SongHands hands, FilmPlan plan, FilmFrame frame, int framesASecond, int? onlyStep = null)
    {
        var segments = FilmSegment.Of(plan);
        var tabs = ImmutableArray.CreateBuilder<TabToMake>();
        var shapes = ImmutableArray.CreateBuilder<ShapeToMake>();
        var diagrams = new StepDiagrams(song, hands);
        for (var i = 1; i < segments.Count; i++)
        {
            if (onlyStep is { } only && only != i) continue;
            var folder = string.Create(CultureInfo.InvariantCulture, $"{i:00}-{KitFile.NameOf(segments[i].Title)}");
            var step = segments[i].Step!;
            tabs.AddRange(TabsOf(folder, step));
            shapes.AddRange(ShapesOf(folder, segments[i], plan.Rate, diagrams.Of(step.Step), frame, framesASecond));
        }
        return new OverlayPlan(tabs.ToImmutable(), shapes.ToImmutable());
    }

    private static IEnumerable<TabToMake> TabsOf(string folder, PlannedStep step)
    {
        var lines = step.Step.Subjects.Where(s => s.Kind is SubjectKind.Riff or SubjectKind.Passage).SelectMany(s => s.Lines).Where(l => l.Riff.Content.Any(bar => bar.Notes.Any())).ToArray();
        foreach (var play in step.Version.Plays)
        {
            foreach (var line in lines)
            {
                var name = lines.Length == 1 ? "tab" : "tab-" + KitFile.NameOf(line.Riff.Name);
                yield return new TabToMake(string.Create(CultureInfo.InvariantCulture, $"{folder}/{name}-{play.Percent:000}"), line.Riff, play);
            }
        }
    }

    // A shape is shown from the sentence that names it until the next one is; where none is named, each has an equal share of what is said.
    private static IEnumerable<ShapeToMake> ShapesOf(string folder, FilmSegment segment, SpeakingRate rate, ValueList<NeckBox> boxes, FilmFrame frame, int framesASecond)
    {
        var starts = new double?[boxes.Count];
        var at = 0.0;
        foreach (var sentence in segment.Sentences)
        {
            for (var b = 0; b < boxes.Count; b++)
            {
                if (sentence.Contains($"the {boxes[b].Title} shape", StringComparison.OrdinalIgnoreCase)) starts[b] ??= at;
            }
            at += rate.Seconds(sentence);
        }
        for (var b = 0; b < boxes.Count; b++)
        {
            var from = starts[b] ?? segment.SaySeconds * b / boxes.Count;
            var to = Enumerable.Range(0, boxes.Count).Select(other => starts[other] ?? segment.SaySeconds * other / boxes.Count).Where(s => s > from).DefaultIfEmpty(segment.Seconds).Min();
            var path = string.Create(CultureInfo.InvariantCulture, $"{folder}/shape-{b + 1:00}-{KitFile.NameOf(boxes[b].Title)}.png");
            yield return new ShapeToMake(path, boxes[b].Title, Picture(boxes[b], frame), Frame(from), Frame(to));
        }

        long Frame(double seconds) => (long)Math.Floor(seconds * framesASecond + 1e-9);
    }

    // In the upper right corner of the safe area.
    private static DrawnPage Picture(NeckBox box, FilmFrame frame)
    {
        var unit = new NeckMarks(1);
        var pitch = Math.Min(frame.SafeWidth * (frame.Height > frame.Width ? 0.8 : PictureShare) / unit.WidthOf(box), (frame.Bottom - frame.Top) * PictureShare / unit.HeightOf(box));
        var marks = new NeckMarks(pitch);
        double left = frame.Right - marks.WidthOf(box), top = frame.Top + pitch * 1.6;
        var title = new Text(box.Title, new Point(left + pitch, frame.Top + pitch * 1.1), pitch * 1.1, Face.SansBold);
        return new DrawnPage(frame.Width, frame.Height, 1, marks.Draw(box, left, top).Prepend(title).ToValueList());
    }
}
