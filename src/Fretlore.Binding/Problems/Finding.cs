using Fretlore.Syntax;

namespace Fretlore.Binding.Problems;

/// <summary>What the factories of findings share: severities and turns of phrase.</summary>
internal static class Finding
{
    private const int LongestShown = 32;

    /// <summary>A sheet with more names than this is searched in part, so that many wrong names take no more than linear time.</summary>
    private const int MostCompared = 300;

    public static Diagnostic Error(string code, TextSpan span, string message, string remedy) =>
        new(code, Severity.Error, span, message, remedy);

    public static Diagnostic Warning(string code, TextSpan span, string message, string remedy) =>
        new(code, Severity.Warning, span, message, remedy);

    public static Diagnostic Hint(string code, TextSpan span, string message, string remedy) =>
        new(code, Severity.Hint, span, message, remedy);

    /// <summary>The near miss first, if there is one; then what would be right anyway.</summary>
    public static string Suggest(string word, IEnumerable<string> known, string otherwise) =>
        Nearest.To(word, known.Take(MostCompared)) is { } near ? $"Perhaps `{near}` was meant. {otherwise}" : otherwise;

    public static string List(IEnumerable<string> words) => string.Join(", ", words.Select(w => $"`{w}`"));

    /// <summary>Text from a sheet within a message, kept short and on one line.</summary>
    public static string Shown(string text) =>
        (text.Length > LongestShown ? text[..LongestShown] + "…" : text).ReplaceLineEndings(" ");

    public static string Bars(int count) => count == 1 ? "1 bar" : $"{count} bars";
}
