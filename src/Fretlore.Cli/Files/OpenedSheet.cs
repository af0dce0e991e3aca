using Fretlore.Cli.Output;
using Fretlore.Lesson.Plans;
using Fretlore.Score;
using Fretlore.Workspace;

namespace Fretlore.Cli.Files;

/// <summary>A sheet that has a song and no errors: what a verb works with.</summary>
/// <param name="Workspace">The sheet through all stages.</param>
/// <param name="Song">Its song.</param>
internal sealed record OpenedSheet(SongWorkspace Workspace, Song Song)
{
    /// <summary>Reads a sheet and says what was found in it.</summary>
    /// <param name="surroundings">Where it is said, on <see cref="Surroundings.Error"/>.</param>
    /// <param name="path">As typed; <see cref="SheetFile.StandardInput"/> for the standard input.</param>
    /// <param name="undone">What does not happen when the sheet has errors, such as "No kit was made".</param>
    /// <param name="code">What the verb answers when there is no song to work with.</param>
    /// <returns>Null when the file can't be read or the sheet has errors.</returns>
    public static OpenedSheet? Open(Surroundings surroundings, string path, string undone, out int code)
    {
        var file = SheetFile.Read(surroundings, path);
        code = file.ExitCode;
        if (file.Wrong is not null)
        {
            FindingPrinter.Write(surroundings.Error, path, file.Findings, surroundings.Colours);
            return null;
        }
        var workspace = SongWorkspace.Open(file.Text);
        FindingPrinter.Write(surroundings.Error, path, workspace.Findings, surroundings.Colours);
        if (!workspace.HasErrors && workspace.Song is { } song) return new OpenedSheet(workspace, song);
        surroundings.Error.WriteLine($"{undone}: {FindingPrinter.Count(workspace.Findings)} in {path}.");
        code = ExitCode.SheetHasErrors;
        return null;
    }

    /// <summary>Plans the film of the sheet's lesson.</summary>
    /// <param name="surroundings">Where it is said why there is no plan.</param>
    /// <param name="budget">Time for the film; null for the sheet's.</param>
    /// <param name="code">What the verb answers when there is no plan.</param>
    public FilmPlan? PlanFilm(Surroundings surroundings, TimeSpan? budget, out int code)
    {
        code = ExitCode.Fine;
        var result = Workspace.PlanFilm(budget);
        if (result is FilmPlanResult.Made { Plan: var plan }) return plan;
        var refused = (FilmPlanResult.Refused)result;
        WrongUse.Write(surroundings.Error, refused.Reason, refused.Remedy);
        code = ExitCode.SheetHasErrors;
        return null;
    }
}
