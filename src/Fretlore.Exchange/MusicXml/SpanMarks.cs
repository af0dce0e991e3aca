using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>Ways of playing that last over several events and are marked above them.</summary>
[Flags]
internal enum Stretch
{
    None = 0,
    PalmMute = 1,
    LetRing = 2,
    TremoloArm = 4,
    Wah = 8,
    Crescendo = 16,
    Diminuendo = 32,
}

/// <summary>Where stretches start and stop in the strands of a part.</summary>
internal sealed class SpanMarks
{
    private readonly Dictionary<Event, (Stretch Starts, Stretch Stops)> marks = new(ReferenceEqualityComparer.Instance);

    public (Stretch Starts, Stretch Stops) this[Event item] => marks.GetValueOrDefault(item);

    public static SpanMarks Of(Part part)
    {
        var found = new SpanMarks();
        var strands = part.Bars.SelectMany(b => b.Strands).GroupBy(s => s.Kind);
        foreach (var strand in strands) found.Add(strand.SelectMany(s => s.Events).ToList());
        return found;
    }

    private void Add(List<Event> events)
    {
        var stretches = new Stretch[events.Count];
        for (var i = events.Count - 1; i >= 0; i--) stretches[i] = StretchesOf(events[i], i + 1 < events.Count ? stretches[i + 1] : Stretch.None);
        var before = Stretch.None;
        for (var i = 0; i < events.Count; i++)
        {
            if (events[i].IsRest) stretches[i] &= before | FromSpans(events[i].Spans);
            var next = i + 1 < events.Count ? stretches[i + 1] & (events[i + 1].IsRest ? stretches[i] | FromSpans(events[i + 1].Spans) : (Stretch)~0) : Stretch.None;
            var mark = (stretches[i] & ~before, stretches[i] & ~next);
            if (mark != (Stretch.None, Stretch.None)) marks[events[i]] = mark;
            before = stretches[i];
        }
    }

    // A rest between two palm-muted notes does not end the mute.
    private static Stretch StretchesOf(Event item, Stretch next)
    {
        if (item.IsRest) return FromSpans(item.Spans) | (next & (Stretch.PalmMute | Stretch.LetRing));
        var stretch = FromSpans(item.Spans);
        if (item.Notes.Any(n => n.IsPalmMuted)) stretch |= Stretch.PalmMute;
        if (item.Notes.Any(n => n.LetsRing)) stretch |= Stretch.LetRing;
        return stretch;
    }

    private static Stretch FromSpans(Spans spans)
    {
        var stretch = Stretch.None;
        if (spans.HasFlag(Spans.TremoloArm)) stretch |= Stretch.TremoloArm;
        if (spans.HasFlag(Spans.Wah)) stretch |= Stretch.Wah;
        if (spans.HasFlag(Spans.Crescendo)) stretch |= Stretch.Crescendo;
        if (spans.HasFlag(Spans.Diminuendo)) stretch |= Stretch.Diminuendo;
        return stretch;
    }
}
