using System.Collections.Immutable;
using Fretlore.Binding.Lines;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Settings;

/// <summary>Binds the named shapes of a sheet.</summary>
internal static class ShapeBinder
{
    /// <summary>Each shape on the first neck that has as many strings: the song's, or else a part's or riff's.</summary>
    public static void Bind(SheetSyntax sheet, ImmutableArray<Neck> necks, BindContext context)
    {
        foreach (var shape in sheet.Blocks.OfType<ShapeSyntax>())
        {
            if (shape.Name.IsMissing || shape.Frets is null) continue;
            if (context.Shapes.ContainsKey(shape.Name.Text)) context.Problems.Add(NameProblems.DeclaredTwice(shape.Name, "shape"));
            else if (Read(shape.Name.Text, shape.Frets, necks, context.Problems) is { } read) context.Shapes[shape.Name.Text] = read;
        }
    }

    private static NamedShape? Read(string name, ChordSyntax chord, ImmutableArray<Neck> necks, DiagnosticBag problems)
    {
        var neck = necks.FirstOrDefault(n => n.StringCount == chord.Slots.Length);
        if (neck is null)
        {
            problems.Add(PlaceProblems.WrongShapeCount(chord.Span, chord.Slots.Length, necks.Select(n => n.StringCount).Distinct()));
            return null;
        }
        var slots = chord.Slots.Select(slot => ReadSlot(slot, neck, problems)).ToList();
        if (slots.TrueForAll(s => s.Fret is null)) problems.Add(PlaceProblems.SilentShape(chord.Span));
        return new NamedShape(name, new Shape(slots.Select(s => s.Fret).ToValueList()), neck)
        {
            Fingers = slots.Exists(s => s.Finger is not null) ? slots.Select(s => s.Finger).ToValueList() : default,
        };
    }

    // In a shape an x is a string that is not sounded, as in chord boxes; in music it is a dead note.
    private static (Fret? Fret, Finger? Finger) ReadSlot(SyntaxNode slot, Neck neck, DiagnosticBag problems)
    {
        if (slot is HoldSyntax) problems.Add(PlaceProblems.OnlyFretsInShape(slot.Span));
        if (slot is not NoteSyntax note || note.Dead is { IsMissing: false }) return default;
        if (note.Marks.Any(m => m.Kind != MarkKind.Finger) || note.Tap is not null || note.BentBefore is not null) problems.Add(PlaceProblems.OnlyFretsInShape(slot.Span));
        if (Numerals.Of(note.Fret) is not { } fret) return default;
        var finger = NoteMarks.Read(null, [.. note.Marks.Where(m => m.Kind == MarkKind.Finger)], false, problems).Finger;
        // No finger holds an open string.
        if (finger is not null && fret == 0) problems.Add(PlaceProblems.OnlyFretsInShape(slot.Span));
        if (fret <= neck.HighestFret.Number) return (new Fret(fret), fret == 0 ? null : finger);
        problems.Add(PlaceProblems.FretBeyondNeck(slot.Span, fret, neck));
        return default;
    }
}
