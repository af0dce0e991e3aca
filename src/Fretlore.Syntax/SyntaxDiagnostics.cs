namespace Fretlore.Syntax;

/// <summary>Everything that can be wrong with a sheet's text, before its meaning is asked for: codes FL1001 to FL1999.</summary>
/// <remarks>A code is never given a second meaning. Messages say what is wrong, remedies what to do, each as whole sentences.</remarks>
internal static partial class SyntaxDiagnostics
{
    private static Diagnostic Error(string code, TextSpan span, string message, string remedy) =>
        new(code, Severity.Error, span, message, remedy);

    private static Diagnostic Warning(string code, TextSpan span, string message, string remedy) =>
        new(code, Severity.Warning, span, message, remedy);

    /// <summary>The near miss first, if there is one; then what would be right anyway.</summary>
    private static string Suggest(string? suggestion, string otherwise) =>
        suggestion is null ? otherwise : $"Perhaps `{suggestion}` was meant. {otherwise}";

    private static string List(IEnumerable<string> words) => string.Join(", ", words.Select(w => $"`{w}`"));

    /// <summary>Text from a sheet within a message: kept short, without line ends.</summary>
    private static string Shown(string text)
    {
        var line = text.AsSpan(0, Math.Min(text.Length, 24)).ToString().ReplaceLineEndings(" ");
        return text.Length > 24 ? line + "…" : line;
    }
}
