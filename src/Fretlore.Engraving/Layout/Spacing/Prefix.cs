using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Model;

namespace Fretlore.Engraving.Layout.Spacing;

/// <summary>The signs before the music of a measure and where they stand, right of the bar line: clef, key signature, metre, repeat.</summary>
/// <param name="ClefX">Where clefs stand; null when none are shown.</param>
/// <param name="KeyX">Where the key signature begins; null when none is shown.</param>
/// <param name="MeterX">The middle of the metre's figures; null when it is not shown.</param>
/// <param name="RepeatX">Where the sign that starts a repeat begins; null when none stands apart from the bar line.</param>
/// <param name="Width">From the bar line to the end of the last sign.</param>
internal sealed record Prefix(double? ClefX, double? KeyX, double? MeterX, double? RepeatX, double Width)
{
    public const double AccidentalPitch = 1.0;

    private const double ClefGap = 0.7;
    private const double SignGap = 0.85;

    /// <param name="ink">Fonts.</param>
    /// <param name="measure">The measure.</param>
    /// <param name="atStart">Whether it begins a system.</param>
    /// <param name="clefWidth">The widest clef of the shown staves and tablatures.</param>
    /// <param name="hasStaff">Whether there is a staff to show key signatures on.</param>
    public static Prefix Of(Ink ink, Measure measure, bool atStart, double clefWidth, bool hasStaff)
    {
        var x = 0.0;
        double? clefX = null, keyX = null, meterX = null, repeatX = null;
        if (atStart)
        {
            clefX = ClefGap;
            x = ClefGap + clefWidth + SignGap * 0.6;
        }
        var accidentals = !hasStaff ? 0 : KeySigns(measure, atStart).Length;
        if (accidentals > 0)
        {
            keyX = x + (atStart ? 0.2 : SignGap);
            x = keyX.Value + accidentals * AccidentalPitch;
        }
        if (measure.ShowsMeter)
        {
            var width = MeterWidth(ink, measure);
            meterX = x + SignGap + width / 2;
            x += SignGap + width;
        }
        // In the middle of a system a repeat that follows no other sign takes the place of the bar line itself.
        if (measure.Bar.StartsRepeat)
        {
            repeatX = x > 0 ? x + SignGap : 0;
            x = repeatX.Value + RepeatWidth(ink);
        }
        return new Prefix(clefX, keyX, meterX, repeatX, x);
    }

    /// <summary>The accidentals of the key signature shown before a measure: naturals where a signature is only cancelled.</summary>
    public static ImmutableArray<(int Glyph, int TreblePosition)> KeySigns(Measure measure, bool atStart)
    {
        var fifths = measure.Signature;
        if (!atStart && !measure.ChangesKey) return [];
        if (fifths == 0 && measure.ChangesKey && measure.SignatureBefore is { } before) return Signs(before, Smufl.AccidentalNatural);
        return Signs(fifths, fifths > 0 ? Smufl.AccidentalSharp : Smufl.AccidentalFlat);
    }

    /// <summary>The numbers shown for a metre, upper and lower, as glyphs.</summary>
    public static (ImmutableArray<int> Upper, ImmutableArray<int> Lower) MeterGlyphs(Music.Meter meter) =>
        ([.. Digits(meter.Count)], [.. Digits(meter.Unit)]);

    /// <summary>How the units of an uneven metre are grouped, printed above it: <c>2+2+3</c>; null where the figures say enough.</summary>
    public static string? GroupingOf(Music.Meter meter)
    {
        var groups = meter.Groups;
        return groups.Count > 1 && groups.AsSpan().IndexOfAnyExcept(groups[0]) >= 0 ? string.Join('+', groups) : null;
    }

    public static double RowWidth(Ink ink, ImmutableArray<int> glyphs) => glyphs.Sum(g => ink.Music.AdvanceOf(g));

    public static double MeterWidth(Ink ink, Measure measure)
    {
        var (upper, lower) = MeterGlyphs(measure.Bar.Meter);
        return Math.Max(RowWidth(ink, upper), RowWidth(ink, lower));
    }

    /// <summary>Thick line, thin line and dots.</summary>
    public static double RepeatWidth(Ink ink) => ink.ThickBar + ink.BarSeparation + ink.ThinBar + 0.35 + ink.GlyphWidth(Smufl.RepeatDot);

    private static IEnumerable<int> Digits(int number) =>
        number.ToString(CultureInfo.InvariantCulture).Select(digit => Smufl.TimeSig0 + (digit - '0'));

    // The usual places in the treble clef, bottom line 0: sharps F C G D A E B, flats B E A D G C F.
    private static ImmutableArray<(int, int)> Signs(int fifths, int glyph)
    {
        ReadOnlySpan<int> places = fifths > 0 ? [8, 5, 9, 6, 3, 7, 4] : [4, 7, 3, 6, 2, 5, 1];
        var signs = ImmutableArray.CreateBuilder<(int, int)>();
        foreach (var place in places[..Math.Min(Math.Abs(fifths), 7)]) signs.Add((glyph, place));
        return signs.ToImmutable();
    }
}
