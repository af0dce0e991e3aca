using Fretlore.Exchange.Reports;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Import;

/// <summary>Builds one part of a song.</summary>
internal sealed class PartBuilder(RawPart raw, Remarks remarks)
{
    private static readonly StrandKind[] Kinds = [StrandKind.Main, StrandKind.Bass, StrandKind.Top, StrandKind.Drone];

    /// <summary>A bar's voices, each in order and within the bar.</summary>
    private sealed record VoicedBar(Bar Bar, Neck Neck, List<(StrandKind Kind, List<RawEvent> Events)> Voices);

    public Part Build(IReadOnlyList<Bar> bars)
    {
        BarsAgain.Fill(raw);
        var neck = NeckChoice.For(raw);
        var kinds = KindsOfVoices();
        var here = neck;
        var voiced = new List<VoicedBar>();
        for (var i = 0; i < bars.Count; i++)
        {
            if (raw.Capos.TryGetValue(i, out var capo)) here = here with { Capo = capo };
            voiced.Add(new VoicedBar(bars[i], here, Voices(i < raw.Bars.Count ? raw.Bars[i] : [], bars[i], i, kinds)));
        }
        var placer = new LinePlacer(remarks, raw.Title);
        foreach (var bar in voiced) placer.Add(bar.Bar, bar.Neck, bar.Voices);
        var placed = placer.Place();
        var content = voiced.Select((bar, i) => BuildBar(bar, i, placed)).ToList();
        if (placer.HasChosen)
        {
            remarks.Add(RemarkKind.Guessed, raw.Tuning is null
                ? $"The file says no strings and frets: the notes are placed on a neck tuned {neck.Tuning}, where a hand plays them most easily."
                : "Some notes have no string and fret: they are placed where a hand plays them most easily.", raw.Title);
        }
        else if (raw.Tuning is null) remarks.Add(RemarkKind.Guessed, $"The file says no tuning: {neck.Tuning} is taken.", raw.Title);
        return new Part
        {
            Name = "part",
            Title = raw.Title,
            Neck = neck,
            Sound = raw.Sound,
            Bars = new HeldNotes(remarks, raw.Title).Tied(content, bars),
        };
    }

    // Voices 1 to 4 are the strands in their order; others take what strands there are, the first the main one.
    private Dictionary<int, StrandKind> KindsOfVoices()
    {
        var all = raw.Events.Select(e => e.Voice).Distinct().Order().ToList();
        if (all.Count > 0 && all[0] == 1 && all[^1] <= 4) return all.ToDictionary(v => v, v => (StrandKind)(v - 1));
        var voices = raw.Events.Where(e => e.Notes.Count > 0).Select(e => e.Voice).Distinct().Order().ToList();
        return voices.Take(Kinds.Length).Select((v, i) => (v, Kinds[i])).ToDictionary(v => v.v, v => v.Item2);
    }

    // Empty where the part rests.
    private List<(StrandKind Kind, List<RawEvent> Events)> Voices(List<RawEvent> events, Bar bar, int index, Dictionary<int, StrandKind> kinds)
    {
        foreach (var _ in events.Where(e => !kinds.ContainsKey(e.Voice)).SelectMany(e => e.Notes))
            remarks.Add(RemarkKind.LeftOut, "A note of a fifth voice: a part has four lines at most.", raw.Title, index + 1);
        var voices = events.Where(e => kinds.ContainsKey(e.Voice)).GroupBy(e => kinds[e.Voice]).OrderBy(g => g.Key)
            .Select(g => (Kind: g.Key, Events: Straightened([.. g.OrderBy(e => e.Start)], bar, index))).Where(v => v.Events.Count > 0).ToList();
        var plays = voices.Exists(v => v.Events.Exists(e => e.Notes.Count > 0 || e.Marks.Stroke != Stroke.None || e.Marks.Words is not null));
        return plays || voices.Exists(v => v.Kind == StrandKind.Main && v.Events.Count > 1) ? voices : [];
    }

    private PartBar BuildBar(VoicedBar bar, int index, IReadOnlyDictionary<RawNote, PlacedNote> placed)
    {
        if (bar.Voices.Count == 0) return new PartBar(bar.Neck, []);
        var strands = new List<Strand>();
        if (bar.Voices[0].Kind != StrandKind.Main) strands.Add(new Strand(StrandKind.Main, Rests(Beats.Zero, bar.Bar.Length).ToValueList()));
        foreach (var (kind, list) in bar.Voices) strands.AddRange(Strands(kind, list, placed, bar.Bar, index, bar.Neck));
        return new PartBar(bar.Neck, Anchored(strands).ToValueList());
    }

    // A line beside the main one begins where a note of that does, or with a rest from the bar's start.
    private static List<Strand> Anchored(List<Strand> strands)
    {
        var starts = strands[0].Events.Select(e => e.Start).ToHashSet();
        var anchored = new List<Strand> { strands[0] };
        foreach (var strand in strands.Skip(1))
        {
            if (strand.Events.All(e => e.IsRest && !e.IsAirStroke)) continue;
            var before = anchored.FindLastIndex(s => s.Kind == strand.Kind && s.Kind != StrandKind.Main);
            if (starts.Contains(strand.Start)) anchored.Add(strand);
            else if (before >= 0) anchored[before] = new Strand(strand.Kind, [.. anchored[before].Events, .. Rests(anchored[before].End, strand.Start), .. strand.Events]);
            else anchored.Add(new Strand(strand.Kind, [.. Rests(Beats.Zero, strand.Start), .. strand.Events]));
        }
        return anchored;
    }

    // One event at a time, within the bar, on times that values can be written for.
    private List<RawEvent> Straightened(List<RawEvent> events, Bar bar, int index)
    {
        var line = new List<RawEvent>();
        foreach (var item in events)
        {
            if (item.Start >= bar.Length) continue;
            if (line.Count > 0 && line[^1].Start == item.Start)
            {
                if (line[^1].Notes.Count == 0) line[^1] = item;
                else line[^1].Notes.AddRange(item.Notes);
                continue;
            }
            if (line.Count > 0 && line[^1].End > item.Start) line[^1].Duration = item.Start - line[^1].Start;
            line.Add(item);
        }
        if (line.Count > 0 && line[^1].End > bar.Length) line[^1].Duration = bar.Length - line[^1].Start;
        var time = Beats.Zero;
        var isOdd = false;
        foreach (var item in line)
        {
            isOdd |= !CanBeWritten(item.Start - time) || !CanBeWritten(item.Duration);
            time = item.End;
        }
        if (!isOdd && CanBeWritten(bar.Length - time)) return line;
        remarks.Add(RemarkKind.Changed, "Times that no note values give are moved to the nearest 64th.", raw.Title, index + 1);
        return Rounded(line, bar.Length);
    }

    private static List<RawEvent> Rounded(List<RawEvent> line, Beats length)
    {
        var rounded = new List<RawEvent>();
        foreach (var item in line)
        {
            var start = Beats.Min(Round(item.Start), length - ValuePieces.Shortest);
            if (rounded.Count > 0) start = Beats.Max(start, rounded[^1].Start + ValuePieces.Shortest);
            if (start >= length) continue;
            var end = Beats.Min(length, Beats.Max(Round(item.End), start + ValuePieces.Shortest));
            if (rounded.Count > 0 && rounded[^1].End > start) rounded[^1].Duration = start - rounded[^1].Start;
            (item.Start, item.Duration, item.Tuplet, item.Value) = (start, end - start, null, null);
            rounded.Add(item);
        }
        return rounded;

        static Beats Round(Beats at) => ValuePieces.Shortest * (at + ValuePieces.Shortest / 2).WholeCount(ValuePieces.Shortest);
    }

    private static bool CanBeWritten(Beats length) =>
        length.IsZero || (length > Beats.Zero && (ValuePieces.IsPlain(length) || ValuePieces.Of(length).Aggregate(Beats.Zero, (sum, p) => sum + LengthOf(p.Value, p.Tuplet)) == length));

    private static Beats LengthOf(NoteValue value, Tuplet? tuplet) => tuplet is { } t ? value.Length * t.Factor : value.Length;

    private IEnumerable<Strand> Strands(StrandKind kind, List<RawEvent> line, IReadOnlyDictionary<RawNote, PlacedNote> placed, Bar bar, int index, Neck neck)
    {
        var made = new List<Event>();
        var time = kind == StrandKind.Main ? Beats.Zero : line[0].Start;
        foreach (var item in line)
        {
            if (item.Start > time)
            {
                if (kind == StrandKind.Main) made.AddRange(Rests(time, item.Start));
                else
                {
                    yield return new Strand(kind, made.ToValueList());
                    made = [];
                }
            }
            made.AddRange(Events(item, placed, neck, index));
            time = item.End;
        }
        if (kind == StrandKind.Main) made.AddRange(Rests(time, bar.Length));
        yield return new Strand(kind, made.ToValueList());
    }

    /// <summary>Rests from one place to another.</summary>
    public static IEnumerable<Event> Rests(Beats from, Beats to)
    {
        foreach (var (value, tuplet) in ValuePieces.Of(to - from))
        {
            yield return new Event { Start = from, Value = value, Tuplet = tuplet };
            from += LengthOf(value, tuplet);
        }
    }

    private IEnumerable<Event> Events(RawEvent item, IReadOnlyDictionary<RawNote, PlacedNote> placed, Neck neck, int index)
    {
        IReadOnlyList<(NoteValue Value, Tuplet? Tuplet)> pieces = item.Value is { } written && LengthOf(written, item.Tuplet) == item.Duration
            ? [(written, item.Tuplet)]
            : ValuePieces.Of(item.Duration);
        var notes = Played(item.Notes).OrderByDescending(n => n.String.Value).ToValueList();
        var graces = notes.Count == 0 ? [] : Played(item.Graces).ToValueList();
        var start = item.Start;
        for (var i = 0; i < pieces.Count; i++)
        {
            var (value, tuplet) = pieces[i];
            if (i == 0) yield return item.Marks with { Start = start, Value = value, Tuplet = tuplet, Notes = notes, Graces = graces };
            else
            {
                yield return new Event
                {
                    Start = start,
                    Value = value,
                    Tuplet = tuplet,
                    Notes = notes.Select(n => n with { Attack = n.IsDead ? Attack.Picked : Attack.Held, Bend = null, Vibrato = default }).ToValueList(),
                    Spans = item.Marks.Spans,
                };
            }
            start += LengthOf(value, tuplet);
        }

        IEnumerable<Note> Played(IEnumerable<RawNote> list) =>
            list.Where(placed.ContainsKey).Select(n => PlayedNote.Of(placed[n], neck, remarks, raw.Title, index));
    }
}
