using System.Collections.Immutable;
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
        var frets = new List<Fret?>();
        foreach (var slot in chord.Slots) frets.Add(ReadSlot(slot, neck, problems));
        if (frets.All(f => f is null)) problems.Add(PlaceProblems.SilentShape(chord.Span));
        return new NamedShape(name, new Shape(frets.ToValueList()), neck);
    }

    // In a shape an x is a string that is not sounded, as in chord boxes; in music it is a dead note.
    private static Fret? ReadSlot(SyntaxNode slot, Neck neck, DiagnosticBag problems)
    {
        if (slot is HoldSyntax) problems.Add(PlaceProblems.OnlyFretsInShape(slot.Span));
        if (slot is not NoteSyntax note || note.Dead is { IsMissing: false }) return null;
        if (note.Marks.Length > 0 || note.Tap is not null || note.BentBefore is not null) problems.Add(PlaceProblems.OnlyFretsInShape(slot.Span));
        if (Numerals.Of(note.Fret) is not { } fret) return null;
        if (fret <= neck.HighestFret.Number) return new Fret(fret);
        problems.Add(PlaceProblems.FretBeyondNeck(slot.Span, fret, neck));
        return null;
    }
}
