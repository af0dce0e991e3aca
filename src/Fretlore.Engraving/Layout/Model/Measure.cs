using System.Collections.Immutable;
using Fretlore.Engraving.Layout.Fretting;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Model;

/// <summary>A moment of a measure at which something starts in any shown part.</summary>
/// <param name="Time">Quarter notes from the bar's start.</param>
/// <param name="Length">Quarter notes to the next column or the bar's end.</param>
/// <param name="Shortest">The shortest value that sounds here, which sets how much space its time takes.</param>
internal readonly record struct Column(Beats Time, Beats Length, Beats Shortest);

/// <summary>A complete tuplet of a voice.</summary>
/// <param name="First">First slot.</param>
/// <param name="Last">Last slot.</param>
/// <param name="Label">What is printed: the count, with its ratio when it is not the usual one.</param>
/// <param name="IsBeamed">True when one beam shows the whole group, so that it needs no bracket.</param>
internal readonly record struct TupletGroup(int First, int Last, string Label, bool IsBeamed);

/// <summary>One strand of a part in a measure.</summary>
/// <param name="Kind">Which strand.</param>
/// <param name="Rule">Up or down where two voices share the staff, else none.</param>
/// <param name="Slots">Its events.</param>
/// <param name="Beams">Beam groups as first and last slot.</param>
/// <param name="Tuplets">Tuplet groups.</param>
internal sealed record Voice(
    StrandKind Kind, StemSide Rule, ImmutableArray<Slot> Slots, ImmutableArray<(int First, int Last)> Beams, ImmutableArray<TupletGroup> Tuplets);

/// <summary>What one shown part has in a measure.</summary>
/// <param name="Source">The part's bar.</param>
/// <param name="Voices">Empty when it rests or repeats the bar before.</param>
internal sealed record MeasurePart(PartBar Source, ImmutableArray<Voice> Voices)
{
    /// <summary>Where the capo is from here on, when it is moved or taken off; else null.</summary>
    public Capo? NewCapo { get; init; }

    /// <summary>The events of all voices in a column.</summary>
    public IEnumerable<Slot> SlotsIn(int column) => Voices.SelectMany(v => v.Slots).Where(s => s.Column == column);

    /// <summary>True for the first event of its column: of the first voice that has one there.</summary>
    public bool IsFirstOfColumn(int voice, Slot slot)
    {
        for (var before = 0; before < voice; before++)
        {
            foreach (var other in Voices[before].Slots)
            {
                if (other.Column == slot.Column) return false;
            }
        }
        return true;
    }

    /// <summary>True when a whole-bar rest is printed.</summary>
    public bool IsRest => Voices.Length == 0 && Source.Repeats == 0 && Source.RoadMap is null;

    /// <summary>True when the bar is played freely by a road map and shown as slashes.</summary>
    public bool IsFree => Source.RoadMap is not null && Voices.Length == 0;
}

/// <summary>A bar as laid out, or several bars of rest drawn as one.</summary>
internal sealed record Measure
{
    public required int Index { get; init; }

    /// <summary>Index into the song's bars.</summary>
    public required int FirstBar { get; init; }

    public required int BarCount { get; init; }

    /// <summary>The (first) bar.</summary>
    public required Bar Bar { get; init; }

    /// <summary>The last bar, which says how the measure ends.</summary>
    public required Bar LastBar { get; init; }

    public required ImmutableArray<MeasurePart> Parts { get; init; }

    public required ImmutableArray<Column> Columns { get; init; }

    public bool ShowsMeter { get; init; }

    /// <summary>The key signature that stands before this measure; null at the song's start.</summary>
    public int? SignatureBefore { get; init; }

    public string? Section { get; init; }

    /// <summary>Whether a new system must begin here, as after a paragraph.</summary>
    public bool StartsSystem { get; init; }

    public bool IsMultiRest => BarCount > 1;

    public int Signature => Bar.Key?.Signature ?? 0;

    public bool ChangesKey => SignatureBefore is { } before && before != Signature;
}

/// <summary>The song as a row of measures for the parts shown.</summary>
internal sealed record ScoreModel(Song Song, ImmutableArray<StaffPlan> Staves, ImmutableArray<Measure> Measures, Links Links, HandSigns Hands);
