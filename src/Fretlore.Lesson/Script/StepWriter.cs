using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Lesson.Script;

/// <summary>Writes one step of the script: riffs, sections and road maps alike.</summary>
internal sealed class StepWriter(Markdown text, Song song, SongReading reading, IReadOnlyList<CallOut> callOuts)
{
    public void Write(int number, ScriptStep step)
    {
        text.Heading(2, $"{number}. {Markdown.Escape(step.Title)}");
        if (step.Say is { Length: > 0 } say) text.Quote(Markdown.Escape(say));
        foreach (var name in step.Teaches)
        {
            if (step.Teaches.Count > 1) text.Heading(3, Markdown.Escape(ScriptWriter.Capital(SpokenName.Of(name))));
            if (song.Riffs.FirstOrDefault(r => r.Name == name) is { } riff) WriteRiff(riff, step);
            else if (song.Sections.FirstOrDefault(s => s.Name == name) is { } section) WriteSection(section, step);
            else if (song.RoadMaps.FirstOrDefault(m => m.Name == name) is { } map) WriteRoadMap(map);
        }
    }

    private void WriteRiff(Riff riff, ScriptStep step)
    {
        var callOut = callOuts.First(c => c.Riff == riff.Name);
        text.Paragraph("**In short.** " + callOut.Headline);
        text.Paragraph("**Walk-through.** " + callOut.WalkThrough);
        var use = song.RiffUses.Where(u => u.Riff == riff.Name).OrderBy(u => u.FirstBar).FirstOrDefault();
        text.Paragraph("**Speeds.** " + TempoText.Speeds(TempoText.At(song, use?.FirstBar ?? 0), step.SpeedPercents));
        WriteList("Where it comes", Whereabouts.Of(song, riff.Name));
        if (use is not null) WriteTheory(use.Part, use.FirstBar, use.BarCount);
        WriteList("Shapes", TheoryText.Shapes(reading, ShapesOf(riff)));
        WriteList("Remember", Reminders.For(riff));
    }

    private static IEnumerable<string> ShapesOf(Riff riff) =>
        riff.Content.SelectMany(b => b.Strands).SelectMany(s => s.Events).Select(e => e.Shape).OfType<string>().Distinct();

    private void WriteSection(Section section, ScriptStep step)
    {
        text.Paragraph($"The section {Markdown.Escape(section.Name)} is {Whereabouts.Bars(song, [(section.FirstBar, section.FirstBar + section.BarCount)])}.");
        var uses = song.RiffUses.Where(u => u.FirstBar >= section.FirstBar && u.FirstBar < section.FirstBar + section.BarCount)
            .OrderBy(u => u.FirstBar).ThenBy(u => u.Part);
        foreach (var callOut in uses.Select(u => u.Riff).Distinct()
            .Select(n => callOuts.FirstOrDefault(c => c.Riff == n)).OfType<CallOut>())
        {
            text.Paragraph($"**{ScriptWriter.Capital(callOut.SpokenName)}.** {callOut.Headline} {callOut.WalkThrough}");
        }
        text.Paragraph("**Speeds.** " + TempoText.Speeds(TempoText.At(song, section.FirstBar), step.SpeedPercents));
        for (var part = 0; part < song.Parts.Count; part++) WriteTheory(part, section.FirstBar, section.BarCount, song.Parts.Count > 1
            ? song.Parts[part].Title : null);
    }

    private void WriteRoadMap(RoadMap map)
    {
        text.Paragraph("This is a free stretch: no fixed notes, but rules.");
        foreach (var rule in RoadMapText.Of(map)) text.Item(rule);
        var uses = song.RoadMapUses.Where(u => u.RoadMap == map.Name)
            .Select(u => ScriptWriter.Capital(Whereabouts.Bars(song, [(u.FirstBar, u.FirstBar + u.BarCount)])));
        WriteList("Where it comes", uses);
    }

    private void WriteTheory(int part, int firstBar, int barCount, string? of = null)
    {
        var whose = of is null ? "" : ", " + Markdown.Escape(of);
        WriteList("Chords" + whose, TheoryText.Chords(reading, part, firstBar, barCount));
        WriteList("Scale" + whose, TheoryText.Scales(reading, part, firstBar, barCount));
    }

    private void WriteList(string title, IEnumerable<string> lines)
    {
        var all = lines.ToArray();
        if (all.Length == 0) return;
        text.Paragraph($"**{title}.**");
        foreach (var line in all) text.Item(line);
    }
}
