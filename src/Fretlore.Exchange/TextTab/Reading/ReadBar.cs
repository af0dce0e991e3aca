using Fretlore.Music;

namespace Fretlore.Exchange.TextTab.Reading;

/// <summary>A bar with its notes and what stands over them, all by columns of the bar; put together from pieces where a line ends within it.</summary>
internal sealed class ReadBar
{
    public required TabLine Line { get; init; }

    /// <summary>Where it begins in its line.</summary>
    public required int Index { get; init; }

    public int Width { get; set; }

    public List<ReadNote> Notes { get; } = [];

    /// <summary>Columns for notes of later pieces begin here.</summary>
    public Dictionary<ReadNote, int> Shifts { get; } = new(ReferenceEqualityComparer.Instance);

    public SystemLabels Labels { get; } = new();

    /// <summary>Bars of rest it stands for; 0 when it is a bar with music, or empty.</summary>
    public int Rests { get; set; }

    public bool StartsRepeat { get; set; }

    /// <summary>How often the repeat that ends here is played, 0 for none, -1 where that is not said.</summary>
    public int Repeats { get; set; }

    public ValueList<int> Passes { get; set; }

    public bool IsDouble { get; set; }

    /// <summary>True when its line ends within it.</summary>
    public bool IsOpen { get; set; }

    /// <summary>True when no bar lines stand on its line.</summary>
    public bool IsUnbounded { get; init; }

    /// <summary>The column of its first beat where that is known.</summary>
    public int? FirstBeat { get; init; }

    public int ColumnOf(ReadNote note) => note.Column + Shifts.GetValueOrDefault(note);

    /// <summary>Adds the piece of the bar that stands in the next line.</summary>
    public void Append(ReadBar piece)
    {
        foreach (var note in piece.Notes)
        {
            Notes.Add(note);
            Shifts[note] = Width;
        }
        Labels.Values.AddRange(piece.Labels.Values.Select(v => v with { Column = v.Column + Width }));
        Labels.Counts.AddRange(piece.Labels.Counts.Select(c => (c.Column + Width, c.Place)));
        Labels.Chords.AddRange(Moved(piece.Labels.Chords));
        Labels.Hand.AddRange(Moved(piece.Labels.Hand));
        Labels.Marks.AddRange(Moved(piece.Labels.Marks));
        Labels.Changes.AddRange(Moved(piece.Labels.Changes));
        Labels.Words.AddRange(Moved(piece.Labels.Words));
        Labels.Stretches.AddRange(piece.Labels.Stretches.Select(s => s with { From = s.From + Width, To = s.To + Width }));
        Width += piece.Width;
        (Repeats, IsDouble, IsOpen) = (piece.Repeats, piece.IsDouble, piece.IsOpen);
        if (Passes.Count == 0) Passes = piece.Passes;

        IEnumerable<ReadLabel> Moved(List<ReadLabel> labels) => labels.Select(l => l with { Column = l.Column + Width });
    }

    /// <summary>Notes that start together, from left to right. A note whose bracket stands in the column of the others' frets is one of them.</summary>
    public List<(int Column, List<ReadNote> Notes)> Moments()
    {
        var moments = new List<(int Column, List<ReadNote> Notes)>();
        foreach (var group in Notes.GroupBy(ColumnOf).OrderBy(g => g.Key))
        {
            var notes = group.ToList();
            if (moments.Count > 0 && moments[^1] is var (column, before) && group.Key == column + 1 && !before.Exists(b => notes.Exists(n => n.String == b.String))
                && (notes.TrueForAll(n => n.HasBracket) || before.TrueForAll(n => n.HasBracket)) && !Labels.Values.Exists(v => v.Column == group.Key))
            {
                before.AddRange(notes);
                continue;
            }
            moments.Add((group.Key, notes));
        }
        return moments;
    }
}
