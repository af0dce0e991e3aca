using System.Globalization;
using Fretlore.Guitar;

namespace Fretlore.Workspace.Questions;

/// <summary>A capo as typed at the prompt: <c>2</c>, <c>2 on 5-3</c>, <c>off</c>.</summary>
public static class CapoText
{
    /// <param name="typed">What was typed.</param>
    /// <param name="strings">How many strings the neck has.</param>
    /// <param name="frets">How many frets it has.</param>
    public static Answer<Capo> Read(string typed, int strings, int frets)
    {
        if (!Capo.TryParse(typed, out var capo) || capo.Fret >= frets)
        {
            return new Misread(typed, 1, typed.Length, $"There is no place \"{typed}\" for a capo.",
                string.Create(CultureInfo.InvariantCulture, $"Give its fret from 0 (no capo) to {frets - 1}, and the strings it covers when these are not all: \"2 on 5-3\"."));
        }
        if (!capo.Fits(strings))
        {
            var isAll = capo.Lowest.Value == strings;
            return new Misread(typed, 1, typed.Length,
                isAll ? $"Strings {capo.Strings} are all there are." : string.Create(CultureInfo.InvariantCulture, $"There is no string {capo.Lowest}: strings go from 1 (the highest) to {strings} (the lowest)."),
                isAll ? $"Give the fret alone, {capo.Fret}: frets are counted from a capo over all strings." : "Give strings that are there, next to each other.");
        }
        return capo;
    }
}
