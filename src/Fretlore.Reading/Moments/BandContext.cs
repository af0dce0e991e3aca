using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Reading.Chords;
using Fretlore.Score;

namespace Fretlore.Reading.Moments;

/// <summary>Names chords again by what is around them: the bass part below, and the chords before and after.</summary>
/// <remarks>
/// A bass part is one whose lowest and highest strings are a fourth or more below the other's. What it holds under a chord is the chord's bass: C E G A over its A is
/// Am7. A third or a root that it lacks and another part holds belongs to its name. Between names of nearly the same cost the one wins whose root stays, or falls by a fifth to the next, or is what a bass voice plays in turn with its fifth.
/// </remarks>
internal sealed class BandContext(Song song, List<Segment>[][] tracks, ImmutableArray<Key> keys)
{
    private const int BassBelow = 5;

    // Part of a chord's time for which the bass part must hold one note.
    private const double Held = 0.5;
    private const double SameRoot = 0.2;
    private const double FallsAFifth = 0.15;

    // A thumb that goes from root to fifth says the root, whatever the tune has above it.
    private const double RootAndFifth = 0.9;

    internal void Apply()
    {
        for (var part = 0; part < tracks.Length; part++)
        {
            if (BassOf(part) is { } bass) PutOver(tracks[part], tracks[bass]);
            if (tracks.Length > 1) Complete(part);
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

    // A third, or a root, that a chord lacks and another part holds.
    private void Complete(int part)
    {
        for (var bar = 0; bar < tracks[part].Length; bar++)
        {
            foreach (var chord in tracks[part][bar])
            {
                if (chord is not { Naming.Content: ChordContent.Chord, Best.Name: { Kind: { Omitted.IsEmpty: false } kind } name }) continue;
                foreach (var lacking in kind.Omitted)
                {
                    var pitchClass = (name.Root.PitchClass + lacking) % 12;
                    if (lacking == kind.Family.Fifth || Others(part, bar, chord, pitchClass) < Held * chord.Length) continue;
                    var whole = ChordNamer.Name(chord.Set.With(pitchClass), name.Bass.PitchClass, true, new ChordContext(keys[bar]));
                    if (whole.Candidates[0].Cost >= chord.Best.Cost) continue;
                    var words = $" Another part sounds its {Spoken.Degree(kind.DegreeOf(lacking))}.";
                    chord.Naming = whole with { Candidates = [.. whole.Candidates.Select(c => c.Root == name.Root ? c with { Reason = c.Reason + words } : c)] };
                    break;
                }
            }
        }
    }

    // For how much of a chord's time another part sounds a pitch class, at most all of it.
    private double Others(int part, int bar, Segment chord, int pitchClass)
    {
        var most = 0.0;
        for (var other = 0; other < tracks.Length; other++)
        {
            if (other == part) continue;
            var length = 0.0;
            foreach (var segment in tracks[other][bar])
            {
                var (from, to) = (Beats.Max(segment.Start, chord.Start), Beats.Min(segment.End, chord.End));
                if (to <= from || !segment.Set.Contains(pitchClass)) continue;
                foreach (var note in segment.Notes)
                {
                    if (note.Note.Sounding.PitchClass == pitchClass) length += Math.Max(0, (Beats.Min(note.WrittenEnd, to) - Beats.Max(note.Start, from)).ToDouble());
                }
            }
            most = Math.Max(most, length);
        }
        return most;
    }

    private static void Rank(List<Segment> chords)
    {
        for (var i = 0; i < chords.Count; i++)
        {
            var naming = chords[i].Naming!;
            var candidates = naming.Candidates;
            int? thumb = chords[i].BassGoesToFifth ? chords[i].Lowest.Note.Sounding.PitchClass : null;
            var most = SameRoot + FallsAFifth + (thumb is null ? 0 : RootAndFifth);
            if (candidates.Length < 2 || candidates[1].Cost - candidates[0].Cost > most) continue;
            var around = new Around(
                i > 0 ? chords[i - 1].Best!.Root.PitchClass : null, i + 1 < chords.Count ? chords[i + 1].Best!.Root.PitchClass : null, thumb);
            var best = 0;
            for (var c = 1; c < candidates.Length; c++)
            {
                if (Cost(candidates[c], around) < Cost(candidates[best], around) - 1e-9) best = c;
            }
            if (best == 0) continue;
            var chosen = candidates[best];
            chords[i].Naming = naming with { Candidates = [chosen with { Reason = chosen.Reason + Why(chosen.Root.PitchClass, around) }, .. candidates.RemoveAt(best)] };
        }
    }

    private readonly record struct Around(int? Before, int? After, int? Thumb);

    private static string Why(int root, Around around) => root == around.Thumb ? " The bass goes from its root to its fifth."
        : root == around.Before || root == around.After ? " The chord beside it has the same root." : " Its root falls a fifth to the next chord's.";

    // Between names of nearly the same cost, by the roots before and after and by the bass voice.
    private static double Cost(ChordReading name, Around around)
    {
        var root = name.Root.PitchClass;
        return name.Cost - (root == around.Before || root == around.After ? SameRoot : 0)
            - (around.After is { } next && NoteName.Wrap(next - root, 12) == 5 ? FallsAFifth : 0) - (root == around.Thumb ? RootAndFifth : 0);
    }
}
