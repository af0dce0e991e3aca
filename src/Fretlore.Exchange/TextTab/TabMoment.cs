using Fretlore.Exchange.Import;
using Fretlore.Exchange.Reports;
using Fretlore.Exchange.Sheets;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.TextTab;

/// <summary>One column of a bar: what starts at a moment, in all the lines that a part plays beside each other.</summary>
internal sealed class TabMoment
{
    public required Beats At { get; init; }

    /// <summary>Up to the next moment.</summary>
    public required Beats Length { get; init; }

    /// <summary>The note value that stands above it, such as <c>E.</c> or <c>E:3</c>.</summary>
    public required string Value { get; init; }

    /// <summary>Events that start here.</summary>
    public List<Event> Events { get; } = [];

    /// <summary>True when it only goes on from the moment before.</summary>
    public bool SoundsOn { get; init; }

    /// <summary>Strings of the moment before that sound on through one that only goes on.</summary>
    public HashSet<StringNumber> Held { get; } = [];

    public IEnumerable<Note> Notes => Events.SelectMany(e => e.Notes);

    /// <summary>The moments of a bar in order; where the part rests, rests that fill it.</summary>
    public static List<TabMoment> Of(PartBar content, Bar bar, string part, int index, Remarks remarks)
    {
        if (content.Strands.Count == 0) return [.. PartBuilder.Rests(Beats.Zero, bar.Length).Select(One)];
        var main = content.Strands[0];
        if (content.Strands.Count == 1 && main.Start.IsZero && main.End == bar.Length) return [.. main.Events.Select(One)];
        remarks.Add(RemarkKind.Changed, "Lines played beside each other are written as one, without how long each note is held.", part, index + 1);
        return Merged(content, bar, part, index, remarks);
    }

    private static TabMoment One(Event item)
    {
        var moment = new TabMoment { At = item.Start, Length = item.Duration, Value = Text(item.Value, item.Tuplet) };
        moment.Events.Add(item);
        return moment;
    }

    private static List<TabMoment> Merged(PartBar content, Bar bar, string part, int index, Remarks remarks)
    {
        // Rests say nothing that the values don't.
        var events = content.Strands.SelectMany(s => s.Events).Where(e => !e.IsRest || e.IsAirStroke || e.Words is not null || e.Dynamic is not null || e.ChordSymbol is not null || e.HasFermata).ToLookup(e => e.Start);
        var ends = content.Strands.SelectMany(s => s.Events).Where(e => !e.IsRest).Select(e => e.End);
        var starts = new SortedSet<Beats>(events.Select(g => g.Key).Concat(ends).Append(Beats.Zero).Where(s => s < bar.Length)).ToList();
        // Where a note ends and others sound on nothing is written.
        starts.RemoveAll(s => !s.IsZero && !events.Contains(s) && SoundingAt(content, s).Count > 0);
        var moments = new List<TabMoment>();
        for (var i = 0; i < starts.Count; i++)
        {
            var end = i + 1 < starts.Count ? starts[i + 1] : bar.Length;
            var (at, written) = (starts[i], false);
            var pieces = ValuePieces.Of(end - at);
            if (pieces.Aggregate(Beats.Zero, (sum, p) => sum + LengthOf(p.Value, p.Tuplet)) != end - at)
                remarks.Add(RemarkKind.Changed, "Times that no note values give are written as the nearest ones below.", part, index + 1);
            foreach (var (value, tuplet) in pieces)
            {
                var moment = new TabMoment { At = at, Length = LengthOf(value, tuplet), Value = Text(value, tuplet), SoundsOn = written };
                if (!written) moment.Events.AddRange(events[at]);
                else moment.Held.UnionWith(SoundingAt(content, at).Where(h => events[starts[i]].Any(e => e.Notes.Any(n => n.String == h))));
                moments.Add(moment);
                (at, written) = (at + moment.Length, true);
            }
        }
        return moments;
    }

    private static HashSet<StringNumber> SoundingAt(PartBar content, Beats at) =>
        [.. content.Strands.SelectMany(s => s.Events).Where(e => e.Start < at && at < e.End).SelectMany(e => e.Notes).Select(n => n.String)];

    private static Beats LengthOf(NoteValue value, Tuplet? tuplet) => tuplet is { } t ? value.Length * t.Factor : value.Length;

    private static string Text(NoteValue value, Tuplet? tuplet) => SheetWords.Of(value) + (tuplet is { } t ? SheetWords.Of(t) : "");
}
