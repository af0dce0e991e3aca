using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Exchange.MusicXml;

/// <summary>A partial capo in MusicXML, which only has capos over all strings.</summary>
/// <remarks>
/// The strings are written as they sound open under the capo, and frets count from there on each string, so that a reader which knows nothing
/// of it plays and fingers the right notes. Words say where the capo lies, for people and for our own reader.
/// </remarks>
internal static class PartialCapo
{
    private const string Before = "Capo at fret ";
    private const string Strings = "strings ";
    private const string OneString = "string ";

    public static string Words(Capo capo) => char.ToUpperInvariant(capo.Words[0]) + capo.Words[1..];

    /// <summary>The capo that words tell of; null for other words.</summary>
    public static Capo? Read(string words)
    {
        if (!words.StartsWith(Before, StringComparison.Ordinal)) return null;
        var plain = words[Before.Length..].Replace(Strings, "", StringComparison.Ordinal).Replace(OneString, "", StringComparison.Ordinal);
        return Capo.TryParse(plain, out var capo) && capo is { IsPartial: true, Fret: <= 12 } ? capo : null;
    }

    /// <summary>A string of the tuning as it sounds open under the capo, spelled as <see cref="Lowered"/> undoes it.</summary>
    public static Pitch Raised(Pitch open, StringNumber number, Capo capo) => open.Transpose(Step(capo.On(number)));

    /// <summary>A string of the tuning from what it sounds open under the capo.</summary>
    public static Pitch Lowered(Pitch sounding, StringNumber number, Capo capo) => sounding.Transpose(-Step(capo.On(number)));

    private static Interval Step(int frets) => new Interval(7 * (frets / 12), 12 * (frets / 12)) + Interval.Chromatic(frets % 12);
}
