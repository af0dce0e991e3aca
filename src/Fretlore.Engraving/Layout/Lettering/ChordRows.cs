using Fretlore.Engraving.Layout.Model;
using Fretlore.Music;
using Fretlore.Reading;

namespace Fretlore.Engraving.Layout.Lettering;

/// <summary>A chord symbol at its column.</summary>
internal readonly record struct PlacedChord(int Column, ChordLabel Label)
{
    // A symbol says all of its label.
    public bool Equals(PlacedChord other) => Column == other.Column && Label.Symbol == other.Label.Symbol;

    public override int GetHashCode() => HashCode.Combine(Column, Label.Symbol);
}

/// <summary>The chord symbols above each shown staff, each where the chord changes.</summary>
internal sealed class ChordRows
{
    private static readonly PlacedChord[] None = [];

    private readonly Dictionary<(int Staff, int Measure), List<PlacedChord>> chords = [];

    public ChordRows(ScoreModel model, SongReading reading, Ink ink, PageOptions options)
    {
        if (!options.ChordSymbols) return;
        var measureOfBar = new int[model.Song.Bars.Count];
        foreach (var measure in model.Measures) Array.Fill(measureOfBar, measure.Index, measure.FirstBar, measure.BarCount);
        var labels = new Dictionary<string, ChordLabel>();
        foreach (var staff in model.Staves)
        {
            if (staff.PartIndex >= reading.Parts.Length) continue;
            string? last = null;
            foreach (var moment in reading.Parts[staff.PartIndex].Chords)
            {
                var measure = model.Measures[measureOfBar[moment.Bar]];
                var symbol = moment.SymbolIn(options.SymbolStyle);
                if (symbol == last || measure.Parts[staff.Index].Voices.IsEmpty) continue;
                last = symbol;
                if (!labels.TryGetValue(last, out var label)) labels[last] = label = ChordLabel.Of(last, ink);
                var key = (staff.Index, measure.Index);
                if (!chords.TryGetValue(key, out var list)) chords[key] = list = [];
                list.Add(new PlacedChord(ColumnAt(measure, moment.At), label));
            }
        }
    }

    public IReadOnlyList<PlacedChord> In(int staff, Measure measure) => chords.TryGetValue((staff, measure.Index), out var list) ? list : None;

    private static int ColumnAt(Measure measure, Beats at)
    {
        var column = 0;
        while (column + 1 < measure.Columns.Length && measure.Columns[column + 1].Time <= at) column++;
        return column;
    }
}
