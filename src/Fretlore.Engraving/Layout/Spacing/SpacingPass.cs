using System.Collections.Immutable;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.RoadMaps;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Spacing;

/// <summary>Gives every measure its springs (from durations) and rods (from ink).</summary>
/// <remarks>Natural space grows with the square root of the duration, about 1.4 times a doubling (Gould, Ross).</remarks>
internal sealed class SpacingPass(Ink ink, ScoreModel model, ChordRows chords, DegreeLabels degrees, double clefWidth)
{
    private readonly ColumnInk slotInk = new(ink, model.Links, !model.Staves[0].ShowsStaff);

    private readonly Reaches reaches = new();

    private bool HasStaff => model.Staves[0].ShowsStaff;

    private bool HasTab => model.Staves[0].ShowsTab;

    /// <summary>The natural distance from a note of a length to the next.</summary>
    public static double NaturalSpace(Beats length) => HouseStyle.QuarterSpace * Math.Sqrt(length.ToDouble());

    public MeasureSpacing Of(Measure measure)
    {
        var next = measure.Index + 1 < model.Measures.Length ? model.Measures[measure.Index + 1] : null;
        var warning = next is null or { StartsSystem: true } ? 0 : WarningWidth(next);
        var end = EndWidth(measure.LastBar);
        var inside = Prefix.Of(ink, measure, false, clefWidth, HasStaff);
        var atStart = Prefix.Of(ink, measure, true, clefWidth, HasStaff);
        if (measure.IsMultiRest)
        {
            var width = HouseStyle.MultiRestWidth + Math.Min(measure.BarCount, 8) * 0.5;
            return new MeasureSpacing(inside, atStart, 0.8, [width], [HouseStyle.MultiRestWidth * 0.7], end, warning);
        }
        var (lead, least) = Rods(measure);
        least = WithRoomForNeck(measure, lead, least);
        var natural = ImmutableArray.CreateBuilder<double>(measure.Columns.Length);
        foreach (var column in measure.Columns)
        {
            natural.Add(NaturalSpace(column.Shortest) * column.Length.ToDouble() / column.Shortest.ToDouble());
        }
        return new MeasureSpacing(inside, atStart, lead, natural.MoveToImmutable(), least, end, warning);
    }

    // How much further left than a single line the sign at a bar's end begins.
    private double EndWidth(Bar bar) => bar.RepeatCount > 0 ? Prefix.RepeatWidth(ink) - ink.ThickBar
        : bar.EndLine == BarLine.Single ? 0
        : ink.BarSeparation + ink.ThinBar + (bar.EndLine == BarLine.Final ? ink.ThickBar - ink.ThinBar : 0);

    /// <summary>The width of a key or metre shown after the last bar line of a system.</summary>
    private double WarningWidth(Measure next)
    {
        if (!next.ShowsMeter && !(next.ChangesKey && HasStaff)) return 0;
        var signs = Prefix.Of(ink, next with { Bar = next.Bar with { StartsRepeat = false } }, false, 0, HasStaff);
        return signs.Width + 0.4;
    }

    // The first bar of a free stretch shows its stretch of neck, and others the hand's place where there is no staff for slashes: all columns get an equal share of what is missing.
    private ImmutableArray<double> WithRoomForNeck(Measure measure, double lead, ImmutableArray<double> least)
    {
        var missing = 0.0;
        foreach (var staff in model.Staves)
        {
            if (RoadMapStretch.At(model.Song, staff, measure) is not { } stretch || (staff.ShowsStaff && !stretch.StartsIn(measure))) continue;
            if (RoadMapRow.RegionIn(stretch, staff, measure) is { } region) missing = Math.Max(missing, region.LeastWidth - lead - least.Sum());
        }
        return missing <= 0 ? least : [.. least.Select(l => l + missing / least.Length)];
    }

    // Columns as far left as ink allows: each row of ink keeps its distance from the last ink of that row, whichever column it was in.
    private (double Lead, ImmutableArray<double> Least) Rods(Measure measure)
    {
        var columns = measure.Columns.Length;
        var staves = model.Staves.Length;
        // Rows: for each staff the staff's voices, the tablature and the chord symbols.
        var rows = staves * 3;
        var (left, right) = reaches.Cleared(columns, rows);
        for (var s = 0; s < staves; s++)
        {
            foreach (var voice in measure.Parts[s].Voices)
            {
                foreach (var slot in voice.Slots)
                {
                    var reach = slotInk.Of(slot);
                    if (degrees.HalfWidth(slot) is > 0 and var half) Grow(slot.Column, s * 3 + (HasTab ? 1 : 0), half - ColumnInk.Centre, half + ColumnInk.Centre);
                    if (HasStaff) Grow(slot.Column, s * 3, reach.StaffLeft, reach.StaffRight);
                    if (!HasTab) continue;
                    if (!HasStaff) Grow(slot.Column, s * 3, 0, reach.RhythmRight);
                    if (!HasStaff && slot.IsRest) Grow(slot.Column, s * 3 + 1, 0, reach.RhythmRight);
                    if (reach.TabRight > 0) Grow(slot.Column, s * 3 + 1, reach.TabLeft, reach.TabRight);
                }
            }
            foreach (var symbol in chords.In(s, measure)) Grow(symbol.Column, s * 3 + 2, 0, symbol.Label.Width + 0.5);
            if (measure.Parts[s].IsFree)
            {
                foreach (var slash in MeasureParts.SlashTimes(measure.Bar)) Grow(ColumnAt(measure, slash), s * 3, 0, 1.8);
            }
            if (measure.Parts[s].Source.Repeats > 0) Grow(0, s * 3, 0, 3);
        }

        var at = new double[columns + 1];
        var last = new double[rows];
        Array.Fill(last, double.NaN);
        var lead = HouseStyle.BarLead;
        for (var r = 0; r < rows; r++)
        {
            if (!double.IsNaN(right[r])) lead = Math.Max(lead, left[r] + 0.65);
        }
        for (var c = 0; c <= columns; c++)
        {
            at[c] = c == 0 ? 0 : at[c - 1] + 0.9;
            for (var r = 0; r < rows; r++)
            {
                var isEnd = c == columns;
                if (!double.IsNaN(last[r]) && (isEnd || !double.IsNaN(right[c * rows + r])))
                {
                    var gap = isEnd ? HouseStyle.BarTail : HouseStyle.ColumnGap + left[c * rows + r];
                    at[c] = Math.Max(at[c], last[r] + (isEnd && r % 3 == 2 ? 0 : gap));
                }
            }
            if (c == columns) break;
            for (var r = 0; r < rows; r++)
            {
                if (!double.IsNaN(right[c * rows + r])) last[r] = at[c] + right[c * rows + r];
            }
        }
        var least = ImmutableArray.CreateBuilder<double>(columns);
        for (var c = 0; c < columns; c++) least.Add(at[c + 1] - at[c]);
        return (lead, least.MoveToImmutable());

        void Grow(int column, int row, double toLeft, double toRight)
        {
            left[column * rows + row] = Math.Max(left[column * rows + row], toLeft);
            right[column * rows + row] = double.IsNaN(right[column * rows + row]) ? toRight : Math.Max(right[column * rows + row], toRight);
        }
    }

    /// <summary>How far ink reaches left and right of each column in each row, a column after the other; not a number right of where there is none. The same room for all measures.</summary>
    private sealed class Reaches
    {
        private double[] left = [];
        private double[] right = [];

        public (double[] Left, double[] Right) Cleared(int columns, int rows)
        {
            var count = columns * rows;
            if (left.Length < count) (left, right) = (new double[count], new double[count]);
            Array.Clear(left, 0, count);
            Array.Fill(right, double.NaN, 0, count);
            return (left, right);
        }
    }

    private static int ColumnAt(Measure measure, Beats time)
    {
        var column = 0;
        while (column + 1 < measure.Columns.Length && measure.Columns[column + 1].Time <= time) column++;
        return column;
    }
}
