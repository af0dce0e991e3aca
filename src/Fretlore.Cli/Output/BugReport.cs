using System.Reflection;
using System.Runtime.InteropServices;

namespace Fretlore.Cli.Output;

/// <summary>What a person reads when we have made a mistake: that it is ours, and what to send.</summary>
internal static class BugReport
{
    public static void Write(TextWriter error, IReadOnlyList<string> arguments, Exception bug)
    {
        var frame = bug.StackTrace?.Split('\n').FirstOrDefault(line => line.Contains("Fretlore", StringComparison.Ordinal))?.Trim();
        var version = typeof(BugReport).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion;
        error.WriteLine(
            $"fretlore: this is a bug in Fretlore, not in your sheet; no file was harmed. Please send the sheet and this line: "
            + $"[{string.Join(' ', arguments)}] {bug.GetType().Name}: {bug.Message.ReplaceLineEndings(" ")} {frame} "
            + $"(Fretlore {version}, .NET {Environment.Version}, {RuntimeInformation.RuntimeIdentifier})");
    }
}
