using Fretlore.Syntax.Parsing;

namespace Fretlore.Syntax;

/// <summary>Reads sheets: any text gives a tree that holds all of it, and the findings about it.</summary>
public static class Sheet
{
    /// <summary>Parses a sheet. Never fails, whatever the text; takes time in proportion to its length.</summary>
    public static ParsedSheet Parse(SourceText text)
    {
        var findings = new Findings();
        var root = new SheetParser(text.Text, findings).Parse();
        return new ParsedSheet(text, root, findings.InOrder());
    }

    /// <summary>Parses the text of a sheet.</summary>
    public static ParsedSheet Parse(string text, string name = "") => Parse(new SourceText(text, name));
}
