using System.CommandLine;
using System.Text;
using Fretlore.Cli.Files;
using Fretlore.Cli.Output;
using Fretlore.Workspace.Sheets;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore new</c>: writes a commented starter sheet; never over a file that is there.</summary>
internal static class NewVerb
{
    private const string Extension = ".lore";

    public static Verb Make(Surroundings surroundings)
    {
        var name = new Argument<string>("NAME.lore") { Description = "The file to make. Its name becomes the song's title." };
        var verb = new Verb("new", "Write a starter sheet with comments that explain it.", "fretlore new salt-furnace.lore") { name };
        verb.SetAction(parsed => Run(surroundings, parsed.GetRequiredValue(name)));
        return verb;
    }

    private static int Run(Surroundings surroundings, string name)
    {
        if (Path.GetFileName(name).Length == 0 || Directory.Exists(surroundings.PathOf(name)))
        {
            return WrongUse.Write(surroundings.Error, $"{name} is a folder.", "Give the file to make in it, such as my-song.lore.");
        }
        if (Path.GetExtension(name) is { Length: > 0 } other && !other.Equals(Extension, StringComparison.OrdinalIgnoreCase))
        {
            return WrongUse.Write(surroundings.Error, $"A sheet's name ends in {Extension}, not in {other}.", $"Try: fretlore new {Path.ChangeExtension(name, Extension)}");
        }
        var path = Path.HasExtension(name) ? name : name + Extension;
        try
        {
            var text = StarterSheet.For(Path.GetFileNameWithoutExtension(path));
            if (!SafeFile.TryCreate(surroundings.PathOf(path), Encoding.UTF8.GetBytes(text)))
            {
                return WrongUse.Write(surroundings.Error, $"{path} is already there and was left as it is.", "Choose another name.");
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return WrongUse.Write(surroundings.Error, $"{path} can't be written: {Reason.Of(e)}", "Choose another folder.");
        }
        surroundings.Out.WriteLine($"{path} is ready. Write in it, then: fretlore kit {path} -o {Path.GetFileNameWithoutExtension(path)}-kit");
        return ExitCode.Fine;
    }
}
