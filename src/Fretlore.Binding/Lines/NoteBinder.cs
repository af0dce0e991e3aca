using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Fretlore.Binding.Draft;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lines;

/// <summary>Notes that start together, with where each is written and which strings go on sounding.</summary>
internal readonly record struct Struck(ImmutableArray<Note> Notes, ImmutableArray<TextSpan> Spans, ImmutableArray<OpenHold> Holds)
{
    public static Struck Nothing => new([], [], []);
}

/// <summary>How an event is reached and left, for the notes in it.</summary>
/// <param name="Joint">What is written before it.</param>
/// <param name="GlideIn">From no fixed fret, when it begins with <c>lo;</c> or <c>hi;</c>.</param>
/// <param name="Sounding">The notes of the event before.</param>
/// <param name="PalmMuted">True within a palm-mute span.</param>
/// <param name="LetsRing">True within a let-ring span.</param>
internal readonly record struct Reach(Joint Joint, GlideIn GlideIn, ImmutableArray<Note> Sounding, bool PalmMuted, bool LetsRing);

/// <summary>Makes notes on one neck from what is written.</summary>
internal sealed class NoteBinder(DiagnosticBag problems)
{
    /// <summary>The neck notes are made on; changes when a capo moves.</summary>
    public required Neck Neck { get; set; }

    /// <summary>One fret on each of some strings.</summary>
    public Struck Bind(NoteSyntax note, ImmutableArray<StringNumber> strings, Reach reach)
    {
        var marks = NoteMarks.Read(note.BentBefore, note.Marks, false, problems);
        var (notes, count) = (new Note[strings.Length], 0);
        foreach (var number in strings)
        {
            if (Make(note, number, marks, reach) is { } made) notes[count++] = made;
        }
        if (count < notes.Length) Array.Resize(ref notes, count);
        var spans = new TextSpan[count];
        Array.Fill(spans, note.Span);
        return new Struck(ImmutableCollectionsMarshal.AsImmutableArray(notes), ImmutableCollectionsMarshal.AsImmutableArray(spans), []);
    }

    /// <summary>A slot for each selected string when the count fits, or else one for each string of the neck.</summary>
    public Struck Bind(ChordSyntax chord, ImmutableArray<StringNumber> selected, Reach reach)
    {
        if (SlotStrings(chord, selected) is not { } strings) return Struck.Nothing;
        var outer = NoteMarks.Read(null, chord.Marks, false, problems);
        var notes = ImmutableArray.CreateBuilder<Note>(chord.Slots.Length);
        var spans = ImmutableArray.CreateBuilder<TextSpan>(chord.Slots.Length);
        var holds = ImmutableArray.CreateBuilder<OpenHold>(0);
        for (var slot = 0; slot < chord.Slots.Length; slot++)
        {
            if (chord.Slots[slot] is NoteSyntax note)
            {
                var marks = NoteMarks.Read(note.BentBefore, note.Marks, false, problems).With(outer);
                if (Make(note, strings[slot], marks, reach) is not { } made) continue;
                notes.Add(made);
                spans.Add(note.Span);
            }
            else if (chord.Slots[slot] is HoldSyntax hold)
            {
                holds.Add(new OpenHold(strings[slot], NoteMarks.Read(null, hold.Marks, true, problems).Moves, hold.Span));
            }
        }
        return new Struck(notes.DrainToImmutable(), spans.DrainToImmutable(), holds.DrainToImmutable());
    }

    /// <summary>A named shape; the frets of <paramref name="known"/> are one for each string of this neck or the shape does not fit.</summary>
    public Struck Bind(NamedShapeSyntax named, NamedShape known, Reach reach)
    {
        var shape = known.Shape;
        if (shape.LowToHigh.Count != Neck.StringCount)
        {
            problems.Add(PlaceProblems.ShapeOfOtherNeck(named.Span, named.Name.Text, shape.LowToHigh.Count, Neck.StringCount));
            return Struck.Nothing;
        }
        var marks = NoteMarks.Read(null, named.Marks, false, problems);
        var notes = ImmutableArray.CreateBuilder<Note>(Neck.StringCount);
        var spans = ImmutableArray.CreateBuilder<TextSpan>(Neck.StringCount);
        foreach (var (number, fret, _) in shape.On(Neck))
        {
            var held = marks.Finger is null && known.FingerOf(number, fret) is { } finger ? marks with { Finger = finger } : marks;
            if (Finish(number, fret, isDead: false, tapped: false, held, reach, named.Span) is not { } made) continue;
            notes.Add(made);
            spans.Add(named.Span);
        }
        return new Struck(notes.DrainToImmutable(), spans.DrainToImmutable(), []);
    }

    /// <summary>A picked string of a held shape, left ringing.</summary>
    public Note? Pluck(StringNumber number, Fret fret, NoteMarks marks, Reach reach, TextSpan span) =>
        Finish(number, fret, isDead: false, tapped: false, marks, reach with { LetsRing = true }, span);

    private ImmutableArray<StringNumber>? SlotStrings(ChordSyntax chord, ImmutableArray<StringNumber> selected)
    {
        if (chord.Slots.Length == selected.Length && selected.Length > 0) return selected;
        if (chord.Slots.Length == Neck.StringCount) return Places.All(Neck);
        problems.Add(PlaceProblems.WrongSlotCount(chord.Span, chord.Slots.Length, selected.Length, Neck.StringCount));
        return null;
    }

    private Note? Make(NoteSyntax note, StringNumber number, NoteMarks marks, Reach reach)
    {
        var isDead = note.Dead is { IsMissing: false };
        var fret = Numerals.Of(note.Fret);
        if (fret is null && !isDead) return null;
        var made = Finish(number, new Fret(fret ?? 0), isDead, note.Tap is { IsMissing: false }, marks, reach, note.Span);
        return made;
    }

    private Note? Finish(StringNumber number, Fret fret, bool isDead, bool tapped, NoteMarks marks, Reach reach, TextSpan span)
    {
        var harmonic = marks.Harmonic is null ? null : HarmonicOf(marks.Harmonic, number, fret, isDead, span);
        var touched = harmonic is { Kind: HarmonicKind.Natural };
        if (Neck.Capo.IsBehind(number, fret))
        {
            problems.Add(PlaceProblems.FretBehindCapo(span, number, fret, Neck.Capo));
            return null;
        }
        if (touched ? fret.Number > Neck.HighestFret.Number + 12 : !Neck.Has(number, fret))
        {
            problems.Add(PlaceProblems.FretBeyondNeck(span, fret.Number, Neck));
            return null;
        }
        if (marks.Moves.HasBend) CheckBend(fret, isDead, touched, marks);
        if (marks.Dip is { } dip && isDead) problems.Add(TechniqueProblems.DipOfDeadNote(dip.Span));
        return new Note
        {
            String = number,
            Fret = fret,
            Sounding = Sounding(number, fret, harmonic),
            Attack = Joining.Decide(reach.Joint, tapped, number, fret, isDead, reach.Sounding, span, problems),
            GlideIn = reach.GlideIn,
            Bend = marks.Moves.ToBend(marks.Moves.From),
            Vibrato = marks.Moves.Vibrato,
            Harmonic = harmonic,
            IsDead = isDead,
            IsGhost = marks.IsGhost,
            IsAccented = marks.IsAccented,
            IsStaccato = marks.IsStaccato,
            IsPalmMuted = marks.IsPalmMuted || reach.PalmMuted,
            LetsRing = reach.LetsRing,
            Tremolo = marks.Tremolo,
            Trill = marks.Trill is { } trill ? TrillOf(trill, number, fret, isDead || harmonic is not null) : null,
            DipCents = isDead ? 0 : marks.DipCents,
            Finger = marks.Finger,
        };
    }

    private Fret? TrillOf(MarkSyntax trill, StringNumber number, Fret fret, bool hasNoFret)
    {
        if (Numerals.Of(trill.Amount) is not { } other) return null;
        if (hasNoFret || other == fret.Number) problems.Add(TechniqueProblems.NoTrill(trill.Span));
        else if (Neck.Capo.IsBehind(number, new Fret(other))) problems.Add(PlaceProblems.FretBehindCapo(trill.Span, number, new Fret(other), Neck.Capo));
        else if (!Neck.Has(number, new Fret(other))) problems.Add(TechniqueProblems.TrillBeyondNeck(trill.Span, other, Neck.HighestFret.Number));
        else return new Fret(other);
        return null;
    }

    private void CheckBend(Fret fret, bool isDead, bool touched, NoteMarks marks)
    {
        if (isDead) problems.Add(TechniqueProblems.BendOfDeadNote(marks.Moves.Span));
        else if (fret.IsOpen || touched) problems.Add(TechniqueProblems.BendOfOpenString(marks.Moves.Span));
    }

    private Harmonic? HarmonicOf(MarkSyntax mark, StringNumber number, Fret fret, bool isDead, TextSpan span)
    {
        if (isDead)
        {
            problems.Add(TechniqueProblems.HarmonicOfDeadNote(mark.Span));
            return null;
        }
        if (mark.Amount is not { IsMissing: false, Text.Length: > 0 } amount)
        {
            if (Neck.Harmonic(number, Fret.Open, fret) is not null) return new Harmonic(HarmonicKind.Natural, fret);
            if (!Neck.Capo.IsBehind(number, fret)) problems.Add(TechniqueProblems.NoNodeAtFret(span, fret.Number, Neck.Capo.IsPartial ? Neck.Capo.On(number) : 0));
            return null;
        }
        if (amount.Text == "p") return new Harmonic(HarmonicKind.Pinch, fret);
        if (Numerals.Of(amount) is not { } touchedAt) return null;
        if (touchedAt > fret.Number && touchedAt < 100 && Neck.Harmonic(number, fret, new Fret(touchedAt)) is not null)
        {
            return new Harmonic(HarmonicKind.Touched, new Fret(touchedAt));
        }
        problems.Add(TechniqueProblems.NoNodeAbove(mark.Span, fret.Number, Neck.Above(number, fret, 12)!.Value.Number));
        return null;
    }

    /// <summary>The pitch that sounds; a pinch is written at its stopped pitch, for which partial speaks is left to the hand.</summary>
    private Height Sounding(StringNumber number, Fret fret, Harmonic? harmonic) => Sounding(Neck, number, fret, harmonic);

    /// <summary>The pitch at the onset of a note on a neck, harmonics included.</summary>
    public static Height Sounding(Neck neck, StringNumber number, Fret fret, Harmonic? harmonic) => harmonic?.Kind switch
    {
        HarmonicKind.Natural => neck.Open(number) + (neck.Harmonic(number, Fret.Open, fret) ?? 0),
        HarmonicKind.Touched => neck.Sounding(number, fret) + (neck.Harmonic(number, fret, harmonic.TouchedAt) ?? 0),
        _ => neck.Sounding(number, fret),
    };
}
