using System.Collections.Immutable;
using Fretlore.Binding.Draft;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Settings;
using Fretlore.Binding.Words;
using Fretlore.Guitar;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lines;

/// <content>Changes between parentheses, and shapes picked string by string.</content>
internal sealed partial class MusicBinder
{
    private void BindChange(ChangeSyntax written)
    {
        switch (ChangeReader.Read(SheetWord.From(written.Tokens), written.Span, Problems))
        {
            case null:
                break;
            case DynamicMark mark:
                (pendingDynamic, pendingSpan) = (mark.Dynamic, written.Span);
                break;
            case FermataMark:
                (pendingFermata, pendingSpan) = (true, written.Span);
                break;
            case ChordSymbolMark mark:
                (pendingChord, pendingChordSpan, pendingSpan) = (mark.Symbol, written.Span, written.Span);
                break;
            case TempoChange tempo:
                bar.Add(new PlacedChange(BarIsEmpty ? default : cursor.At, tempo, written.Span));
                break;
            case SegnoMark or CodaMark or JumpMark when isRiff:
                Problems.Add(FormProblems.JumpWithinRiff(written.Span));
                break;
            case JumpMark jump when scope == Scope.Line:
                AddJump(new PlacedChange(default, jump, written.Span));
                break;
            case not null when !BarIsEmpty || scope == Scope.Strand:
                Problems.Add(FormProblems.ChangeWithinBar(written.Span));
                break;
            case CapoChange capo:
                MoveCapo(capo, written);
                break;
            case MeterChange change when isRiff:
                meter = change.Meter;
                break;
            case var change:
                bar.Add(new PlacedChange(default, change, written.Span));
                break;
        }
    }

    // A jump is made at the end of the bar it stands in, or of the one that has just ended.
    private void AddJump(PlacedChange jump)
    {
        if (!BarIsEmpty) bar.Add(jump);
        else if (flow.Bars.Count == 0) Problems.Add(FormProblems.NothingToJumpFrom(jump.Span));
        else flow.Bars[^1] = flow.Bars[^1] with { Bar = flow.Bars[^1].Bar with { Changes = flow.Bars[^1].Bar.Changes.Add(jump) } };
    }

    private void MoveCapo(CapoChange capo, ChangeSyntax written)
    {
        if (isRiff) Problems.Add(FormProblems.CapoWithinRiff(written.Span));
        else
        {
            CapoReader.Check(capo.Capo, notes.Neck.Tuning, written.Span, Problems);
            notes.Neck = notes.Neck with { Capo = capo.Capo };
            recent.Clear();
        }
    }

    private void ReportLeftovers()
    {
        if ((pendingWords, pendingChord, pendingDynamic, pendingFermata) is not (null, null, null, false)) Problems.Add(FormProblems.NothingAfter(pendingSpan));
        foreach (var change in bar.TakeChanges()) Problems.Add(FormProblems.NothingAfter(change.Span));
        foreach (var strand in sides.Values.Prepend(main))
        {
            if (strand.GraceSpans.Count > 0) Problems.Add(TechniqueProblems.GraceWithoutNote(strand.GraceSpans[0]));
            if (strand.PickedGlide is { } joint) Problems.Add(TechniqueProblems.JointToNothing(joint.Span));
        }
    }

    private void BindPick(PickSyntax pick)
    {
        var frets = PickShape.Read(pick.Shape, notes.Neck, cursor.Place, context.Shapes, Problems);
        var shape = (pick.Shape as NamedShapeSyntax)?.Name.Text;
        bar.Touch(pick.Span);
        foreach (var item in pick.Items)
        {
            switch (item)
            {
                case TimeSyntax time:
                    SetTime(time);
                    break;
                case PickStringsSyntax strings:
                    Emit(Pluck(strings, frets, shape), strings.Span, Stroke.None, Roll.None, shape);
                    break;
                case RestSyntax rest:
                    Emit(Struck.Nothing, rest.Span, Stroke.None, Roll.None, null);
                    break;
                case HoldSyntax hold:
                    var moves = NoteMarks.Read(null, hold.Marks, true, Problems).Moves;
                    Emit(new Struck([], [], [new OpenHold(null, moves, hold.Span)]), hold.Span, Stroke.None, Roll.None, shape);
                    break;
                default:
                    bar.Break();
                    break;
            }
        }
    }

    private Struck Pluck(PickStringsSyntax strings, Dictionary<StringNumber, Fret> frets, string? shape)
    {
        var known = shape is null ? null : context.Shapes.GetValueOrDefault(shape);
        var reach = ReachOf(null, null);
        var plucked = ImmutableArray.CreateBuilder<Note>();
        var spans = ImmutableArray.CreateBuilder<TextSpan>();
        foreach (var number in Places.ReadDigits(strings.Strings, strings.Span, notes.Neck, Problems))
        {
            if (Numerals.Of(strings.Fret) is { } changed) frets[number] = new Fret(changed);
            if (!frets.TryGetValue(number, out var fret))
            {
                // An unknown shape has been reported where it is named.
                if (frets.Count > 0) Problems.Add(PlaceProblems.StringNotInShape(strings.Span, number.Value));
                continue;
            }
            if (notes.Pluck(number, fret, NoteMarks.None with { Finger = known?.FingerOf(number, fret) }, reach, strings.Span) is not { } made) continue;
            plucked.Add(made);
            spans.Add(strings.Span);
        }
        return new Struck(plucked.ToImmutable(), spans.ToImmutable(), []);
    }
}
