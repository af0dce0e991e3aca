using System.Text;
using Fretlore.Cli;

namespace Fretlore.Tests.Cli;

/// <summary>A folder of its own to run the command in, and what the last run said.</summary>
internal sealed class Desktop : IDisposable
{
    public string Folder { get; } = Directory.CreateTempSubdirectory("fretlore-tests-").FullName;

    public string Out { get; private set; } = "";

    public string Error { get; private set; } = "";

    public bool Colours { get; init; }

    public bool ErrorIsTerminal { get; init; }

    /// <summary>Runs the command in this process and returns its exit code.</summary>
    public int Run(params string[] arguments) => RunWith([], arguments);

    public int RunWith(byte[] input, params string[] arguments)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var code = FretloreCommand.Run(arguments, new Surroundings
        {
            Folder = Folder,
            In = new MemoryStream(input),
            Out = output,
            Error = error,
            Colours = Colours,
            ErrorIsTerminal = ErrorIsTerminal,
        });
        (Out, Error) = (output.ToString(), error.ToString());
        Assert.DoesNotContain("   at ", Out + Error, StringComparison.Ordinal);
        return code;
    }

    public string PathOf(string name) => Path.Combine(Folder, name);

    public string Write(string name, string text) => Write(name, Encoding.UTF8.GetBytes(text));

    public string Write(string name, byte[] bytes)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(PathOf(name))!);
        File.WriteAllBytes(PathOf(name), bytes);
        return name;
    }

    public string Read(string name) => File.ReadAllText(PathOf(name));

    /// <summary>Every file below the folder with its bytes in hexadecimal, to see that nothing changed.</summary>
    public SortedDictionary<string, string> Everything(string below = "")
    {
        var files = new SortedDictionary<string, string>(StringComparer.Ordinal);
        var root = PathOf(below);
        foreach (var file in Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories))
        {
            files.Add(Path.GetRelativePath(root, file).Replace('\\', '/'), Convert.ToHexString(File.ReadAllBytes(file)));
        }
        return files;
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
