using System.CommandLine;
using Fretlore.Workspace.Questions;

namespace Fretlore.Cli.Output;

/// <summary>How wrong use is answered: what is wrong, and where to read how it goes.</summary>
internal static class WrongUse
{
    public static void Write(TextWriter error, ParseResult parsed)
    {
        var command = parsed.CommandResult.Command;
        if (command is RootCommand && parsed.Tokens.Count == 0)
        {
            string[] verbs = [.. command.Subcommands.Select(verb => verb.Name)];
            error.WriteLine($"fretlore: say what to do: {string.Join(", ", verbs[..^1])} or {verbs[^1]}.");
        }
        else
        {
            foreach (var wrong in parsed.Errors) error.WriteLine($"fretlore: {wrong.Message}");
        }
        error.WriteLine($"How it goes: {(command is RootCommand ? "fretlore" : "fretlore " + command.Name)} --help");
    }

    /// <summary>Writes what was typed, with a marker under what can't be understood.</summary>
    public static int Write(TextWriter error, Misread misread)
    {
        error.WriteLine($"fretlore: {misread.Message}");
        foreach (var line in Marked.Lines(misread.Input, misread.Column, Math.Max(1, misread.Length))) error.WriteLine("    " + line);
        error.WriteLine($"  {misread.Remedy}");
        return ExitCode.WrongUse;
    }

    public static int Write(TextWriter error, string message, string remedy)
    {
        error.WriteLine($"fretlore: {message}");
        error.WriteLine($"  {remedy}");
        return ExitCode.WrongUse;
    }
}
