using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Model;

/// <summary>A rhythm cell and what it costs, in bits.</summary>
public readonly record struct WeightedCell(RhythmCell Cell, double Bits);

/// <summary>Rhythm cells of the trade, with what they cost in bits where a road map names none (common practice; the figures by ear).</summary>
internal static class TradeCells
{
    private static NoteValue Q => new(ValueBase.Quarter);

    private static NoteValue E => new(ValueBase.Eighth);

    private static NoteValue S => new(ValueBase.Sixteenth);

    private static NoteValue Dotted(NoteValue value) => value with { Dots = 1 };

    public static ImmutableArray<WeightedCell> All { get; } =
    [
        new(Cell(Q), 1), new(Cell(E, E), 0), new(Cell(E, S, S), 0.8), new(Cell(S, S, E), 0.8), new(Cell(S, S, S, S), 1.2), new(Cell(Dotted(E), S), 2), new(Cell(S, Dotted(E)), 3.5), new(Cell(S, E, S), 2.5),
        new(new RhythmCell([E, E, E], new Tuplet(3, 2, ValueBase.Eighth)), 1.8),
        new(Cell(Dotted(Q), E), 1.5), new(Cell(E, Q, E), 2), new(Cell(new NoteValue(ValueBase.Half)), 2.5),
        new(Cell(Dotted(Q)), 1), new(Cell(Q, E), 0.3), new(Cell(E, Q), 1.8), new(Cell(E, E, E), 0.3), new(Cell(E, E, S, S), 1.2), new(Cell(S, S, E, E), 1.2), new(Cell(S, S, S, S, S, S), 1.8), new(Cell(Dotted(E), S, E), 2),
        new(Cell(E), 1), new(Cell(S, S), 1),
    ];

    private static RhythmCell Cell(params NoteValue[] values) => new(values.ToValueList());
}
