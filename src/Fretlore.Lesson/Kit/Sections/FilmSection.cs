using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Lesson.Captions;
using Fretlore.Lesson.Diagrams;
using Fretlore.Lesson.Film;
using Fretlore.Lesson.Plans;
using Fretlore.Lesson.Prompter;

namespace Fretlore.Lesson.Kit.Sections;

/// <summary>What a teacher films with: the prompter, the cue sheet, chapters and description for the video, captions for the whole film and for each step.</summary>
internal sealed class FilmSection : IKitSection
{
    public string Doing => "Planning the film";

    public double Weight => 0.4;

    public SectionResult Make(KitSource source, Action<double> progress)
    {
        if (source.Film is FilmPlanResult.Refused refused) return new SectionResult.Made([], $"There is nothing to film with: {refused.Reason} {refused.Remedy}");
        var plan = ((FilmPlanResult.Made)source.Film).Plan;
        var files = ImmutableArray.CreateBuilder<KitFile>();
        files.Add(KitFile.Text("film/prompter.html", "What to say, in large letters that scroll in time; open it in a browser beside the camera",
            PrompterPage.Write(source.Song, plan, new StepDiagrams(source.Song, source.Hands))));
        files.Add(KitFile.Text("film/cues.md", "The cue sheet: each step's time, first words, and what is played how fast", CueSheet.Write(source.Song, plan)));
        if (plan.Steps.Count == 0) return new SectionResult.Made(ForTheTeacher(files), [.. plan.Remarks]);

        files.Add(KitFile.Text("film/chapters.txt", "The film's chapters; put the recording's times in for captions that fit it", ChapterList.Write(FilmSegment.Of(plan))));
        files.Add(KitFile.Text("film/description.txt", "The text to put under the video", VideoDescription.Write(source.Song, plan)));
        var film = CaptionMaker.OfFilm(plan);
        files.Add(KitFile.Text("film/captions.vtt", "Captions of the whole film, as planned (WebVTT)", WebVtt.Write(film)));
        files.AddRange(StepCaptions(plan));
        return new SectionResult.Made(ForTheTeacher(files), [.. plan.Remarks.Concat(film.Problems)]);
    }

    private static ImmutableArray<KitFile> ForTheTeacher(IEnumerable<KitFile> files) => [.. files.Select(file => file with { Audience = Audience.Teacher })];

    private static IEnumerable<KitFile> StepCaptions(FilmPlan plan)
    {
        var segments = FilmSegment.Of(plan);
        for (var i = 1; i < segments.Count; i++)
        {
            var track = CaptionMaker.OfSegment(segments[i]);
            if (track.Captions.Count == 0) continue;
            var path = string.Create(CultureInfo.InvariantCulture, $"film/captions/{i:00}-{KitFile.NameOfTitle(segments[i].Title)}.vtt");
            yield return KitFile.Text(path, $"Captions of “{segments[i].Title}” alone, from its own start on", WebVtt.Write(track));
        }
    }
}
