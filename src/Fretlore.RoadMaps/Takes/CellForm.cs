using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Takes;

/// <summary>A note of a rhythm: where it begins and how long it is.</summary>
/// <param name="At">Quarter notes from the bar's start, or from the cell's.</param>
/// <param name="Length">Quarter notes.</param>
/// <param name="Tuplet">The tuplet its value stands in.</param>
internal readonly record struct RhythmNote(Beats At, Beats Length, Tuplet? Tuplet)
{
    public Beats End => At + Length;
}

/// <summary>A rhythm cell with all its notes, or with its end left out.</summary>
/// <param name="Cell">The cell.</param>
/// <param name="Length">The time it takes, what is left out included.</param>
/// <param name="Notes">Those that are played; may be none.</param>
/// <param name="LeavesRest">True when silence is left at its end.</param>
/// <param name="Bits">What it costs.</param>
internal sealed record CellForm(RhythmCell Cell, Beats Length, ImmutableArray<RhythmNote> Notes, bool LeavesRest, double Bits)
{
    /// <summary>All notes of a cell, and then fewer and fewer of them.</summary>
    public static IEnumerable<CellForm> Of(RhythmCell cell, double bits, double cut)
    {
        var factor = cell.Tuplet is { } tuplet ? tuplet.Factor : Beats.Of(1);
        var notes = ImmutableArray.CreateBuilder<RhythmNote>(cell.Values.Count);
        var at = Beats.Zero;
        foreach (var value in cell.Values)
        {
            notes.Add(new RhythmNote(at, value.Length * factor, cell.Tuplet));
            at += value.Length * factor;
        }
        var all = notes.MoveToImmutable();
        yield return new CellForm(cell, at, all, false, bits);
        for (var kept = all.Length - 1; kept >= 0; kept--) yield return new CellForm(cell, at, all[..kept], true, bits + cut * (kept == 0 ? 2 : 1));
    }
}
