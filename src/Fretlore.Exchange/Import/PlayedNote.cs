using Fretlore.Exchange.Reports;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Import;

/// <summary>Makes notes that hands can play of what a file says; what they can't is left out and said.</summary>
internal static class PlayedNote
{
    private const int HighestBend = 1200;

    /// <summary>A trill whose other pitch the file does not say.</summary>
    public static readonly Fret UnknownTrill = new(61);

    public static Note Of(PlacedNote placed, Neck neck, Remarks remarks, string part, int bar)
    {
        var marks = placed.Note.Marks;
        var note = marks with
        {
            String = placed.String,
            Fret = placed.Fret,
            Sounding = neck.Sounding(placed.String, placed.Fret),
            Harmonic = HarmonicOf(placed, neck, remarks, part, bar),
            Bend = BendOf(placed.Note.Bends),
        };
        if (note.Harmonic is not null) note = note with { Sounding = new Height(placed.Note.Midi) };
        else if (placed.Note.String is not null && note.Sounding.Midi != placed.Note.Midi && !note.IsDead)
            remarks.Add(RemarkKind.Changed, "A note's pitch is not that of its string and fret; string and fret are kept.", part, bar + 1);
        if (note.Fret.Number > neck.HighestFret.Number && note.Harmonic is not { Kind: HarmonicKind.Natural }) note = note with { Fret = neck.HighestFret };
        if (note.Bend is not null && (note.Fret.IsOpen || note.IsDead || note.Harmonic is { Kind: HarmonicKind.Natural }))
        {
            remarks.Add(RemarkKind.LeftOut, "A bend of an open string or a dead note.", part, bar + 1);
            note = note with { Bend = null };
        }
        if (note.Trill is not null) note = note with { Trill = TrillOf(placed, note, neck, remarks, part, bar) };
        if (note.Attack == Attack.Tap && note.Fret.IsOpen) note = note with { Attack = Attack.Picked };
        return note with { Vibrato = note.Vibrato with { AfterMoves = Math.Min(note.Vibrato.AfterMoves, note.Bend?.ToCents.Count ?? 0) } };
    }

    private static Harmonic? HarmonicOf(PlacedNote placed, Neck neck, Remarks remarks, string part, int bar)
    {
        if ((placed.Harmonic ?? placed.Note.Marks.Harmonic) is not { } harmonic || placed.Note.Marks.IsDead) return null;
        var (number, fret) = (placed.String, placed.Fret);
        switch (harmonic.Kind)
        {
            case HarmonicKind.Natural when neck.Harmonic(number, Fret.Open, fret) is not null && fret.Number <= neck.HighestFret.Number + 12:
                return harmonic with { TouchedAt = placed.Fret };
            case HarmonicKind.Touched when neck.Harmonic(number, fret, harmonic.TouchedAt) is not null:
                return harmonic;
            case HarmonicKind.Touched:
                return harmonic with { TouchedAt = neck.Above(number, fret, 12)!.Value };
            case HarmonicKind.Pinch:
                return harmonic with { TouchedAt = placed.Fret };
            default:
                remarks.Add(RemarkKind.LeftOut, "A natural harmonic over a fret where the string has no node.", part, bar + 1);
                return null;
        }
    }

    // As many frets from the note as in the file; a whole step above where the file does not say.
    private static Fret? TrillOf(PlacedNote placed, Note note, Neck neck, Remarks remarks, string part, int bar)
    {
        var isSaid = placed.Note.Marks.Trill != UnknownTrill;
        var said = placed.Note.String is { } number && neck.Tuning.Has(new StringNumber(number)) ? new StringNumber(number) : note.String;
        var semitones = isSaid ? neck.Semitones(said, placed.Note.Fret is { } fret ? new Fret(fret) : note.Fret, placed.Note.Marks.Trill!.Value) : 2;
        var other = neck.Above(note.String, note.Fret, semitones);
        var canBe = other is { } there && neck.Has(note.String, there) && there != note.Fret && !note.IsDead && note.Harmonic is null;
        if (!canBe) remarks.Add(RemarkKind.LeftOut, "A trill that no fret is there for.", part, bar + 1);
        else if (!isSaid) remarks.Add(RemarkKind.Changed, "A trill's other pitch is not said: a whole step above is taken.", part, bar + 1);
        return canBe ? other : null;
    }

    /// <summary>Bends one after another as one, or null when there are none.</summary>
    public static Bend? BendOf(List<(int Cents, bool Before)> bends)
    {
        var (from, at) = (0, 0);
        var moves = new List<int>();
        foreach (var (cents, isBefore) in bends)
        {
            var to = Math.Clamp(at + cents, -HighestBend, HighestBend);
            if (isBefore && moves.Count == 0) from = at = Math.Max(0, to);
            else moves.Add(at = to);
        }
        return bends.Count == 0 ? null : new Bend(from, moves.ToValueList());
    }
}
