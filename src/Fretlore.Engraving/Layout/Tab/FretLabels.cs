using System.Globalization;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Tab;

/// <summary>What stands on a tablature line for a note.</summary>
internal static class FretLabels
{
    /// <param name="note">The note.</param>
    /// <param name="resumed">Whether a held note is shown again, at the start of a system.</param>
    /// <returns>The label; empty when nothing is shown, as for a held note.</returns>
    public static string Of(Note note, bool resumed = false)
    {
        if (note.IsTiedFromBefore) return resumed ? "(" + Number(note) + ")" : "";
        var label = note.IsDead ? "x" : Number(note);
        if (note.Trill is { } trill) label += "(" + trill.Number.ToString(CultureInfo.InvariantCulture) + ")";
        return note.IsGhost ? "(" + label + ")" : label;
    }

    private static string Number(Note note)
    {
        var fret = note.Fret.Number.ToString(CultureInfo.InvariantCulture);
        return note.Harmonic switch
        {
            { Kind: HarmonicKind.Touched } harmonic => fret + "\u2039" + harmonic.TouchedAt + "\u203A",
            not null => "\u2039" + fret + "\u203A",
            _ => fret,
        };
    }
}
