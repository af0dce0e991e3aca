using System.Collections.Immutable;
using Fretlore.Engraving.Layout.Breaking;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Spacing;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>Where a measure stands in its system, in spaces from the page's left edge.</summary>
/// <param name="Measure">The measure.</param>
/// <param name="Prefix">The signs before it.</param>
/// <param name="Left">Its left bar line.</param>
/// <param name="Music">Its first column, or where a rest's room begins.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Right">The right edge of its right bar line.</param>
internal sealed record MeasurePlace(Measure Measure, Prefix Prefix, double Left, double Music, ImmutableArray<double> Columns, double Right);

/// <summary>All places from left to right in one system.</summary>
internal sealed class SystemGeometry
{
    private SystemGeometry(int first, double left, double right, double warning, ImmutableArray<MeasurePlace> measures)
    {
        First = first;
        Left = left;
        Right = right;
        LinesRight = right + warning;
        Measures = measures;
    }

    /// <summary>Its first measure.</summary>
    public int First { get; }

    public double Left { get; }

    /// <summary>The last bar line's right edge: the margin, but for a short last system.</summary>
    public double Right { get; }

    /// <summary>Where the lines end: after the warning of a new key or metre, if there is one.</summary>
    public double LinesRight { get; }

    public ImmutableArray<MeasurePlace> Measures { get; }

    /// <summary>The measure that begins the next system.</summary>
    public Measure? Next { get; private init; }

    /// <summary>Where music begins after clef and signatures.</summary>
    public double MusicLeft => Measures[0].Left + Measures[0].Prefix.Width;

    public bool Has(int measure) => measure >= First && measure < First + Measures.Length;

    public MeasurePlace this[int measure] => Measures[measure - First];

    /// <summary>The left edge of a slot's heads.</summary>
    public double X(Slot slot) => this[slot.Measure].Columns[slot.Column] + slot.Shift;

    /// <summary>Whether the same measures stand in the same places in another.</summary>
    public bool HasPlacesOf(SystemGeometry other)
    {
        if (First != other.First || Measures.Length != other.Measures.Length || Left != other.Left || Right != other.Right || LinesRight != other.LinesRight) return false;
        for (var i = 0; i < Measures.Length; i++)
        {
            var (place, there) = (Measures[i], other.Measures[i]);
            if (place.Left != there.Left || place.Music != there.Music || place.Right != there.Right || place.Prefix != there.Prefix) return false;
            if (!place.Columns.AsSpan().SequenceEqual(there.Columns.AsSpan())) return false;
        }
        return true;
    }

    /// <summary>Springs of all its measures are stretched by one factor, so that equal values stand equally far apart.</summary>
    public static SystemGeometry Of(
        ScoreModel model, ImmutableArray<MeasureSpacing> spacings, int first, int end, double left, double margin)
    {
        var warning = end < model.Measures.Length ? spacings[end - 1].Warning : 0;
        double fixedWidth = warning, atRest = 0;
        var natural = new List<double>();
        var least = new List<double>();
        for (var m = first; m < end; m++)
        {
            fixedWidth += spacings[m].Fixed(m == first);
            natural.AddRange(spacings[m].Natural);
            least.AddRange(spacings[m].Least);
            for (var i = 0; i < spacings[m].Natural.Length; i++) atRest += Math.Max(spacings[m].Natural[i], spacings[m].Least[i]);
        }
        var width = margin - left;
        if ((end == model.Measures.Length || model.Measures[end].StartsSystem) && width > (fixedWidth + atRest) * (1 + SystemBreaker.LastStretch)) width = (fixedWidth + atRest) * 1.1;
        var lengths = Springs.Fill([.. natural], [.. least], width - fixedWidth);

        var places = ImmutableArray.CreateBuilder<MeasurePlace>(end - first);
        var x = left;
        var spring = 0;
        for (var m = first; m < end; m++)
        {
            var spacing = spacings[m];
            var prefix = m == first ? spacing.AtStart : spacing.Inside;
            var start = x;
            x += prefix.Width + spacing.Lead;
            var music = x;
            var columns = ImmutableArray.CreateBuilder<double>(spacing.Natural.Length);
            for (var c = 0; c < spacing.Natural.Length; c++)
            {
                columns.Add(x);
                x += lengths[spring++];
            }
            x += spacing.End;
            places.Add(new MeasurePlace(model.Measures[m], prefix, start, music, columns.MoveToImmutable(), x));
        }
        return new SystemGeometry(first, left, x, warning, places.MoveToImmutable())
        {
            Next = end < model.Measures.Length ? model.Measures[end] : null,
        };
    }
}
