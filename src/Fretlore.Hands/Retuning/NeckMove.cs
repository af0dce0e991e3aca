using Fretlore.Guitar;
using Fretlore.Hands.Placing;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Retuning;

/// <summary>Music on its way from one tuning to another: the same bar is placed in the same way each time it comes.</summary>
internal sealed class NeckMove
{
    private readonly RetuneOrder order;
    private readonly bool isRetuned;
    private readonly int[] home;
    private readonly Dictionary<ValueList<PartBar>, NotePlace?[]> known = [];
    private readonly Dictionary<string, Dictionary<StringNumber, NotePlace?>> shapes = [];

    /// <param name="from">The tuning the music is in.</param>
    /// <param name="isRetuned">True to give it the order's tuning; false to move it on its own.</param>
    /// <param name="order">What is asked for.</param>
    public NeckMove(Tuning from, bool isRetuned, RetuneOrder order)
    {
        (From, this.isRetuned, this.order) = (from, isRetuned, order);
        home = HomeStrings.Of(from, isRetuned ? order.To : from, order.Semitones);
    }

    public Tuning From { get; }

    /// <summary>True when nothing changes.</summary>
    public bool ChangesNothing => !isRetuned && order.Semitones == 0;

    public Neck Moved(Neck neck) => isRetuned ? order.Moved(neck) : neck;

    /// <summary>The string that takes the place of an old one; null where none does.</summary>
    public StringNumber? HomeOf(StringNumber number) => home[number.Value] is > 0 and var there ? new StringNumber(there) : null;

    /// <summary>Places a shape once, for wherever it is played.</summary>
    public NamedShape Place(NamedShape shape)
    {
        var neck = Moved(shape.Neck);
        var strings = shape.Shape.On(shape.Neck).ToList();
        var notes = strings.Select(on => new OpenNote
        {
            Note = new Note { String = on.String, Fret = on.Fret, Sounding = on.Height + order.Semitones },
            Neck = neck,
            From = shape.Neck,
            Start = 0,
            End = 1,
            RingsUntil = 1,
            Claims = 0,
            Home = HomeOf(on.String) ?? NoHome,
            OwnFret = on.Fret,
            WasOpen = on.Fret.IsOpen,
            IsDrone = on.Fret.IsOpen,
        }).ToList();
        var places = NotePlacer.Place(notes, neck, order.Hand, mayArrange: true);
        shapes[shape.Name] = strings.Select((on, i) => (on.String, Place: places[i])).ToDictionary(on => on.String, on => on.Place);
        var frets = new Fret?[neck.StringCount];
        foreach (var place in places)
        {
            if (place is not null) frets[frets.Length - place.String.Value] = place.Fret;
        }
        var moved = new Shape(frets.ToValueList());
        // Fingers stay with the strings they hold; on other frets another hand is better found anew.
        return shape with { Shape = moved, Neck = neck, Fingers = moved == shape.Shape ? shape.Fingers : default };
    }

    /// <summary>A place for each note of a line; null for one that is left out.</summary>
    public NotePlace?[] Place(SourceLine line)
    {
        if (line.Entries.Count == 0) return [];
        var blocks = Blocks(line).ToList();
        var given = blocks.Select(block => known.GetValueOrDefault(KeyOf(line, block))).ToList();
        var notes = new List<OpenNote>(line.Entries.Count);
        for (var block = 0; block < blocks.Count; block++)
        {
            var first = line.FirstOf[blocks[block].First];
            for (var i = first; i < line.FirstOf[blocks[block].End]; i++) notes.Add(Open(line, i, given[block], first));
        }
        var places = NotePlacer.Place(notes, Moved(line.Content[0].Neck), order.Hand, mayArrange: true);
        foreach (var block in blocks)
        {
            known.TryAdd(KeyOf(line, block), places[line.FirstOf[block.First]..line.FirstOf[block.End]]);
        }
        return places;
    }

    private OpenNote Open(SourceLine line, int index, NotePlace?[]? given, int first)
    {
        var entry = line.Entries[index];
        var note = entry.Note;
        var open = new OpenNote
        {
            Note = note with { Sounding = note.Sounding + order.Semitones },
            Neck = Moved(line.Content[entry.Bar].Neck),
            From = line.Content[entry.Bar].Neck,
            Bar = entry.Bar,
            Start = entry.Start,
            End = entry.End,
            RingsUntil = entry.RingsUntil,
            Claims = entry.Claims,
            JoinedTo = entry.JoinedTo,
            Shape = entry.Item.Shape,
            Home = HomeOf(note.String) ?? NoHome,
            OwnFret = note.Fret,
            WasOpen = entry.WasOpen,
            IsDrone = entry.IsDrone,
        };
        if (given is not null) return open with { Given = given[index - first], IsGivenUp = given[index - first] is null };
        var (place, isHeld) = ShapePlace(entry);
        if (!isHeld) return open;
        return open with { Given = place, IsGivenUp = place is null };
    }

    // A note at the fret its shape holds goes where the shape has it.
    private (NotePlace? Place, bool IsHeld) ShapePlace(SourceLine.Entry entry)
    {
        var note = entry.Note;
        if (entry.Item.Shape is not { } name || !shapes.TryGetValue(name, out var places) || note.IsDead || note.Harmonic is not null) return default;
        if (!places.TryGetValue(note.String, out var place)) return default;
        return place is null || place.Sounding.PitchClass == (note.Sounding + order.Semitones).PitchClass ? (place, true) : default;
    }

    // Bars that are joined by notes sounding on over the line belong together.
    private static IEnumerable<(int First, int End)> Blocks(SourceLine line)
    {
        var first = 0;
        for (var bar = 1; bar <= line.Content.Count; bar++)
        {
            if (bar < line.Content.Count && IsJoinedToBefore(line, bar)) continue;
            yield return (first, bar);
            first = bar;
        }
    }

    private static bool IsJoinedToBefore(SourceLine line, int bar)
    {
        for (var i = line.FirstOf[bar]; i < line.FirstOf[bar + 1]; i++)
        {
            if (line.Entries[i].JoinedTo >= 0 && line.Entries[i].JoinedTo < line.FirstOf[bar]) return true;
        }
        return false;
    }

    private static ValueList<PartBar> KeyOf(SourceLine line, (int First, int End) block) =>
        line.Content.Items[block.First..block.End].Select(bar => BarText.WithoutIds(bar) with { Repeats = 0, RoadMap = null }).ToValueList();

    // A string without a partner in the new tuning: every other string is away from home.
    private static StringNumber NoHome => new(0);
}
