using System.Collections.Immutable;
using Fretlore.Binding.Draft;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lines;

/// <summary>What stays in force in one strand from bar to bar.</summary>
/// <param name="Cell">The time, or null when none is set yet.</param>
/// <param name="Place">The strings selected, low to high; empty when none are set yet.</param>
/// <param name="Sounding">The notes of the event before, for joints.</param>
internal sealed record StrandState(TimeCell? Cell, ImmutableArray<StringNumber> Place, ImmutableArray<Note> Sounding)
{
    public static StrandState Unset { get; } = new(null, [], []);
}

/// <summary>Where the walk stands in one strand of a bar.</summary>
internal sealed class StrandCursor(StrandKind kind, StrandState entry)
{
    public StrandKind Kind { get; } = kind;

    public TimeCell? Cell { get; private set; } = entry.Cell;

    public ImmutableArray<StringNumber> Place { get; set; } = entry.Place;

    /// <summary>The notes of the event before; a rest leaves none.</summary>
    public ImmutableArray<Note> Sounding { get; set; } = entry.Sounding;

    /// <summary>From the start of the bar.</summary>
    public Beats At { get; set; }

    public List<DraftEvent> Events { get; } = [];

    public List<Note> Graces { get; } = [];

    public List<TextSpan> GraceSpans { get; } = [];

    /// <summary>The <c>;</c> at the end of the phrase before: a glide that is picked on arrival.</summary>
    public JointSyntax? PickedGlide { get; set; }

    private int cellIndex;

    public StrandState State => new(Cell, Place, Sounding);

    public void SetTime(TimeCell cell)
    {
        Cell = cell;
        cellIndex = 0;
    }

    /// <summary>The next value of the cell.</summary>
    public NoteValue NextValue()
    {
        var cell = Cell ?? TimeCell.Quarters;
        return cell.Values[cellIndex++ % cell.Values.Length];
    }

    public void StartBar(Beats at)
    {
        At = at;
        cellIndex = 0;
        Events.Clear();
    }
}
