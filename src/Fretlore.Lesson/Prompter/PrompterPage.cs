using System.Net;
using System.Text.Json;
using System.Text.Json.Serialization;
using Fretlore.Lesson.Diagrams;
using Fretlore.Lesson.Film;
using Fretlore.Lesson.Plans;
using Fretlore.Lesson.Script;
using Fretlore.Lesson.Steps;
using Fretlore.Score;

namespace Fretlore.Lesson.Prompter;

/// <summary>Writes the page a teacher reads from while filming: one file, without network.</summary>
internal static class PrompterPage
{
    private const string Template = "Fretlore.Lesson.Prompter.prompter.html";

    public static string Write(Song song, FilmPlan plan, StepDiagrams diagrams)
    {
        var chapters = FilmSegment.Of(plan).Select(segment => Chapter(segment, plan.Rate, diagrams)).ToArray();
        var data = JsonSerializer.Serialize(new PrompterData(ChapterList.OneLine(song.Info.Title), chapters), PrompterJson.Default.PrompterData);
        using var template = new StreamReader(typeof(PrompterPage).Assembly.GetManifestResourceStream(Template)!);
        return template.ReadToEnd().ReplaceLineEndings("\n")
            .Replace("{{title}}", WebUtility.HtmlEncode(ChapterList.OneLine(song.Info.Title)), StringComparison.Ordinal)
            .Replace("{{data}}", data, StringComparison.Ordinal);
    }

    private static PrompterChapter Chapter(FilmSegment segment, SpeakingRate rate, StepDiagrams diagrams)
    {
        var lines = new List<PrompterLine>();
        var at = segment.Start;
        foreach (var sentence in segment.Sentences)
        {
            lines.Add(new PrompterLine("say", sentence, Rounded(at), Rounded(rate.Seconds(sentence))));
            at += rate.Seconds(sentence);
        }
        foreach (var play in segment.Plays)
        {
            var text = $"Play at {play.Percent} %: {TempoText.Of(play.Tempo)}. Count a bar in{(play.Times == 2 ? ", then twice through" : "")}.";
            lines.Add(new PrompterLine("play", text, Rounded(at), Rounded(play.Seconds)));
            at += play.Seconds;
        }
        var pictures = segment.Step is { } planned ? diagrams.Of(planned.Step).Select(box => new PrompterPicture(box.Title, NeckSvg.Of(box))) : [];
        return new PrompterChapter(ChapterList.OneLine(segment.Title), [.. lines], [.. pictures]);
    }

    private static double Rounded(double seconds) => Math.Round(seconds, 3);
}

/// <summary>What the page shows; times in seconds from the film's start.</summary>
internal sealed record PrompterData(string Title, IReadOnlyList<PrompterChapter> Chapters);

internal sealed record PrompterChapter(string Title, IReadOnlyList<PrompterLine> Lines, IReadOnlyList<PrompterPicture> Pictures);

/// <summary>Something to say, or to play.</summary>
internal sealed record PrompterLine(string Kind, string Text, double At, double Seconds);

internal sealed record PrompterPicture(string Title, string Svg);

// The default encoder writes < and & as escapes, so that no text can end the script it stands in.
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(PrompterData))]
internal sealed partial class PrompterJson : JsonSerializerContext;
