using System.Globalization;
using Fretlore.Guitar;

namespace Fretlore.Workspace.Questions;

/// <summary>A tuning for a sheet as typed at the prompt: <c>D2 A2 D3 G3 A3 D4</c>.</summary>
internal static class SheetTuningText
{
    // What a sheet takes, see the language's tuning setting.
    private const int FewestStrings = 4, MostStrings = 9;
    private const int LowestMidi = 12, HighestMidi = 100;

    public static Answer<Tuning> Read(string typed)
    {
        var neck = NeckText.Read(typed);
        if (neck.Misread is { } misread) return misread;
        var tuning = neck.Value.Tuning;
        if (tuning.StringCount is < FewestStrings or > MostStrings)
        {
            return new Misread(typed, 1, typed.Length, string.Create(CultureInfo.InvariantCulture, $"A sheet's tuning has {FewestStrings} to {MostStrings} strings, not {tuning.StringCount}."),
                "Type a pitch for each string from low to high: \"D2 A2 D3 G3 A3 D4\".");
        }
        var words = Word.In(typed);
        for (var i = 0; i < words.Count; i++)
        {
            if (tuning.LowToHigh[i].Midi is >= LowestMidi and <= HighestMidi) continue;
            return new Misread(typed, words[i].Column, words[i].Text.Length, $"No string is tuned to {words[i].Text}.", "C4 is middle C; the low string of a guitar is E2.");
        }
        // A high string among the low ones is fine, as on a banjo.
        if (tuning.LowToHigh.Items.Zip(tuning.LowToHigh.Items.Skip(1)).All(pair => pair.First.Midi > pair.Second.Midi))
        {
            return new Misread(typed, 1, typed.Length, "The tuning goes from high to low.", "Type the low string first: \"E2 A2 D3 G3 B3 E4\".");
        }
        return tuning;
    }
}
