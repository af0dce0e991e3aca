using Fretlore.Guitar;
using Fretlore.Hands.Placing;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Retuning;

/// <summary>Writes a line anew with its notes in their new places.</summary>
internal sealed class LineRewriter(NeckMove move, SourceLine line, NotePlace?[] places, IReadOnlyDictionary<string, NamedShape> shapes, IReadOnlyDictionary<string, string> shapeNames)
{
    private int at;

    /// <param name="chordSymbol">What becomes of a chord symbol that the sheet states.</param>
    public ValueList<PartBar> Write(Func<string, string> chordSymbol)
    {
        at = 0;
        var bars = line.Content.Select(bar => bar with
        {
            Neck = move.Moved(bar.Neck),
            Strands = bar.Strands.Select(strand => strand with { Events = strand.Events.Select(item => Moved(item, bar.Neck, chordSymbol)).ToValueList() }).ToValueList(),
        }).ToList();
        // "Again" is only said of bars that still are the same.
        for (var bar = 0; bar < bars.Count; bar++)
        {
            var back = bars[bar].Repeats;
            if (back > 0 && (bar < back || BarText.WithoutIds(bars[bar]).Strands != BarText.WithoutIds(bars[bar - back]).Strands)) bars[bar] = bars[bar] with { Repeats = 0 };
        }
        return bars.ToValueList();
    }

    private Event Moved(Event item, Neck from, Func<string, string> chordSymbol)
    {
        var graces = item.Graces.Select(note => Moved(note, from)).OfType<Note>().ToValueList();
        var notes = item.Notes.Select(note => Moved(note, from)).OfType<Note>().OrderByDescending(note => note.String.Value).ToValueList();
        var symbol = item.ChordSymbol is { } stated ? chordSymbol(stated) : null;
        var moved = item with { Notes = notes, Graces = notes.Count > 0 ? graces : [], ChordSymbol = symbol, Shape = ShapeOf(item, notes) };
        if (item.Notes.Count > 0 && notes.Count == 0) return moved with { Stroke = Stroke.None, PickingFinger = null, Roll = Roll.None };
        return notes.Count < 2 ? moved with { Roll = Roll.None } : moved;
    }

    private Note? Moved(Note note, Neck from)
    {
        if (places[at++] is not { } place) return null;
        var stays = move.HomeOf(note.String) == place.String;
        var trill = note.TrillSemitones(from) is { } semitones ? move.Moved(from).Above(place.String, place.Fret, semitones) : null;
        return note with { String = place.String, Fret = place.Fret, Sounding = place.Sounding, Harmonic = place.Harmonic, Trill = trill, Finger = stays && !place.Fret.IsOpen ? note.Finger : null };
    }

    // A shape's name stays where its strings are still all that sounds.
    private string? ShapeOf(Event item, ValueList<Note> notes)
    {
        if (item.Shape is not { } name || !shapes.TryGetValue(name, out var shape)) return null;
        var held = shape.Shape.LowToHigh;
        var isOf = notes.Items.All(note => note.String.Value <= held.Count && held[held.Count - note.String.Value] is not null);
        return isOf ? shapeNames.GetValueOrDefault(name, name) : null;
    }
}
