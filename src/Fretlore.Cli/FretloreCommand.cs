using System.CommandLine;
using Fretlore.Cli.Output;
using Fretlore.Cli.Verbs;

namespace Fretlore.Cli;

/// <summary>The <c>fretlore</c> command: its verbs, and what becomes of wrong use and of bugs.</summary>
internal static class FretloreCommand
{
    /// <summary>Runs one command line and returns its exit code; never throws.</summary>
    public static int Run(IReadOnlyList<string> arguments, Surroundings surroundings)
    {
        try
        {
            return Invoke(arguments, surroundings);
        }
        catch (IOException) when (IsGone(surroundings.Out))
        {
            return ExitCode.Fine; // The reader of a pipe, such as head, has had enough.
        }
#pragma warning disable CA1031 // The last resort of the whole program: anything that gets here is a bug, and is said in one line.
        catch (Exception bug)
#pragma warning restore CA1031
        {
            BugReport.Write(surroundings.Error, arguments, bug);
            return ExitCode.Bug;
        }
    }

    private static int Invoke(IReadOnlyList<string> arguments, Surroundings surroundings)
    {
        var root = new RootCommand("Fretlore: one text sheet for a song in, everything needed to teach it out.")
        {
            KitVerb.Make(surroundings),
            WatchVerb.Make(surroundings),
            LessonVerb.Make(surroundings),
            CaptionsVerb.Make(surroundings),
            ErrataVerb.Make(surroundings),
            OverlayVerb.Make(surroundings),
            CheckVerb.Make(surroundings),
            ExplainVerb.Make(surroundings),
            FormatVerb.Make(surroundings),
            NewVerb.Make(surroundings),
            NameVerb.Make(surroundings),
            ScaleVerb.Make(surroundings),
            ShapesVerb.Make(surroundings),
            HandsVerb.Make(surroundings),
            PagesVerb.Make(surroundings),
            RoadMapVerb.Make(surroundings),
            RetuneVerb.Make(surroundings),
            SoundVerb.Make(surroundings),
            AlignVerb.Make(surroundings),
            StringsVerb.Make(surroundings),
            ImportVerb.Make(surroundings),
            ExportVerb.Make(surroundings),
        };
        HelpWithExamples.On(root, "fretlore new my-song.lore", "fretlore kit my-song.lore -o my-song-kit");

        var parsed = root.Parse(arguments, new ParserConfiguration { ResponseFileTokenReplacer = null });
        var asksForHelp = parsed.Action is HelpWithExamples;
        if (parsed.Errors.Count > 0 && !asksForHelp)
        {
            WrongUse.Write(surroundings.Error, parsed);
            return ExitCode.WrongUse;
        }
        var code = parsed.Invoke(new InvocationConfiguration
        {
            Output = surroundings.Out,
            Error = surroundings.Error,
            EnableDefaultExceptionHandler = false,
            ProcessTerminationTimeout = null,
        });
        surroundings.Out.Flush();
        return code;
    }

    private static bool IsGone(TextWriter output)
    {
        try
        {
            output.Flush();
            return false;
        }
        catch (IOException)
        {
            return true;
        }
    }
}
