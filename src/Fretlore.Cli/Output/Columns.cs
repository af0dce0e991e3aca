namespace Fretlore.Cli.Output;

/// <summary>Rows printed so that their cells stand below each other; the last cell may be as long as it likes.</summary>
internal static class Columns
{
    public static void Write(TextWriter output, IEnumerable<string[]> rows)
    {
        var table = rows.ToList();
        if (table.Count == 0) return;
        int[] widths = [.. Enumerable.Range(0, table[0].Length).Select(column => table.Max(row => row[column].Length))];
        foreach (var row in table)
        {
            var cells = row.Select((cell, column) => column == row.Length - 1 ? cell : cell.PadRight(widths[column]));
            output.WriteLine(string.Join("  ", cells).TrimEnd());
        }
    }
}
