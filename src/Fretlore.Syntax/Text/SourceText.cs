namespace Fretlore.Syntax;

/// <summary>A place as people count it: lines and columns from 1; a column is one UTF-16 unit, as editors count.</summary>
public readonly record struct LinePosition(int Line, int Column);

/// <summary>The text of one sheet, with its lines.</summary>
public sealed class SourceText
{
    private readonly List<int> lineStarts = [0];

    public SourceText(string text, string name = "")
    {
        Text = text;
        Name = name;
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n'))) lineStarts.Add(i + 1);
        }
    }

    public string Text { get; }

    /// <summary>The file's name for messages; empty when there is none.</summary>
    public string Name { get; }

    public int LineCount => lineStarts.Count;

    public LinePosition PositionOf(int index)
    {
        var line = lineStarts.BinarySearch(index);
        if (line < 0) line = ~line - 1;
        return new LinePosition(line + 1, index - lineStarts[line] + 1);
    }
}
