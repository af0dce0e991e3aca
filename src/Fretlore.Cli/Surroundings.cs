using System.Text;

namespace Fretlore.Cli;

/// <summary>What a command sees of the outside: where it stands, its three streams and who looks at them.</summary>
internal sealed record Surroundings
{
    /// <summary>The folder that paths are relative to.</summary>
    public required string Folder { get; init; }

    public required Stream In { get; init; }

    /// <summary>Where answers go.</summary>
    public required TextWriter Out { get; init; }

    /// <summary>Where what is wrong and how far the work is go.</summary>
    public required TextWriter Error { get; init; }

    /// <summary>True when a person watches <see cref="Error"/> on a terminal, so that progress may be drawn.</summary>
    public bool ErrorIsTerminal { get; init; }

    /// <summary>True when findings on <see cref="Out"/> and <see cref="Error"/> may be coloured.</summary>
    public bool Colours { get; init; }

    public string PathOf(string path) => Path.GetFullPath(path, Folder);

    public static Surroundings OfProcess()
    {
        var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        if (OperatingSystem.IsWindows()) Console.OutputEncoding = utf8;
        var plain = Environment.GetEnvironmentVariable("NO_COLOR") is { Length: > 0 } || Environment.GetEnvironmentVariable("TERM") == "dumb";
        return new Surroundings
        {
            Folder = Environment.CurrentDirectory,
            In = Console.OpenStandardInput(),
            Out = new StreamWriter(Console.OpenStandardOutput(), utf8) { NewLine = "\n" },
            Error = new StreamWriter(Console.OpenStandardError(), utf8) { NewLine = "\n", AutoFlush = true },
            ErrorIsTerminal = !Console.IsErrorRedirected && !plain,
            Colours = !plain && !Console.IsErrorRedirected && !Console.IsOutputRedirected,
        };
    }
}
