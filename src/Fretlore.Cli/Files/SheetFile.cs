using Fretlore.Syntax;
using Fretlore.Workspace;
using Fretlore.Workspace.Sheets;

namespace Fretlore.Cli.Files;

/// <summary>A sheet as it was found on disk or on the standard input.</summary>
/// <param name="Text">The text, as far as it could be read.</param>
/// <param name="Wrong">Why it is not a sheet, or null.</param>
/// <param name="IsThere">False when there is no such file or it can't be opened: wrong use, rather than a wrong sheet.</param>
internal sealed record SheetFile(SourceText Text, Diagnostic? Wrong, bool IsThere)
{
    /// <summary>The path that stands for the standard input.</summary>
    public const string StandardInput = "-";

    /// <summary>What is wrong with the file itself.</summary>
    public IReadOnlyList<Finding> Findings => Wrong is null ? [] : [Finding.Of(Wrong, Text)];

    public int ExitCode => Wrong is null ? Cli.ExitCode.Fine : IsThere ? Cli.ExitCode.SheetHasErrors : Cli.ExitCode.WrongUse;

    public static SheetFile Read(Surroundings surroundings, string path)
    {
        try
        {
            if (path == StandardInput) return Of(ReadAtMost(surroundings.In, SheetBytes.Most + 1), path);
            var full = surroundings.PathOf(path);
            if (Directory.Exists(full)) return NotThere(path, FileDiagnostics.IsFolder(path));
            using var stream = new FileStream(full, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            return Of(ReadAtMost(stream, SheetBytes.Most + 1), path);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return NotThere(path, FileDiagnostics.NotFound(path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return NotThere(path, FileDiagnostics.NotReadable(path, Reason.Of(e)));
        }
    }

    private static SheetFile Of(byte[] bytes, string path)
    {
        if (bytes.Length > SheetBytes.Most)
        {
            return new SheetFile(new SourceText("", path), FileDiagnostics.TooLarge(path), IsThere: true);
        }
        var (text, wrong) = SheetBytes.Read(bytes, path);
        return new SheetFile(text, wrong, IsThere: true);
    }

    private static SheetFile NotThere(string path, Diagnostic wrong) => new(new SourceText("", path), wrong, IsThere: false);

    // A stream may never end (a device, a pipe): no more is read than can be a sheet.
    private static byte[] ReadAtMost(Stream stream, int most)
    {
        using var bytes = new MemoryStream();
        var buffer = new byte[64 * 1024];
        while (bytes.Length < most)
        {
            var read = stream.Read(buffer, 0, (int)Math.Min(buffer.Length, most - bytes.Length));
            if (read == 0) break;
            bytes.Write(buffer, 0, read);
        }
        return bytes.ToArray();
    }
}
