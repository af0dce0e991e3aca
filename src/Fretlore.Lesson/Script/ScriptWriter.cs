using Fretlore.Guitar;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.CallOuts.RoadMaps;
using Fretlore.Lesson.Plans;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Lesson.Script;

/// <summary>Writes the script of a lesson: what to tune, what to teach in which order, and what to say.</summary>
public static class ScriptWriter
{
    /// <summary>The script as Markdown that reads well aloud. The same song gives the same text.</summary>
    /// <param name="song">The song.</param>
    /// <param name="reading">Its reading, for the names of chords, scales and shapes.</param>
    /// <param name="style">The teacher's way of speaking; null for the usual one.</param>
    /// <param name="film">The plan of the film, for the times of the running order; null to go without.</param>
    /// <param name="hands">The hand plan, for positions and hard places; null to go without.</param>
    public static string Write(Song song, SongReading reading, CallOutStyle? style = null, FilmPlan? film = null, SongHands? hands = null)
    {
        var text = new Markdown();
        var callOuts = CallOutWriter.For(song, reading, style, hands);
        var steps = ScriptStep.Of(song);
        WriteTop(text, song);
        WriteOrder(text, song, steps, film);
        for (var i = 0; i < steps.Count; i++) new StepWriter(text, song, reading, CallOutContext.Of(song, reading, style ?? new CallOutStyle(), hands), callOuts).Write(i + 1, steps[i]);
        WriteOthers(text, song, steps, callOuts);
        WriteNoteByNote(text, callOuts);
        return text.ToString();
    }

    private static void WriteTop(Markdown text, Song song)
    {
        text.Heading(1, Markdown.Escape(song.Info.Title));
        if (song.Info.Artist is { Length: > 0 } artist) text.Paragraph("By " + Markdown.Escape(artist) + ".");
        if (song.Info.Credits is { Length: > 0 } credits) text.Paragraph(Markdown.Escape(credits));
        if (song.Info.Rights is { Length: > 0 } rights) text.Paragraph(Markdown.Escape(rights));
        text.Paragraph("This is the script for teaching the song: what to tune to, what to teach in which order, and what to say while playing it. "
            + "Call-outs are written to be read aloud as they stand.");
        text.Heading(2, "Before you play");
        foreach (var parts in song.Parts.GroupBy(p => p.Neck))
        {
            text.Paragraph((song.Parts.Count > 1 ? string.Join(", ", parts.Select(p => Markdown.Escape(p.Title))) + ". "
                : "") + Tuning(parts.Key));
        }
        if (song.Bars.Count > 0)
        {
            var meter = song.Bars[0].Meter;
            text.Paragraph($"The tempo is {TempoText.Of(TempoText.At(song, 0))}, in {NumberWords.Of(meter.Count)} {NumberWords.Of(meter.Unit)}{(song.Bars[0].Key is { } key ? $", in {Key(key)}" : "")}.");
        }
        text.Paragraph("Warm up before the hard parts, rest a few minutes in every half hour, and keep the loops short. "
            + "If anything hurts, tingles or goes numb, stop for the day. If it comes back, see a doctor or a therapist who works with musicians.");
        text.Paragraph("If the song is not your own, publishing a transcription or a lesson of it may need a licence from whoever owns the rights.");
    }

    private static string Key(Key key) => PitchWords.Of(key.Tonic) + key.ToString()[key.Tonic.ToString().Length..];

    private static string Tuning(Neck neck) => string.Join(' ', OpeningWords.Tuning(neck));

    private static void WriteOrder(Markdown text, Song song, IReadOnlyList<ScriptStep> steps, FilmPlan? film)
    {
        if (steps.Count == 0)
        {
            text.Paragraph("The sheet names no riffs and no lesson steps, so there is nothing to call out yet. Give a passage a name with a riff block to have it taught here.");
            return;
        }
        text.Heading(2, "Running order");
        if (song.Lesson?.Budget is { } budget) text.Paragraph($"The film has {Length(budget)}.");
        for (var i = 0; i < steps.Count; i++) text.Numbered(i + 1, Markdown.Escape(steps[i].Title) + Planned(film, steps[i].Title));
    }

    // ", from 0:18 on, as a walk-through, 1:05"
    private static string Planned(FilmPlan? film, string title)
    {
        if (film?.Steps.FirstOrDefault(s => s.Step.Title == title) is { } step)
        {
            return $", from {ClockText.At(step.Start)} on, {FilmPlanning.Words(step.Version.Length)}, {ClockText.Of(step.Seconds)}";
        }
        return film?.LeftOut.FirstOrDefault(l => l.Step.Title == title) is { } left ? $": no time for it, it takes {ClockText.Of(left.ShortestSeconds)} at the shortest" : "";
    }

    private static string Length(TimeSpan budget)
    {
        var minutes = (int)budget.TotalMinutes;
        var seconds = budget.Seconds;
        var said = new List<string>();
        if (minutes > 0) said.Add(minutes == 1 ? "one minute" : NumberWords.Of(minutes) + " minutes");
        if (seconds > 0 || minutes == 0) said.Add(seconds == 1 ? "one second" : NumberWords.Of(seconds) + " seconds");
        return string.Join(' ', said);
    }

    // Riffs that no step teaches have their call-outs all the same, for questions after the lesson.
    private static void WriteOthers(Markdown text, Song song, IReadOnlyList<ScriptStep> steps, IReadOnlyList<CallOut> callOuts)
    {
        var taught = steps.SelectMany(s => s.Teaches).Select(t => t.Name).ToHashSet();
        var others = callOuts.Where(c => !taught.Contains(c.Riff)).ToArray();
        var maps = RoadMapTeller.For(song).Where(c => !taught.Contains(c.RoadMap)).ToArray();
        if (others.Length + maps.Length == 0) return;
        text.Heading(2, "Not in the lesson");
        text.Paragraph($"{(others.Length == 0 ? "Solos by rules" : maps.Length == 0 ? "The other riffs" : "The other riffs and solos by rules")} of the song, for whoever asks.");
        foreach (var callOut in others)
        {
            text.Heading(3, Capital(callOut.SpokenName));
            text.Paragraph("**In short.** " + callOut.Headline);
            text.Paragraph("**Walk-through.** " + callOut.WalkThrough);
            foreach (var place in Whereabouts.Of(song, callOut.Riff)) text.Item(place);
        }
        foreach (var callOut in maps)
        {
            text.Heading(3, Capital(callOut.SpokenName));
            text.Paragraph("**In short.** " + Markdown.Escape(callOut.Headline.ToString()));
            text.Paragraph("**Walk-through.** " + Markdown.Escape(callOut.WalkThrough.ToString()));
        }
    }

    private static void WriteNoteByNote(Markdown text, IReadOnlyList<CallOut> callOuts)
    {
        if (callOuts.Count == 0) return;
        text.Heading(2, "Note by note");
        text.Paragraph("Every note with its value, for going through a passage at a standstill.");
        foreach (var callOut in callOuts)
        {
            text.Heading(3, Capital(callOut.SpokenName));
            text.Paragraph(callOut.NoteByNote.ToString());
        }
    }

    internal static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
