using System.Collections.Immutable;
using Fretlore.Syntax;

namespace Fretlore.Workspace;

/// <summary>An immutable snapshot of one sheet through all stages. Stages past the findings are made when they are first asked for.</summary>
public sealed class SongWorkspace
{
    private SongWorkspace(ParsedSheet sheet)
    {
        Sheet = sheet;
        Findings = [.. sheet.Diagnostics.Select(d => Finding.Of(d, sheet.Text))];
    }

    /// <summary>The text as a tree.</summary>
    public ParsedSheet Sheet { get; }

    /// <summary>What was found in the sheet, in the order of its text.</summary>
    public ImmutableArray<Finding> Findings { get; }

    public bool HasErrors => Findings.Any(f => f.Severity == Severity.Error);

    /// <summary>Reads a sheet. Never fails, whatever the text.</summary>
    public static SongWorkspace Open(SourceText text) => new(Syntax.Sheet.Parse(text));
}
