using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Hands.Grips;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Plans;

/// <summary>Finds for every note of a song the finger and the position that cost the hand least over the whole part.</summary>
/// <remarks>Exact within its rules and costs: see <see cref="PlanSearch"/>. Fingers written in the sheet are kept.</remarks>
public static class HandPlanner
{
    /// <param name="song">The song.</param>
    /// <param name="hand">The hand that plays it.</param>
    /// <param name="before">The plan of an earlier version of the song for the same hand: what has not changed is taken from it, and the result is the same as without.</param>
    public static SongHands Plan(Song song, PlayingHand hand, SongHands? before = null)
    {
        var notes = new NoteHand[song.NoteCount];
        var lines = new List<PlannedLine>(song.Parts.Count + song.Riffs.Count);
        foreach (var part in song.Parts) Add(part.Name, song.Bars, part.Bars, part.Neck);
        foreach (var riff in song.Riffs) Add(riff.Name, riff.Bars, riff.Content, riff.Neck);
        return new SongHands(hand, [.. notes], [.. lines.Take(song.Parts.Count).Select(l => l.Hands)], [.. lines.Skip(song.Parts.Count).Select(l => l.Hands)]) { Lines = [.. lines] };

        void Add(string name, ValueList<Bar> bars, ValueList<PartBar> content, Neck neck)
        {
            var known = before is null || before.Hand != hand ? null : Matching(before.Lines, lines.Count, name);
            lines.Add(Line(name, bars, content, neck, hand, notes, known));
        }
    }

    /// <summary>The plan for an average hand, or one of another size.</summary>
    public static SongHands Plan(Song song, HandSize size = HandSize.Average) => Plan(song, new PlayingHand(size));

    // The line of the same name, looked for first where it was.
    private static PlannedLine? Matching(ImmutableArray<PlannedLine> lines, int at, string name) =>
        at < lines.Length && lines[at].Hands.Name == name ? lines[at] : lines.FirstOrDefault(l => l.Hands.Name == name);

    private static PlannedLine Line(string name, ValueList<Bar> bars, ValueList<PartBar> content, Neck neck, PlayingHand hand, NoteHand[] notes, PlannedLine? before)
    {
        // A capo that moves makes another neck; the lengths differ little, so the first bar's is taken for all.
        var on = content.Count > 0 ? content[0].Neck : neck;
        if (before is not null && before.Neck != on) before = null;
        var rules = new GripRules(NeckGeometry.Of(on), hand.Size, hand.UsesThumb);
        var table = new GripTable(rules, before?.Grips);
        var read = MomentReader.Read(bars, content, table);
        var (plan, made) = new PlanSearch(rules, table).Find(read.Moments, before?.Search);
        for (var i = 0; i < plan.Grips.Length; i++)
        {
            if (plan.Grips[i] is not { } grip) continue;
            var moment = read.Moments[i];
            for (var press = 0; press < moment.Notes.Length; press++)
            {
                if (moment.IsNew[press]) notes[moment.Notes[press].Index] = new NoteHand(grip.Fingers[press], grip.Position);
            }
        }
        foreach (var (tied, first) in read.Ties) notes[tied.Index] = notes[first.Index];
        return new PlannedLine(new LoadReader(rules, read.Moments, plan).Read(name, bars, content), on, table, made);
    }
}

/// <summary>One line's plan with what was worked out for it.</summary>
/// <param name="Hands">The plan.</param>
/// <param name="Neck">The neck it is for.</param>
/// <param name="Grips">The grips of its holds.</param>
/// <param name="Search">The search that found it.</param>
internal sealed record PlannedLine(LineHands Hands, Neck Neck, GripTable Grips, SearchMade Search);
