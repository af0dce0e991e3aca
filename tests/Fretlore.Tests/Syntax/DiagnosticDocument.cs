using System.Reflection;
using System.Text;
using Fretlore.Binding;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Syntax;
using Fretlore.Workspace;

namespace Fretlore.Tests.Syntax;

/// <summary>The page of all findings, written from their factories with example values.</summary>
internal static class DiagnosticDocument
{
    private static readonly Assembly[] Sources = [typeof(Sheet).Assembly, typeof(SongBinder).Assembly, typeof(SongWorkspace).Assembly];

    /// <summary>Each factory's finding, in the order of the codes.</summary>
    public static IReadOnlyList<Diagnostic> All { get; } =
    [
        .. Sources.SelectMany(a => a.GetTypes()).SelectMany(t => t.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly))
            .Where(m => m.ReturnType == typeof(Diagnostic) && m.DeclaringType!.IsAbstract && m.GetParameters().All(p => p.Name is not ("code" or "remedy")))
            .Select(Make).DistinctBy(d => (d.Code, d.Message)).OrderBy(d => d.Code, StringComparer.Ordinal),
    ];

    public static string Text()
    {
        var text = new StringBuilder();
        text.Append("# Findings\n\nEverything that can be found wrong with a sheet, by code, with example names and numbers. FL0 is about files, FL1 about the text,\n");
        text.Append("FL2 about its meaning, FL3 about what its music is, FL4 about the fretting hand, FL5 about its sound,\nFL6 about plain-text tab that is imported. A finding has a place; an *error* has to be mended before anything is made, a *warning* should be looked at,\n");
        text.Append("a *hint* tells what was taken for granted.\n\n| code | | what is wrong | what to do |\n| --- | --- | --- | --- |\n");
        foreach (var d in All)
        {
            text.Append($"| {d.Code} | {d.Severity.ToString().ToLowerInvariant()} | {Cell(d.Message)} | {Cell(d.Remedy)} |\n");
        }
        return text.ToString();
    }

    private static string Cell(string sentence) => sentence.Replace("|", "\\|", StringComparison.Ordinal);

    private static Diagnostic Make(MethodInfo factory) => (Diagnostic)factory.Invoke(null, [.. factory.GetParameters().Select(Example)])!;

    private static object? Example(ParameterInfo parameter) => parameter.ParameterType switch
    {
        var t when t == typeof(string) => parameter.Name switch
        {
            "suggestion" => null,
            "sign" => ",",
            "found" or "meant" => "x",
            "keyword" => "riff",
            "where" => "a part",
            "path" => "NAME.lore",
            "why" => "access is denied.",
            "kind" => "riff",
            "facts" => "frets 1 and 9 are 229 mm apart",
            "time" => "it has 0.05 s to get from fret 1 to fret 12",
            "symbol" => "Am7",
            "heard" => "C6",
            "missing" => "G",
            "nearest" => ".010",
            _ => "word",
        },
        var t when t == typeof(IEnumerable<string>) => new[] { "lead", "bed" },
        var t when t == typeof(IEnumerable<int>) => new[] { 6 },
        var t when t == typeof(Neck) => new Neck(Tuning.Standard),
        var t when t == typeof(Beats) => Beats.Quarter,
        var t when t == typeof(char) => '“',
        var t when t == typeof(int) => 2,
        var t when t == typeof(long) => 2L,
        var t when t == typeof(SyntaxToken) => new SyntaxToken(TokenKind.Word, "word", 0),
        var t => Activator.CreateInstance(t),
    };
}
