using System.Text;
using Fretlore.Cli.Output;

namespace Fretlore.Cli.Files;

/// <summary>The folder that takes are written to: a sheet each; never over a file that is there, unless asked.</summary>
internal static class TakeFolder
{
    /// <summary>Writes all sheets, or says why not and writes none over others; returns the exit code.</summary>
    public static int Write(Surroundings surroundings, TextWriter report, string folder, IReadOnlyList<(string Name, string Text)> sheets, bool replace)
    {
        try
        {
            var full = surroundings.PathOf(folder);
            if (File.Exists(full)) return WrongUse.Write(surroundings.Error, $"{folder} is a file.", "Choose a folder with -o.");
            if (!replace && sheets.FirstOrDefault(s => Path.Exists(Path.Combine(full, s.Name))).Name is { } there)
            {
                return WrongUse.Write(surroundings.Error, $"{folder}/{there} is already there, so nothing was written.", "Choose another folder with -o, or replace the takes in it with --replace.");
            }
            Directory.CreateDirectory(full);
            foreach (var (name, text) in sheets)
            {
                if (NewSheetFile.Write(surroundings, report, $"{folder}/{name}", Encoding.UTF8.GetBytes(text), replace) is var code and not ExitCode.Fine) return code;
            }
            return ExitCode.Fine;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return WrongUse.Write(surroundings.Error, $"{folder} can't be written: {Reason.Of(e)}", "Choose another folder with -o.");
        }
    }
}
