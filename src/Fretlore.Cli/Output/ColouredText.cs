using Fretlore.Syntax;
using Fretlore.Workspace;
using Spectre.Console;

namespace Fretlore.Cli.Output;

/// <summary>Findings in colour; only where a terminal shows them. Words carry the meaning, colours only help to find it.</summary>
internal static class ColouredText
{
    public static void WriteFinding(TextWriter output, string place, string severity, Finding finding, string[] lines)
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = AnsiSupport.Yes,
            ColorSystem = ColorSystemSupport.Standard,
            Interactive = InteractionSupport.No,
            Out = new PlainWidth(output),
        });
        // Vermillion, orange and blue of the Okabe-Ito palette as near as sixteen colours come.
        var colour = finding.Severity switch { Severity.Error => "red", Severity.Warning => "yellow", _ => "blue" };
        console.MarkupLine($"{Markup.Escape(place)} [bold {colour}]{severity}[/] [dim]{finding.Code}[/] {Markup.Escape(Marked.Safe(finding.Message))}");
        if (finding.SourceLine.Length > 0)
        {
            console.MarkupLine($"    [dim]{Markup.Escape(lines[0])}[/]");
            console.MarkupLine($"    [bold {colour}]{lines[1]}[/]");
        }
        console.MarkupLine($"  {Markup.Escape(Marked.Safe(finding.Remedy))}");
    }

    /// <summary>An output whose lines are never folded: the terminal does that itself.</summary>
    private sealed class PlainWidth(TextWriter writer) : IAnsiConsoleOutput
    {
        public TextWriter Writer => writer;

        public bool IsTerminal => true;

        public int Width => 10_000;

        public int Height => 100;

        public void SetEncoding(System.Text.Encoding encoding)
        {
        }
    }
}
