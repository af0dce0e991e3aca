using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Reading.Chords;
using Fretlore.Score;

namespace Fretlore.Reading.Moments;

/// <summary>Names chords again by what is around them: the bass part below, and the chords before and after.</summary>
/// <remarks>
/// A bass part is one whose lowest and highest strings are a fourth or more below the other's. What it holds under a chord is the chord's bass: C E G A over its A is
/// Am7. Between names of nearly the same cost the one wins whose root stays, or falls by a fifth to the next.
/// </remarks>
internal sealed class BandContext(Song song, List<Segment>[][] tracks, ImmutableArray<Key> keys)
{
    private const int BassBelow = 5;

    // Part of a chord's time for which the bass part must hold one note.
    private const double Held = 0.5;
    private const double SameRoot = 0.2;
    private const double FallsAFifth = 0.15;

    internal void Apply()
    {
        for (var part = 0; part < tracks.Length; part++)
        {
            if (BassOf(part) is { } bass) PutOver(tracks[part], tracks[bass]);
            Rank([.. tracks[part].SelectMany(bar => bar).Where(s => s.Best is not null)]);
        }
    }

    private int? BassOf(int part)
    {
        var own = song.Parts[part].Neck.Tuning.LowToHigh;
        int? found = null;
        for (var other = 0; other < tracks.Length; other++)
        {
            // A seventh string reaches as low, but its top is a guitar's.
            var strings = song.Parts[other].Neck.Tuning.LowToHigh;
            if (strings[0].Midi > own[0].Midi - BassBelow || strings[^1].Midi > own[^1].Midi - BassBelow) continue;
            if (found is null || strings[0].Midi < song.Parts[found.Value].Neck.Tuning.LowToHigh[0].Midi) found = other;
        }
        return found;
    }

    private void PutOver(List<Segment>[] chords, List<Segment>[] below)
    {
        for (var bar = 0; bar < chords.Length; bar++)
        {
            var at = 0;
            foreach (var chord in chords[bar])
            {
                if (chord.Naming is not { Content: ChordContent.Chord or ChordContent.TwoNotes }) continue;
                while (at < below[bar].Count && below[bar][at].End <= chord.Start) at++;
                if (HeldBelow(chord, below[bar], at) is not { } bass) continue;
                var naming = ChordNamer.Name(chord.Set, bass, chord.Set.Contains(bass), new ChordContext(keys[bar]));
                if (naming.Content == ChordContent.OneNote) continue;
                chord.Naming = naming with { Candidates = [.. naming.Candidates.Select(c => c with { Reason = c.Reason + " The bass part gives the bass." })] };
            }
        }
    }

    // The pitch class that the bass part has under most of a chord, when there is one.
    private static int? HeldBelow(Segment chord, List<Segment> below, int from)
    {
        Span<double> held = stackalloc double[12];
        held.Clear();
        for (var i = from; i < below.Count && below[i].Start < chord.End; i++)
        {
            foreach (var note in below[i].Notes)
            {
                if (note.Note.Sounding >= chord.Lowest.Note.Sounding) continue;
                var length = (Beats.Min(note.WrittenEnd, chord.End) - Beats.Max(note.Start, chord.Start)).ToDouble();
                if (length > 0) held[note.Note.Sounding.PitchClass] += length;
            }
        }
        var most = chord.Lowest.Note.Sounding.PitchClass;
        for (var above = 1; above < 12; above++)
        {
            var pitchClass = (chord.Lowest.Note.Sounding.PitchClass + above) % 12;
            if (held[pitchClass] > held[most]) most = pitchClass;
        }
        return held[most] >= Held * chord.Length && held[most] > 0 ? most : null;
    }

    private static void Rank(List<Segment> chords)
    {
        for (var i = 0; i < chords.Count; i++)
        {
            var naming = chords[i].Naming!;
            var candidates = naming.Candidates;
            if (candidates.Length < 2 || candidates[1].Cost - candidates[0].Cost > SameRoot + FallsAFifth) continue;
            int? before = i > 0 ? chords[i - 1].Best!.Root.PitchClass : null;
            int? after = i + 1 < chords.Count ? chords[i + 1].Best!.Root.PitchClass : null;
            var best = 0;
            for (var c = 1; c < candidates.Length; c++)
            {
                if (Cost(candidates[c], before, after) < Cost(candidates[best], before, after) - 1e-9) best = c;
            }
            if (best == 0) continue;
            var chosen = candidates[best];
            var why = chosen.Root.PitchClass == before || chosen.Root.PitchClass == after
                ? " The chord beside it has the same root." : " Its root falls a fifth to the next chord's.";
            chords[i].Naming = naming with { Candidates = [chosen with { Reason = chosen.Reason + why }, .. candidates.RemoveAt(best)] };
        }
    }

    // Between names of nearly the same cost, by the roots before and after.
    private static double Cost(ChordReading name, int? before, int? after)
    {
        var root = name.Root.PitchClass;
        return name.Cost - (root == before || root == after ? SameRoot : 0) - (after is { } next && NoteName.Wrap(next - root, 12) == 5 ? FallsAFifth : 0);
    }
}
