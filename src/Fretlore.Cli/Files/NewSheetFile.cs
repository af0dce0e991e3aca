using Fretlore.Cli.Output;

namespace Fretlore.Cli.Files;

/// <summary>A sheet that a verb makes: never over a file that is there, unless asked.</summary>
internal static class NewSheetFile
{
    /// <summary>Writes it, or says why not; returns the exit code. What was replaced is said in the report.</summary>
    public static int Write(Surroundings surroundings, TextWriter report, string name, byte[] text, bool replace)
    {
        try
        {
            var full = surroundings.PathOf(name);
            if (SafeFile.TryCreate(full, text)) return ExitCode.Fine;
            if (!replace) return WrongUse.Write(surroundings.Error, $"{name} is already there and was left as it is.", "Choose another name with -o, or replace it with --replace.");
            SafeFile.Replace(full, text);
            report.WriteLine($"{name} was there and has been replaced.");
            return ExitCode.Fine;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return WrongUse.Write(surroundings.Error, $"{name} can't be written: {Reason.Of(e)}", "Choose another name with -o.");
        }
    }
}
