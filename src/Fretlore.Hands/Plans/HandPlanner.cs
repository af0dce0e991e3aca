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
    public static SongHands Plan(Song song, HandSize size = HandSize.Average)
    {
        var notes = new NoteHand[song.NoteCount];
        var parts = song.Parts.Select(part => Line(part.Name, song.Bars, part.Bars, part.Neck, size, notes)).ToImmutableArray();
        var riffs = song.Riffs.Select(riff => Line(riff.Name, riff.Bars, riff.Content, riff.Neck, size, notes)).ToImmutableArray();
        return new SongHands(size, [.. notes], parts, riffs);
    }

    private static LineHands Line(string name, ValueList<Bar> bars, ValueList<PartBar> content, Neck neck, HandSize size, NoteHand[] notes)
    {
        // A capo that moves makes another neck; the lengths differ little, so the first bar's is taken for all.
        var rules = new GripRules(NeckGeometry.Of(content.Count > 0 ? content[0].Neck : neck), size);
        var table = new GripTable(rules);
        var read = MomentReader.Read(bars, content, table);
        var plan = new PlanSearch(rules, table).Find(read.Moments);
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
        return new LoadReader(rules, read.Moments, plan).Read(name, bars, content);
    }
}
