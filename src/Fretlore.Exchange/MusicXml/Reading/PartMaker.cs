using System.Globalization;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.Reports;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml.Reading;

/// <summary>Makes one part of a tablature, with or without a staff beside it, and one part a staff of anything else.</summary>
internal sealed class PartMaker(Remarks remarks, string title, string? sound, PartFacts facts)
{
    public void Write(List<MeasureMusic> measures, RawSong song)
    {
        foreach (var measure in measures) Place(measure);
        var staves = measures.SelectMany(m => m.Events).Where(e => e.Notes.Count > 0).Select(e => e.Staff).Distinct().Order().ToList();
        var tabs = staves.Where(facts.TabStaves.Contains).ToList();
        if (tabs.Count > 0 && tabs.Count < staves.Count)
        {
            // Both staves hold the same notes; the tablature knows more of them.
            remarks.Add(RemarkKind.LeftOut, "The staff beside the tablature is taken to be the same music.", title);
            staves = tabs;
        }
        if (staves.Count == 0) staves = [1];
        if (staves.Count > 1) remarks.Add(RemarkKind.Changed, "Each staff becomes a part of its own.", title);
        for (var s = 0; s < staves.Count; s++)
        {
            var name = staves.Count == 1 ? title : string.Create(CultureInfo.InvariantCulture, $"{title} {s + 1}");
            song.Parts.Add(Make(name, measures, staves[s], song.Bars.Count));
        }
    }

    private RawPart Make(string name, List<MeasureMusic> measures, int staff, int barCount)
    {
        var part = new RawPart { Title = name, Sound = sound, Tuning = facts.Tuning, HasUnpitched = facts.HasUnpitched };
        part.Shapes.AddRange(facts.Shapes);
        foreach (var (bar, count) in facts.Again) part.Again[bar] = count;
        foreach (var (bar, capo) in facts.Capos) part.Capos[bar] = capo;
        for (var i = 0; i < barCount; i++)
        {
            var events = i < measures.Count ? measures[i].Events.Where(e => e.Staff == staff && !facts.BarRests.Contains(e)).ToList() : [];
            foreach (var item in events) Finish(item);
            part.Bars.Add(events);
        }
        return part;
    }

    private static void Finish(RawEvent item)
    {
        foreach (var note in item.Notes)
        {
            if (note.Marks.Tremolo is { } tremolo && item.Value is { } value) note.Marks = note.Marks with { Tremolo = Tremolos.On(value, tremolo) };
        }
    }

    // Words, dynamics and symbols go to the event at their time, or the next one in the bar.
    private void Place(MeasureMusic measure)
    {
        foreach (var waiting in measure.Waiting)
        {
            var sounding = measure.Events.Where(e => e.Start >= waiting.At && (waiting.Voice is null || e.Voice == waiting.Voice) && !facts.BarRests.Contains(e)).ToList();
            if (waiting.Stretch is not null)
            {
                MarkOne(waiting, sounding);
                continue;
            }
            var target = sounding.OrderBy(e => e.Start).ThenBy(e => e.Voice).FirstOrDefault();
            if (target is null) remarks.Add(RemarkKind.LeftOut, $"{waiting.What} stands where no note begins.", title);
            else target.Marks = waiting.Put(target.Marks);
        }
    }

    // "P.M." or "let ring" over one note.
    private void MarkOne(Waiting waiting, List<RawEvent> sounding)
    {
        foreach (var item in sounding.Where(e => e.Start == waiting.At))
        {
            if (waiting.Stretch == "arm") item.Marks = item.Marks with { Spans = item.Marks.Spans | Spans.TremoloArm };
            if (waiting.Stretch == "wah") item.Marks = item.Marks with { Spans = item.Marks.Spans | Spans.Wah };
            foreach (var note in item.Notes.Concat(item.Graces))
            {
                if (waiting.Stretch == "ring") note.Marks = note.Marks with { LetsRing = true };
                if (waiting.Stretch == "palm" && !facts.SaysPalmMutes) note.Marks = note.Marks with { IsPalmMuted = true };
            }
        }
    }
}
