using System.CommandLine;
using System.Globalization;
using Fretlore.Cli.Files;
using Fretlore.Cli.Output;
using Fretlore.Engraving.Output;
using Fretlore.Lesson.Overlays;
using Fretlore.Score;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore overlay</c>: makes the pictures to lay over a lesson's film.</summary>
internal static class OverlayVerb
{
    private sealed record Asked(string Sheet, string Output, int? Step, int Rate, string Frame, string Ink, bool NoVideo);

    public static Verb Make(Surroundings surroundings)
    {
        var sheet = new Argument<string>("SHEET") { Description = "The sheet, NAME.lore; - reads it from the standard input." };
        var output = new Option<string>("--output", "-o") { Description = "A new folder to make.", HelpName = "FOLDER", Required = true };
        var step = new Option<int?>("--step") { Description = "Only this step of the plan, by its number.", HelpName = "N" };
        var rate = new Option<int>("--fps") { Description = "Frames a second of the film.", DefaultValueFactory = _ => 30 };
        rate.AcceptOnlyFromAmong([.. FilmFrame.Rates.Select(r => r.ToString(CultureInfo.InvariantCulture))]);
        var frame = new Option<string>("--frame") { Description = "The film's frame.", DefaultValueFactory = _ => "16:9" };
        frame.AcceptOnlyFromAmong([.. FilmFrame.All.Select(f => f.Name)]);
        var ink = new Option<string>("--ink") { Description = "White over a dark film, black over a bright one.", DefaultValueFactory = _ => "white" };
        ink.AcceptOnlyFromAmong("white", "black");
        var noVideo = new Option<bool>("--no-video") { Description = "Pictures only; else ffmpeg, where it is installed, makes a clear video of each moving tab too." };
        var verb = new Verb(
            "overlay", "Make clear pictures to lay over a lesson's film: a moving tab for each speed of each step, and shapes, exact to the frame.",
            "fretlore overlay my-song.lore --step 1 -o overlays", "fretlore overlay my-song.lore --fps 25 --frame 9:16 --ink black -o overlays") { sheet, output, step, rate, frame, ink, noVideo };
        verb.SetAction(parsed => Run(surroundings, new Asked(
            parsed.GetRequiredValue(sheet), parsed.GetRequiredValue(output), parsed.GetValue(step), parsed.GetRequiredValue(rate),
            parsed.GetRequiredValue(frame), parsed.GetRequiredValue(ink), parsed.GetValue(noVideo))));
        return verb;
    }

    private static int Run(Surroundings surroundings, Asked asked)
    {
        if (OpenedSheet.Open(surroundings, asked.Sheet, "No overlays were made", out var code) is not { } opened) return code;
        if (opened.PlanFilm(surroundings, null, out code) is not { } plan) return code;
        if (asked.Step is { } step && (step < 1 || step > plan.Steps.Count))
        {
            return WrongUse.Write(surroundings.Error, $"the film has no step {step}.", $"Its steps are 1 to {plan.Steps.Count}; `fretlore lesson` prints them.");
        }
        var frame = FilmFrame.All.Single(f => f.Name == asked.Frame);
        var overlays = opened.Workspace.PlanOverlays(plan, frame, asked.Rate, asked.Step);
        if (overlays.Tabs.Length + overlays.Shapes.Length == 0) return WrongUse.Write(surroundings.Error, "there is nothing to lay over this film: no step plays a riff.", plan.Remarks.Count > 0 ? string.Join(' ', plan.Remarks) : "Choose another step, or teach a riff that has notes.");
        if (OutputPlace.RefuseFolder(surroundings, asked.Output, path => OverlayFolder.IsFree(path) ? null : ($"{asked.Output} is already there and was left as it is.", "Name a new folder with -o.")) is { } unfit) return unfit;
        return Write(surroundings, asked, opened.Song, overlays, frame);
    }

    private static int Write(Surroundings surroundings, Asked asked, Song song, OverlayPlan overlays, FilmFrame frame)
    {
        var folder = new OverlayFolder(surroundings.PathOf(asked.Output));
        var ground = asked.Ink == "white" ? PictureGround.ClearUnderWhiteInk : PictureGround.Clear;
        using var stop = new StopSignal();
        try
        {
            var written = folder.Write(song, overlays, frame, asked.Rate, ground, said => surroundings.Error.WriteLine(said), stop.Token);
            surroundings.Out.WriteLine($"{asked.Output}: {written} frames and {overlays.Shapes.Length} pictures, each with its times beside it.");
            if (!asked.NoVideo && overlays.Tabs.Length > 0)
            {
                var videos = folder.Encode(overlays, asked.Rate, stop.Token);
                surroundings.Out.WriteLine(videos is { } count
                    ? $"{count} clear videos (.mov), one beside each folder of frames."
                    : "No videos: ffmpeg is not installed, or could not make them. The frames are all there.");
            }
            return ExitCode.Fine;
        }
        catch (OperationCanceledException)
        {
            surroundings.Error.WriteLine("Stopped; nothing was written.");
            return ExitCode.Stopped;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return WrongUse.Write(surroundings.Error, $"{asked.Output} can't be written: {Reason.Of(e)}", "Make room, or choose another folder with -o.");
        }
    }
}
