using System.Collections.Immutable;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Guitar;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lines;

/// <summary>The frets held down for a shape that is picked string by string.</summary>
internal static class PickShape
{
    /// <summary>A fret for each string of the shape; empty, with a finding, when there is no such shape on this neck.</summary>
    public static Dictionary<StringNumber, Fret> Read(
        SoundSyntax shape, Neck neck, ImmutableArray<StringNumber> selected, IReadOnlyDictionary<string, NamedShape> shapes,
        DiagnosticBag problems)
    {
        var frets = new Dictionary<StringNumber, Fret>();
        if (shape is NamedShapeSyntax named && !named.Name.IsMissing)
        {
            if (!shapes.TryGetValue(named.Name.Text, out var found)) problems.Add(NameProblems.UnknownShape(named.Name, shapes.Keys));
            else if (found.Shape.LowToHigh.Count != neck.StringCount)
            {
                var count = found.Shape.LowToHigh.Count;
                problems.Add(PlaceProblems.ShapeOfOtherNeck(named.Span, named.Name.Text, count, neck.StringCount));
            }
            else foreach (var (number, fret, _) in found.Shape.On(neck)) frets[number] = fret;
        }
        else if (shape is ChordSyntax chord)
        {
            var strings = chord.Slots.Length == selected.Length && selected.Length > 0 ? selected : Places.All(neck);
            if (strings.Length != chord.Slots.Length)
            {
                problems.Add(PlaceProblems.WrongSlotCount(chord.Span, chord.Slots.Length, selected.Length, neck.StringCount));
                return frets;
            }
            for (var slot = 0; slot < strings.Length; slot++)
            {
                if (chord.Slots[slot] is NoteSyntax note && Numerals.Of(note.Fret) is { } fret) frets[strings[slot]] = new Fret(fret);
            }
        }
        return frets;
    }
}
