using System.Collections.Immutable;
using Fretlore.Binding.Draft;
using Fretlore.Binding.Problems;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lines;

/// <content>Phrases and the events in them.</content>
internal sealed partial class MusicBinder
{
    /// <summary>Finer divisions than this come only from mixing tuplets that never meet.</summary>
    private const long FinestDivision = 100_000;

    private string? pendingWords;
    private string? pendingChord;
    private TextSpan pendingChordSpan;
    private Dynamic? pendingDynamic;
    private bool pendingFermata;
    private TextSpan pendingSpan;

    private void BindPhrase(PhraseSyntax phrase)
    {
        JointSyntax? joint = null;
        EdgeSyntax? edge = null;
        var hasEvent = false;
        foreach (var piece in phrase.Pieces)
        {
            switch (piece)
            {
                case JointSyntax sign:
                    joint = sign;
                    break;
                case EdgeSyntax word when hasEvent:
                    GlideOut(word, joint);
                    joint = null;
                    break;
                case EdgeSyntax word:
                    edge = word;
                    break;
                case EventSyntax written:
                    BindEvent(written, joint, edge);
                    (joint, edge) = (null, null);
                    hasEvent = true;
                    break;
            }
        }
        if (joint is null) return;
        if (joint.IsGlide) cursor.PickedGlide = joint;
        else Problems.Add(TechniqueProblems.JointToNothing(joint.Span));
    }

    private void GlideOut(EdgeSyntax edge, JointSyntax? joint)
    {
        if (joint is { IsGlide: false }) Problems.Add(TechniqueProblems.EdgeNeedsGlide(joint.Span));
        if (cursor.Events.Count == 0) return;
        var last = cursor.Events[^1];
        var way = edge.IsLow ? Score.GlideOut.Downwards : Score.GlideOut.Upwards;
        if (last.Event.IsRest && last.Holds.Length == 0) Problems.Add(TechniqueProblems.JointToNothing(edge.Span));
        cursor.Events[^1] = last with
        {
            Event = last.Event with { Notes = last.Event.Notes.Select(n => n with { GlideOut = way }).ToValueList() },
            Holds = [.. last.Holds.Select(h => h with { GlideOut = way })],
        };
    }

    private void BindEvent(EventSyntax written, JointSyntax? joint, EdgeSyntax? edge)
    {
        var reach = ReachOf(joint, edge);
        var stroke = written.Stroke is { IsMissing: false } sign ? sign.Text == "u" ? Stroke.Up : Stroke.Down : Stroke.None;
        bar.Touch(written.Span);
        switch (written.Sound)
        {
            case NoteSyntax note:
                Sound(written, notes.Bind(note, PlaceOf(note), reach), stroke);
                break;
            case ChordSyntax chord:
                Sound(written, notes.Bind(chord, cursor.Place, reach), stroke, RollOf(chord.Roll));
                break;
            case NamedShapeSyntax named:
                var struck = ShapeNamed(named) is { } shape ? notes.Bind(named, shape, reach) : Struck.Nothing;
                Sound(written, struck, stroke, RollOf(named.Roll), named.Name.Text);
                break;
            case HoldSyntax hold:
                if (reach.Joint != Joint.None) Problems.Add(TechniqueProblems.JointToHold(hold.Span));
                var moves = NoteMarks.Read(null, hold.Marks, true, Problems).Moves;
                Sound(written, new Struck([], [], [new OpenHold(null, moves, hold.Span)]), Stroke.None);
                break;
            case RestSyntax rest:
                if (reach.Joint != Joint.None) Problems.Add(TechniqueProblems.JointToNothing(rest.Span));
                Sound(written, Struck.Nothing, stroke);
                break;
        }
    }

    private Reach ReachOf(JointSyntax? joint, EdgeSyntax? edge)
    {
        var kind = joint is null
            ? cursor.PickedGlide is null ? Joint.None : Joint.PickedGlide
            : joint.IsGlide ? Joint.Glide : Joint.Legato;
        cursor.PickedGlide = null;
        var glideIn = GlideIn.None;
        if (edge is not null)
        {
            if (joint is { IsGlide: false }) Problems.Add(TechniqueProblems.EdgeNeedsGlide(joint.Span));
            glideIn = edge.IsLow ? GlideIn.FromBelow : GlideIn.FromAbove;
            kind = Joint.None;
        }
        return new Reach(kind, glideIn, cursor.Sounding, flags.Has(SpanKind.PalmMute), flags.Has(SpanKind.LetRing));
    }

    private ImmutableArray<StringNumber> PlaceOf(NoteSyntax note)
    {
        if (note.At is { } at) return Places.Read(at, notes.Neck, Problems);
        if (cursor.Place.Length > 0) return cursor.Place;
        Problems.Add(PlaceProblems.NoPlaceYet(note.Span));
        return cursor.Place = [new StringNumber(1)];
    }

    private NamedShape? ShapeNamed(NamedShapeSyntax named)
    {
        if (named.Name.IsMissing) return null;
        if (context.Shapes.TryGetValue(named.Name.Text, out var shape)) return shape;
        Problems.Add(NameProblems.UnknownShape(named.Name, context.Shapes.Keys));
        return null;
    }

    private static Roll RollOf(SyntaxToken? word) => word switch
    {
        null or { IsMissing: true } => Roll.None,
        { Text: "roll-down" } => Roll.HighToLow,
        { Text: "rake" } => Roll.Rake,
        _ => Roll.LowToHigh,
    };

    private void Sound(EventSyntax written, Struck struck, Stroke stroke, Roll roll = Roll.None, string? shape = null)
    {
        if (written.Grace is { IsMissing: false } grace) AddGrace(grace, struck);
        else Emit(struck, written.Span, stroke, roll, shape);
    }

    private void AddGrace(SyntaxToken grace, Struck struck)
    {
        if (struck.Notes.Length == 0)
        {
            Problems.Add(TechniqueProblems.GraceWithoutNote(grace.Span));
            return;
        }
        cursor.Graces.AddRange(struck.Notes);
        cursor.GraceSpans.AddRange(struck.Spans);
        cursor.Sounding = struck.Notes;
    }

    private void Emit(Struck struck, TextSpan span, Stroke stroke, Roll roll, string? shape)
    {
        if (!context.Limits.Take(0, Math.Max(1, struck.Notes.Length), 0, span, Problems)) return;
        if (cursor.Cell is null)
        {
            Problems.Add(TimeProblems.NoTimeYet(span));
            cursor.SetTime(TimeCell.Quarters);
            bar.Break();
        }
        var value = cursor.NextValue();
        var tuplet = cursor.Cell?.Tuplet;
        var end = cursor.At + (tuplet is { } t ? value.Length * t.Factor : value.Length);
        if (end.Denominator > FinestDivision)
        {
            Problems.Add(TimeProblems.TupletsNeverMeet(span));
            bar.Break();
            (tuplet, end) = (null, cursor.At + value.Length);
        }
        if (roll == Roll.Rake && struck.Notes.Length == 1) Problems.Add(TechniqueProblems.RakeOfOneString(span));
        var isPicked = struck.Notes.Any(n => n.Attack is Attack.Picked or Attack.PickedGlide);
        var pattern = flags.Strokes.Take() switch { 'd' => Stroke.Down, 'u' => Stroke.Up, _ => Stroke.None };
        var graces = cursor.Graces.Count;
        cursor.Events.Add(new DraftEvent(
            new Event
            {
                Start = cursor.At,
                Value = value,
                Tuplet = tuplet,
                Notes = new(struck.Notes),
                Graces = graces == 0 ? default : cursor.Graces.ToValueList(),
                Stroke = stroke != Stroke.None ? stroke : isPicked ? pattern : Stroke.None,
                PickingFinger = isPicked ? flags.Fingers.Take() : null,
                Roll = roll,
                Spans = flags.Spans,
                HasFermata = pendingFermata,
                Dynamic = pendingDynamic,
                Words = pendingWords,
                Shape = shape,
                ChordSymbol = pendingChord,
            },
            graces == 0 ? struck.Spans : [.. cursor.GraceSpans, .. struck.Spans],
            struck.Holds)
        {
            SymbolSpan = pendingChord is null ? null : pendingChordSpan,
        });
        (pendingDynamic, pendingWords, pendingChord, pendingFermata) = (null, null, null, false);
        cursor.Graces.Clear();
        cursor.GraceSpans.Clear();
        cursor.At = end;
        cursor.Sounding = After(struck);
    }

    private ImmutableArray<Note> After(Struck struck) => struck.Holds.Length == 0 ? struck.Notes : AfterHolds(struck);

    private ImmutableArray<Note> AfterHolds(Struck struck)
    {
        if (struck.Holds.Any(h => h.String is null)) return cursor.Sounding;
        return [.. cursor.Sounding.Where(n => struck.Holds.Any(h => h.String == n.String)), .. struck.Notes];
    }
}
