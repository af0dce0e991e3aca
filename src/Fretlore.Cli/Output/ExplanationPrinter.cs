using System.Globalization;
using System.Text;
using Fretlore.Workspace.Explanation;

namespace Fretlore.Cli.Output;

/// <summary>An explanation as text: a bar that is like an earlier one of its part says so and is not told again.</summary>
internal static class ExplanationPrinter
{
    public static void Write(TextWriter output, SongExplanation song)
    {
        output.WriteLine(Marked.Safe(song.Title));
        foreach (var key in song.Keys) output.WriteLine($"  {Bars(key.FirstBar, key.LastBar)}: {key.Key}. {key.Reason}");
        var told = new Dictionary<(string Part, string Text), int>();
        foreach (var section in song.Sections)
        {
            output.WriteLine();
            output.WriteLine($"{Marked.Safe(section.Name)}, {Bars(section.FirstBar, section.LastBar)}");
            foreach (var part in section.Parts)
            {
                output.WriteLine($"  {Marked.Safe(part.Title)}");
                foreach (var scale in part.Scales) output.WriteLine($"    {Bars(scale.FirstBar, scale.LastBar)}: {scale.Scale}. {scale.Reason}");
                foreach (var bar in part.Bars) WriteBar(output, part.Name, bar, told);
                if (part.Cadence is { } cadence) output.WriteLine($"    close: {cadence}");
            }
        }
    }

    private static void WriteBar(TextWriter output, string part, ExplainedBar bar, Dictionary<(string, string), int> told)
    {
        var lines = Lines(bar);
        var text = string.Join('\n', lines);
        if (told.TryGetValue((part, text), out var earlier))
        {
            output.WriteLine($"    bar {bar.Bar}: as bar {earlier}");
            return;
        }
        told.Add((part, text), bar.Bar);
        output.WriteLine($"    bar {bar.Bar}");
        foreach (var line in lines) output.WriteLine("      " + line);
    }

    private static List<string> Lines(ExplainedBar bar)
    {
        var lines = new List<string>();
        foreach (var chord in bar.Chords)
        {
            var numeral = chord.Numeral is null ? "" : $"  {chord.Numeral}, {chord.Function}.";
            var instead = chord.Reading is null ? "" : $" The sheet says {chord.Symbol}; the notes make {chord.Reading}.";
            lines.Add(Marked.Safe($"{Beat(chord.Beat),-5} {chord.Symbol}{numeral}{instead} {chord.Reason}"));
        }
        // A struck chord is told by its name, and what is struck again was told before.
        var before = "";
        foreach (var moment in bar.Notes.GroupBy(n => n.Beat))
        {
            var isChord = moment.Count() > 2 && moment.All(n => n.Kind is "chord tone" or "tension");
            var words = isChord ? "" : string.Join("; ", moment.Select(n => n.Kind == "dead" ? "dead note" : $"{n.Pitch} {n.Role}"));
            if (words.Length > 0 && words != before) lines.Add($"{Beat(moment.Key),-5} {words}");
            before = words;
        }
        if (Hand(bar) is { } hand) lines.Add(hand);
        return lines;
    }

    // For example "hand  fret 5: 1 4 1 3 -": where the index finger stands, and the fingers note by note, a dash for none.
    private static string? Hand(ExplainedBar bar)
    {
        if (bar.Notes.All(note => note.Finger is null)) return null;
        var text = new StringBuilder("hand ");
        var position = 0;
        foreach (var moment in bar.Notes.GroupBy(note => note.Beat))
        {
            if (moment.FirstOrDefault(note => note.Position is not null)?.Position is { } here && here != position)
            {
                text.Append(CultureInfo.InvariantCulture, $"{(position == 0 ? " fret" : "; fret")} {here}:");
                position = here;
            }
            var fingers = string.Join(' ', moment.Select(note => note.Finger?.ToString(CultureInfo.InvariantCulture) ?? "-"));
            text.Append(' ').Append(moment.Count() == 1 ? fingers : $"[{fingers}]");
        }
        return text.ToString();
    }

    private static string Bars(int first, int last) => first == last ? $"bar {first}" : $"bars {first}-{last}";

    private static string Beat(double beat) => beat.ToString("0.##", CultureInfo.InvariantCulture);
}
