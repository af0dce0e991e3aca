using Fretlore.Guitar;

namespace Fretlore.Hands.Retuning;

/// <summary>Which string of a new tuning takes the place of each string of the old one.</summary>
internal static class HomeStrings
{
    /// <summary>For each old string number (index 0 is not used) the new one nearest in pitch; 0 where there is none, because the new tuning has fewer.</summary>
    /// <param name="from">The old open strings.</param>
    /// <param name="to">The new ones.</param>
    /// <param name="semitones">By how much the music is moved.</param>
    /// <remarks>Strings keep their order; of all such ways the one whose open strings are moved least is taken.</remarks>
    public static int[] Of(Tuning from, Tuning to, int semitones)
    {
        var (rows, columns) = (from.StringCount, to.StringCount);
        var costs = new int[rows + 1, columns + 1];
        for (var row = rows; row >= 0; row--)
        {
            for (var column = columns; column >= 0; column--)
            {
                if (row == rows || column == columns)
                {
                    costs[row, column] = Gap * (rows - row + columns - column);
                    continue;
                }
                costs[row, column] = Math.Min(Apart(row, column) + costs[row + 1, column + 1], Gap + Math.Min(costs[row + 1, column], costs[row, column + 1]));
            }
        }
        var home = new int[rows + 1];
        for (int row = 0, column = 0; row < rows && column < columns;)
        {
            if (costs[row, column] == Apart(row, column) + costs[row + 1, column + 1]) home[++row] = ++column;
            else if (costs[row, column] == Gap + costs[row + 1, column]) row++;
            else column++;
        }
        return home;

        // Rows and columns are string numbers less one.
        int Apart(int row, int column) => Math.Abs(from[new StringNumber(row + 1)].Midi + semitones - to[new StringNumber(column + 1)].Midi);
    }

    // To leave a string without a partner costs more than any move that keeps as many partners.
    private const int Gap = 200;
}
