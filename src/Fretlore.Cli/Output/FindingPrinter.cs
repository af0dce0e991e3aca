using Fretlore.Syntax;
using Fretlore.Workspace;

namespace Fretlore.Cli.Output;

/// <summary>Prints findings: place, code and message; the line with a marker; what to do.</summary>
internal static class FindingPrinter
{
    private const int Most = 50;

    public static void Write(TextWriter output, string sheet, IReadOnlyList<Finding> findings, bool colours)
    {
        foreach (var finding in findings.Take(Most))
        {
            var severity = SeverityWord(finding.Severity);
            var place = $"{sheet}:{finding.Line}:{finding.Column}";
            var lines = Marked.Lines(finding.SourceLine, finding.Column, finding.Length);
            if (colours)
            {
                ColouredText.WriteFinding(output, place, severity, finding, lines);
                continue;
            }
            output.WriteLine($"{place} {severity} {finding.Code} {Marked.Safe(finding.Message)}");
            if (finding.SourceLine.Length > 0)
            {
                foreach (var line in lines) output.WriteLine("    " + line);
            }
            output.WriteLine($"  {Marked.Safe(finding.Remedy)}");
        }
        if (findings.Count > Most) output.WriteLine($"… and {findings.Count - Most} more; mend these first, or see all with --json.");
    }

    public static string SeverityWord(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "hint",
    };

    /// <summary>For example <c>2 errors, 1 warning</c>; <c>nothing found</c> when there is nothing.</summary>
    public static string Count(IReadOnlyList<Finding> findings)
    {
        var words = new List<string>();
        foreach (var severity in (Severity[])[Severity.Error, Severity.Warning, Severity.Hint])
        {
            var count = findings.Count(f => f.Severity == severity);
            if (count > 0) words.Add(count == 1 ? $"1 {SeverityWord(severity)}" : $"{count} {SeverityWord(severity)}s");
        }
        return words.Count == 0 ? "nothing found" : string.Join(", ", words);
    }
}
