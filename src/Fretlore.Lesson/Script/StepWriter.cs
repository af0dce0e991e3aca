using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.CallOuts.RoadMaps;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Lesson.Subjects;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Lesson.Script;

/// <summary>Writes one step of the script: riffs, sections and road maps alike.</summary>
internal sealed class StepWriter(Markdown text, Song song, SongReading reading, CallOutContext context, IReadOnlyList<CallOut> callOuts)
{
    public void Write(int number, ScriptStep step)
    {
        text.Heading(2, $"{number}. {Markdown.Escape(step.Title)}");
        if (step.Say is { Length: > 0 } say) text.Quote(Markdown.Escape(say));
        foreach (var what in step.Teaches)
        {
            if (step.Teaches.Count > 1) text.Heading(3, Markdown.Escape(ScriptWriter.Capital(SpokenName.Of(what.ToString()))));
            if (song.Riffs.FirstOrDefault(r => r.Name == what.Name) is { } riff) WriteRiff(riff, what, step);
            else if (song.Sections.FirstOrDefault(s => s.Name == what.Name) is { } section && what == new Taught(section.Name)) WriteSection(section, step);
            else if (song.Sections.FirstOrDefault(s => s.Name == what.Name) is { } some) WriteBars(some, what, step);
            else if (song.RoadMaps.FirstOrDefault(m => m.Name == what.Name) is { } map) WriteRoadMap(map);
        }
    }

    private void WriteRiff(Riff riff, Taught what, ScriptStep step)
    {
        var told = what.Bars is { } bars ? Passage.Of(riff, bars, what.ToString()) : riff;
        var callOut = CallOutWriter.For(told, context);
        if (HasOwnCapo(riff)) text.Paragraph("**Capo.** " + OpeningWords.Capo(riff.Neck));
        text.Paragraph("**In short.** " + callOut.Headline);
        if (told.IsSilent())
        {
            WriteList("Where it comes", Whereabouts.Of(song, riff.Name));
            return;
        }
        text.Paragraph("**Walk-through.** " + callOut.WalkThrough);
        var use = song.RiffUses.Where(u => u.Riff == riff.Name).OrderBy(u => u.FirstBar).FirstOrDefault();
        text.Paragraph("**Speeds.** " + TempoText.Speeds(TempoText.At(song, use?.FirstBar ?? 0), step.SpeedPercents));
        WriteList("Where it comes", Whereabouts.Of(song, riff.Name));
        if (use is not null) WriteTheory(use.Part, use.FirstBar, use.BarCount);
        WriteList("Shapes", TheoryText.Shapes(reading, ShapesOf(told)));
        WriteList("Remember", Reminders.For(told));
    }

    // The capos that parts begin with are told before all steps.
    private bool HasOwnCapo(Riff riff)
    {
        var parts = song.Parts.Where(part => part.Neck.Tuning == riff.Neck.Tuning).ToArray();
        return parts.Length > 0 && parts.All(part => part.Neck.Capo != riff.Neck.Capo);
    }

    // Some bars of a section, or one part's line of it.
    private void WriteBars(Section section, Taught what, ScriptStep step)
    {
        var place = new Place(0, section.FirstBar, section.BarCount);
        if (what.Bars is { } bars) place = place with { FirstBar = section.FirstBar + bars.First - 1, BarCount = bars.Last - bars.First + 1 };
        text.Paragraph($"This is {Whereabouts.Bars(song, [(place.FirstBar, place.FirstBar + place.BarCount)])} of the song.");
        for (var part = 0; part < song.Parts.Count; part++)
        {
            if (what.Part is { } only && song.Parts[part].Name != only) continue;
            var passage = Passage.Of(song, place with { Part = part }, what.ToString());
            if (!passage.Content.Any(bar => bar.Notes.Any())) continue;
            var callOut = CallOutWriter.For(passage, context);
            text.Paragraph($"**{Markdown.Escape(song.Parts[part].Title)}.** {callOut.Headline} {callOut.WalkThrough}");
            WriteTheory(part, place.FirstBar, place.BarCount);
            WriteList("Remember", Reminders.For(passage));
        }
        text.Paragraph("**Speeds.** " + TempoText.Speeds(TempoText.At(song, place.FirstBar), step.SpeedPercents));
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
        var callOut = RoadMapTeller.For(map, song);
        text.Paragraph("**In short.** " + Markdown.Escape(callOut.Headline.ToString()));
        text.Paragraph("**Walk-through.** " + Markdown.Escape(callOut.WalkThrough.ToString()));
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
