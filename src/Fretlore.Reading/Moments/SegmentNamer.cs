using Fretlore.Music;
using Fretlore.Reading.Chords;
using Fretlore.Score;

namespace Fretlore.Reading.Moments;

/// <summary>Names the stretches of a song, each set of notes once.</summary>
internal sealed class SegmentNamer
{
    // A name dearer than this says more about the notes by listing them than by naming them.
    private const double Doubtful = 3.2;

    // A note that sounds for less than this part of a broken chord may be passing by.
    private const double PassingShare = 0.16;
    private const double PassingShareInTwoVoices = 0.2;
    private const double WorthDropping = 0.4;

    // Two voices make a chord of two notes when they keep to it for about a bar.
    private const double TwoVoiceLength = 2;

    private readonly Dictionary<(int Set, int Bass, bool Doubled, Key Key), ChordNaming> known = [];

    internal ChordNaming Name(ReadOnlySpan<Height> heights, Key key)
    {
        var lowest = heights[0];
        foreach (var height in heights)
        {
            if (height < lowest) lowest = height;
        }
        var doubled = false;
        foreach (var height in heights) doubled |= height != lowest && height.PitchClass == lowest.PitchClass;
        var set = PitchClassSet.Of(heights);
        var id = (set.Bits, lowest.PitchClass, doubled, key);
        if (known.TryGetValue(id, out var naming)) return naming;
        naming = ChordNamer.Name(set, lowest.PitchClass, doubled, new ChordContext(key));
        known.Add(id, naming);
        return naming;
    }

    /// <summary>Names each stretch, joins those that are one broken chord, and takes the names off what is no chord.</summary>
    internal void Name(List<Segment> segments, Key key)
    {
        foreach (var segment in segments) NameOne(segment, key);
        for (var i = 0; i + 1 < segments.Count;)
        {
            if (!Joins(segments[i], segments[i + 1], key)) i++;
            else segments.RemoveAt(i + 1);
        }
        foreach (var segment in segments)
        {
            if (!IsChord(segment)) segment.Naming = null;
        }
    }

    private void NameOne(Segment segment, Key key)
    {
        segment.Naming = Name(segment.Heights(segment.Set), key);
        if (segment.IsBroken && segment.Shape is null) DropPassingNotes(segment, key);
    }

    private void DropPassingNotes(Segment segment, Key key)
    {
        var kept = segment.Set;
        while (kept.Count > 2 && segment.Naming is { } naming)
        {
            var (weakest, share) = segment.Weakest(kept);
            if (weakest < 0 || share > (segment.HasBassStrand ? PassingShareInTwoVoices : PassingShare)) return;
            kept = kept.Without(weakest);
            var without = Name(segment.Heights(kept), key);
            if (without.Candidates[0].Cost > naming.Candidates[0].Cost - WorthDropping) return;
            segment.Naming = without;
        }
    }

    // Two neighbours that ring, such as an alternating bass, are one chord when together they are no worse a chord than apart.
    private bool Joins(Segment first, Segment second, Key key)
    {
        if (first.Shape is not null || second.Shape is not null || !Rings(first) || !Rings(second)) return false;
        var joined = new Segment { Start = first.Start, IsBroken = true };
        foreach (var note in first.Notes) joined.Add(note);
        foreach (var note in second.Notes) joined.Add(note);
        // The first bass stays: a lower note after it alternates.
        var heights = joined.Heights(joined.Set);
        var bass = first.Lowest.Note.Sounding;
        for (var i = 0; i < heights.Length; i++)
        {
            if (heights[i] < bass) heights[i] += 12 * ((bass - heights[i] + 11) / 12);
        }
        var naming = Name(heights, key);
        var apart = Math.Max(CostOf(first), CostOf(second));
        if (naming.Candidates[0].Cost > apart + 0.1) return false;
        foreach (var note in second.Notes) first.Add(note);
        first.End = second.End;
        first.IsBroken = true;
        first.Naming = naming;
        DropPassingNotes(first, key);
        return true;
    }

    private static bool Rings(Segment segment) => segment.Lowest.Strand == StrandKind.Bass && segment.MostStruck < 3
        || segment.IsBroken || segment.MostStruck == 1 && segment.Notes.Count > 0 && segment.Notes[0].Note.LetsRing;

    private static double CostOf(Segment segment) =>
        segment.Naming is { Content: ChordContent.OneNote } ? 0.5 : segment.Best?.Cost ?? 0;

    private static bool IsChord(Segment segment)
    {
        if (segment.Naming is not { } naming) return false;
        return naming.Content switch
        {
            ChordContent.Chord => naming.Candidates[0].Cost <= Doubtful || segment.Shape is not null || segment.MostStruck >= 3 && segment.Length >= 1,
            ChordContent.TwoNotes => segment.Shape is not null || segment.HasBassStrand && segment.Length >= TwoVoiceLength || naming.Candidates[0].Kind.StartsWith('5') && segment.MostStruck > 1,
            _ => false,
        };
    }
}
