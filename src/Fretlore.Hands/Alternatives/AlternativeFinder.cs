using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Hands.Grips;
using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Alternatives;

/// <summary>Finds other ways to play a riff: under fingers that avoid what is hard in it, and at other places of the neck.</summary>
public static class AlternativeFinder
{
    /// <summary>No more than these are told.</summary>
    public const int Most = 3;

    // So many times dearer is what one tries to avoid.
    private const double Avoided = 4;

    // A way that is dearer than this many times the plan's cost is no help to anybody.
    private const double MostCost = 2.5;

    private static readonly Effort[][] WorthAvoiding = [[Effort.Stretch], [Effort.Barre], [Effort.Shift, Effort.Hurry], [Effort.Hop]];

    /// <summary>Up to three, each with something it gains: the cheapest of either kind first.</summary>
    /// <param name="riff">The riff.</param>
    /// <param name="hand">The hand that plays it.</param>
    public static ImmutableArray<Alternative> Find(Riff riff, PlayingHand hand)
    {
        var written = Try(riff.Content, riff, hand, null);
        var found = new List<Alternative>();
        foreach (var efforts in WorthAvoiding)
        {
            var tried = Try(riff.Content, riff, hand, EffortWeights.Against(Avoided, efforts));
            Add(found, AlternativeKind.OtherFingers, tried, written);
        }
        var notes = AllNotes(riff.Content);
        for (var low = 1; low <= riff.Neck.HighestFret.Number - WindowPlacer.Reach; low++)
        {
            if (WindowPlacer.Place(riff.Content, riff.Neck, low) is not { } places) continue;
            // Where nearly everything stays it is the same way of playing.
            if (2 * notes.Count(n => places[n.Id].String != n.String) < notes.Count) continue;
            Add(found, AlternativeKind.OtherPlace, Try(Moved(riff.Content, places), riff, hand, null), written);
        }
        var elsewhere = found.Where(a => a.Kind == AlternativeKind.OtherPlace).OrderBy(a => a.Cost).Take(Most - 1).ToList();
        var fingers = found.Where(a => a.Kind == AlternativeKind.OtherFingers).OrderBy(a => a.Cost).Take(Most - elsewhere.Count);
        return [.. elsewhere.Concat(fingers).OrderBy(a => a.Cost)];
    }

    private sealed record Tried(HandLoad Load, ImmutableArray<AlternativeNote> Notes, bool IsPlayable);

    private static Tried Try(ValueList<PartBar> content, Riff riff, PlayingHand hand, EffortWeights? weights)
    {
        var rules = new GripRules(NeckGeometry.Of(content.Count > 0 ? content[0].Neck : riff.Neck), hand.Size, hand.UsesThumb);
        var table = new GripTable(rules);
        var read = MomentReader.Read(riff.Bars, content, table);
        var plan = new PlanSearch(rules, table, weights).Find(read.Moments);
        var line = new LoadReader(rules, read.Moments, plan).Read(riff.Name, riff.Bars, content);
        var fingers = new Dictionary<NoteId, Finger>();
        for (var i = 0; i < plan.Grips.Length; i++)
        {
            var moment = read.Moments[i];
            for (var press = 0; plan.Grips[i] is { } grip && press < moment.Notes.Length; press++)
            {
                if (moment.IsNew[press]) fingers[moment.Notes[press]] = grip.Fingers[press];
            }
        }
        foreach (var (tied, first) in read.Ties)
        {
            if (fingers.TryGetValue(first, out var finger)) fingers[tied] = finger;
        }
        return new Tried(line.Whole, [.. AllNotes(content).Select(n => new AlternativeNote(n.Id, n.String, n.Fret, fingers.TryGetValue(n.Id, out var f) ? f : null))], line.Problems.IsEmpty);
    }

    private static void Add(List<Alternative> found, AlternativeKind kind, Tried tried, Tried written)
    {
        if (!tried.IsPlayable || tried.Load.Cost > MostCost * written.Load.Cost || tried.Notes.SequenceEqual(written.Notes)) return;
        if (found.Exists(other => other.Notes.SequenceEqual(tried.Notes))) return;
        var gains = Comparison.Less(tried.Load, written.Load).ToList();
        var prices = Comparison.More(tried.Load, written.Load).ToList();
        var (open, openWritten) = (tried.Notes.Count(n => n.Fret.IsOpen), written.Notes.Count(n => n.Fret.IsOpen));
        if (openWritten > 0 && open == 0) gains.Add("no open string, so that it moves to any key");
        if (open > openWritten) gains.Add(open - openWritten == 1 ? "one more open string" : $"{open - openWritten} more open strings");
        if (gains.Count == 0) return;
        if (openWritten > open && open > 0) prices.Add("fewer open strings");
        var stopped = tried.Notes.Where(n => !n.Fret.IsOpen).ToList();
        found.Add(new Alternative(kind, stopped.Count == 0 ? 0 : stopped.Min(n => n.Fret.Number), tried.Load.Cost, written.Load.Cost, [.. gains], [.. prices], tried.Notes));
    }

    private static List<Note> AllNotes(ValueList<PartBar> content) => [.. content.SelectMany(bar => bar.Notes)];

    private static ValueList<PartBar> Moved(ValueList<PartBar> content, IReadOnlyDictionary<NoteId, (StringNumber String, Fret Fret)> places) => content.Select(bar => bar with
    {
        Strands = bar.Strands.Select(strand => strand with { Events = strand.Events.Select(item => Moved(item, places)).ToValueList() }).ToValueList(),
    }).ToValueList();

    private static Event Moved(Event item, IReadOnlyDictionary<NoteId, (StringNumber String, Fret Fret)> places) => item with
    {
        Notes = item.Notes.Select(n => Moved(n, places)).OrderByDescending(n => n.String.Value).ToValueList(),
        Graces = item.Graces.Select(n => Moved(n, places)).ToValueList(),
        Shape = null,
    };

    private static Note Moved(Note note, IReadOnlyDictionary<NoteId, (StringNumber String, Fret Fret)> places) =>
        note with { String = places[note.Id].String, Fret = places[note.Id].Fret, Finger = null };
}
