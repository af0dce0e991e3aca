using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Placing;

/// <summary>Finds where on a string a note can be played as it is meant: a bend needs a stopped string, a harmonic a node.</summary>
internal static class FretFinder
{
    // In semitones above the open string, best in tone first (common practice).
    private static readonly int[] Nodes = [12, 7, 5, 19, 4, 9, 24, 3, 16, 28, 31];

    private const int TouchedAbove = 12;

    /// <summary>The place on a string, and what it costs beyond a plain one; null where the string has none.</summary>
    /// <param name="open">The note.</param>
    /// <param name="number">The string.</param>
    /// <param name="octaves">Octaves it is moved by.</param>
    public static (NotePlace Place, double Cost)? On(OpenNote open, StringNumber number, int octaves)
    {
        var note = open.Note;
        var neck = open.Neck;
        if (note.IsDead && open.Home is not null)
        {
            // A dead note has no pitch: it keeps its fret.
            var at = new Fret(Math.Min(open.OwnFret.Number, neck.HighestFret.Number));
            if (neck.Capo.IsBehind(number, at)) at = Fret.Open;
            return (new NotePlace(number, at, neck.Sounding(number, at), null), 0);
        }
        var wanted = note.Sounding + 12 * octaves;
        return note.Harmonic?.Kind switch
        {
            HarmonicKind.Natural => Natural(open, number, wanted),
            HarmonicKind.Touched => Touched(open, number, wanted, open.Semitones(open.OwnFret, note.Harmonic.TouchedAt), 0),
            _ => Stopped(open, number, wanted),
        };
    }

    private static (NotePlace, double)? Stopped(OpenNote open, StringNumber number, Height wanted)
    {
        var (note, neck) = (open.Note, open.Neck);
        if (neck.FretOf(number, wanted) is not { } fret || neck.Capo.AboveOpen(number, fret) < LowestFret(note, open.WasOpen)) return null;
        // The other note of a trill is on the neck too.
        if (note.Trill is { } trill && !(neck.Above(number, fret, open.Semitones(note.Fret, trill)) is { } other && neck.Has(number, other))) return null;
        var harmonic = note.Harmonic is { Kind: HarmonicKind.Pinch } ? new Harmonic(HarmonicKind.Pinch, fret) : null;
        return (new NotePlace(number, fret, wanted, harmonic), 0);
    }

    private static int LowestFret(Note note, bool wasOpen)
    {
        if (note.GlideIn == GlideIn.FromBelow || note.GlideOut == GlideOut.Downwards) return 2;
        var isShaped = note.Bend is not null || note.Vibrato.Width != VibratoWidth.None && !wasOpen;
        var needsFinger = note.Attack is Attack.Tap or Attack.Glide or Attack.PickedGlide or Attack.HammerOn or Attack.HammerFromNowhere
            || note.GlideIn != GlideIn.None || note.GlideOut != GlideOut.None || note.Finger is not null && !wasOpen;
        return isShaped || needsFinger ? 1 : 0;
    }

    private static (NotePlace, double)? Natural(OpenNote open, StringNumber number, Height wanted)
    {
        var neck = open.Neck;
        var above = wanted - neck.Open(number);
        if (open.Semitones(Fret.Open, open.OwnFret) is var own && IsNode(own)) return (Place(own), 0);
        for (var i = 0; i < Nodes.Length; i++)
        {
            if (IsNode(Nodes[i])) return (Place(Nodes[i]), PlacingCosts.OtherNode * (i + 1));
        }
        return Touched(open, number, wanted, TouchedAbove, PlacingCosts.TouchedInstead);

        bool IsNode(int semitones) => HarmonicSeries.SemitonesAbove(semitones) == above && neck.Capo.Written(number, semitones).Number <= neck.HighestFret.Number + 12;

        NotePlace Place(int semitones) => new(number, At(semitones), wanted, new Harmonic(HarmonicKind.Natural, At(semitones)));

        Fret At(int semitones) => neck.Capo.Written(number, semitones);
    }

    private static (NotePlace, double)? Touched(OpenNote open, StringNumber number, Height wanted, int distance, double cost)
    {
        if (HarmonicSeries.SemitonesAbove(distance) is not { } above) return null;
        if (open.Neck.FretOf(number, wanted + -above) is not { } fret || fret.IsOpen && !open.WasOpen) return null;
        return (new NotePlace(number, fret, wanted, new Harmonic(HarmonicKind.Touched, open.Neck.Above(number, fret, distance)!.Value)), cost);
    }
}
