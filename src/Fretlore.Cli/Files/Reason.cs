namespace Fretlore.Cli.Files;

/// <summary>Why the system refused a file, in plain words.</summary>
internal static class Reason
{
    private const int NoSpaceUnix = 28;
    private const int DiskFullWindows = unchecked((int)0x80070070);

    public static string Of(Exception refusal) => refusal switch
    {
        UnauthorizedAccessException => "you are not allowed to.",
        DirectoryNotFoundException => "a folder on the way to it does not exist.",
        FileNotFoundException => "it does not exist.",
        PathTooLongException => "its path is too long.",
        IOException { HResult: NoSpaceUnix or DiskFullWindows } => "the disk is full.",
        _ => Sentence(refusal.Message),
    };

    private static string Sentence(string message)
    {
        var line = message.ReplaceLineEndings(" ").Trim();
        return line.EndsWith('.') ? line : line + ".";
    }
}
