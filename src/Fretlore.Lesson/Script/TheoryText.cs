using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Reading;

namespace Fretlore.Lesson.Script;

/// <summary>The chords and scales of a stretch of one part, each with its reason.</summary>
internal static class TheoryText
{
    private const int MostChords = 8;

    public static IEnumerable<string> Chords(SongReading reading, int part, int firstBar, int barCount)
    {
        if (part >= reading.Parts.Length) yield break;
        var said = new HashSet<string>();
        var moments = reading.Parts[part].Chords.Where(c => c.Bar >= firstBar && c.Bar < firstBar + barCount).ToArray();
        var powers = moments.Where(IsPower).Select(m => PitchWords.Of(m.Best.Root)).Distinct().ToArray();
        // Several power chords have one reason between them.
        if (powers.Length > 1)
        {
            var roots = string.Join(", ", powers[..^1]) + " and " + powers[^1];
            yield return $"**Power chords** on {roots}: each is a root and its fifth, neither major nor minor.";
        }
        foreach (var moment in moments.Where(m => powers.Length < 2 || !IsPower(m)))
        {
            if (said.Count == MostChords || !said.Add(moment.Symbol)) continue;
            var spoken = moment.Override is null ? $"**{ChordWords.Of(moment.Best)}** ({Markdown.Escape(moment.Symbol)})" : $"**{Markdown.Escape(moment.Symbol)}**, as written";
            yield return $"{Capital(spoken)}: {Reason(moment.Best.Reason)}";
        }
    }

    public static IEnumerable<string> Scales(SongReading reading, int part, int firstBar, int barCount)
    {
        if (part >= reading.Parts.Length) yield break;
        var said = new HashSet<string>();
        foreach (var phrase in reading.Parts[part].Phrases.Where(p => p.FirstBar < firstBar + barCount && firstBar < p.FirstBar + p.BarCount))
        {
            if (phrase.Scales.IsDefaultOrEmpty) continue;
            var scale = phrase.Scales[0];
            var name = $"{PitchWords.Of(scale.Root)} {scale.Name.ToLowerInvariant()}";
            if (said.Add(name)) yield return $"**{name}**: {Reason(scale.Reason)}";
        }
    }

    public static IEnumerable<string> Shapes(SongReading reading, IEnumerable<string> names)
    {
        foreach (var name in names)
        {
            if (reading.Shapes.FirstOrDefault(s => s.Shape == name)?.Candidates is not { IsDefaultOrEmpty: false } candidates) continue;
            yield return $"The **{Markdown.Escape(SpokenName.OfShape(name))}** shape is {ChordWords.Of(candidates[0])} ({Markdown.Escape(candidates[0].Symbol)}): {Reason(candidates[0].Reason)}";
        }
    }

    private static bool IsPower(ChordMoment moment) => moment.Override is null && moment.Best.Kind == "5" && moment.Best.Bass == moment.Best.Root;

    private static string Reason(string reason) => Markdown.Escape(PitchWords.InText(reason.TrimEnd('.'))) + (reason.Length == 0 ? "" : ".");

    private static string Capital(string text) => text.StartsWith("**a", StringComparison.Ordinal) ? "**A" + text[3..] : text;
}
