using Fretlore.Binding.Problems;
using Fretlore.Syntax;

namespace Fretlore.Binding;

/// <summary>Counts bars and notes as they are made, so that a sheet whose repeats multiply is refused before it is spread out.</summary>
internal sealed class SongLimits
{
    /// <summary>Bars of all lines and riffs together; a song of 20,000 bars for nine parts fits.</summary>
    public const long MostBars = 200_000;

    /// <summary>Bars of one line.</summary>
    public const long MostBarsInLine = 20_000;

    public const long MostNotes = 500_000;

    private long bars;
    private long notes;

    /// <summary>True when something was left out because the song is too long.</summary>
    public bool IsExceeded { get; private set; }

    /// <summary>Counts what is about to be made; false, with a finding, when it is too much.</summary>
    public bool Take(long moreBars, long moreNotes, long barsInLine, TextSpan span, DiagnosticBag problems)
    {
        if (moreBars > MostBars - bars || moreNotes > MostNotes - notes || barsInLine > MostBarsInLine)
        {
            Refuse(span, problems);
            return false;
        }
        bars += moreBars;
        notes += moreNotes;
        return true;
    }

    /// <summary>Gives the song up; said once.</summary>
    public void Refuse(TextSpan span, DiagnosticBag problems)
    {
        if (!IsExceeded) problems.Add(FormProblems.SongTooLong(span, MostBarsInLine, MostNotes));
        IsExceeded = true;
    }
}
