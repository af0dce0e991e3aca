using System.Globalization;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Music.Scales;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.RoadMaps;

/// <summary>The stretch of neck a road map stays in, drawn on the tablature's own lines: frets between them, scale notes as dots, tonics filled, targets as diamonds.</summary>
/// <remarks>The string lines are the strings; low frets stand left, as on a neck seen from above.</remarks>
internal sealed class NeckRegion
{
    private const double WidestFret = 2.3;
    private const double NarrowestFret = 1.3;
    private const double DotScale = 1.55;
    private const double Edge = 0.8;

    private readonly int first;
    private readonly int last;
    private readonly int highest;
    private readonly int lowest;
    private readonly NoteName tonic;
    private readonly PitchClassSet scale;

    private NeckRegion(FretWindow frets, StringsRule? strings, NoteName tonic, Scale known, Neck neck)
    {
        (first, last) = (frets.Low, frets.High);
        highest = strings?.Highest.Value ?? 1;
        lowest = Math.Min(strings?.Lowest.Value ?? neck.StringCount, neck.StringCount);
        this.tonic = tonic;
        scale = known.Tones;
    }

    /// <summary>The region of a road map; null when it names no scale we know, or no frets.</summary>
    public static NeckRegion? Of(RoadMap map, Neck neck) =>
        map.RulesOf<ScaleRule>().FirstOrDefault() is { } scale && map.RulesOf<FretsRule>().FirstOrDefault() is { } frets && ScaleTable.TryFind(scale.Name, out var known)
            ? new NeckRegion(Whole(frets), map.RulesOf<StringsRule>().FirstOrDefault(), scale.Tonic, known, neck) : null;

    /// <summary>Where the hand is in one bar of a way along the neck, the bar's targets marked; null where the hand stays in one place or no known scale is named.</summary>
    /// <param name="map">The road map.</param>
    /// <param name="neck">The part's neck.</param>
    /// <param name="bar">From 1.</param>
    /// <param name="count">Bars of the stretch.</param>
    public static NeckRegion? In(RoadMap map, Neck neck, int bar, int count)
    {
        if (map.RuleIn<ScaleRule>(bar, count) is not { } scale || map.RuleIn<FretsRule>(bar, count) is not { Moves: true } way || !ScaleTable.TryFind(scale.Name, out var known)) return null;
        return new NeckRegion(FretWindow.Of(way, bar, count), map.RuleIn<StringsRule>(bar, count), scale.Tonic, known, neck) { targets = TargetsIn(map, bar, count) };
    }

    private PitchClassSet targets;

    /// <summary>True where a target is marked.</summary>
    public bool HasTargets => !targets.IsEmpty;

    private static FretWindow Whole(FretsRule frets) => new(Math.Min(frets.From.Number, frets.To.Number), Math.Max(frets.From.Number, frets.To.Number));

    private static PitchClassSet TargetsIn(RoadMap map, int bar, int count)
    {
        var found = new PitchClassSet();
        foreach (var aim in map.RulesOf<AimRule>().Where(a => a.Bars?.Contains(bar, count) == true)) found |= PitchClassSet.Of(aim.Target.PitchClass);
        foreach (var end in map.RulesOf<EndRule>().Where(_ => bar == count)) found |= PitchClassSet.Of(end.Target.PitchClass);
        return found;
    }

    private int Frets => last - first + 1;

    /// <summary>The least room it needs from left to right.</summary>
    public double LeastWidth => Frets * NarrowestFret + 2 * Edge;

    /// <param name="pen">The tablature's.</param>
    /// <param name="neck">The part's neck.</param>
    /// <param name="left">Where there is room from.</param>
    /// <param name="right">Where it ends.</param>
    public void Draw(Pen pen, Neck neck, double left, double right)
    {
        var pitch = Math.Min(WidestFret, (right - left - 2 * Edge) / Frets);
        if (pitch < NarrowestFret * 0.95) return;
        var x = left + Edge;
        double top = LineOf(highest), bottom = LineOf(lowest);
        for (var wire = first - 1; wire <= last; wire++)
        {
            var at = x + (wire - first + 1) * pitch;
            pen.Line(at, top, at, bottom, wire == 0 ? pen.Ink.ThickBar : pen.Ink.StaffLine);
        }
        for (var number = highest; number <= lowest; number++)
        {
            for (var fret = first; fret <= last; fret++)
            {
                if (neck.Capo.IsBehind(new StringNumber(number), new Fret(fret))) continue;
                var height = neck.Sounding(new StringNumber(number), new Fret(fret));
                if (targets.Contains(height.PitchClass)) Target(pen, x + (fret - first + 0.5) * pitch, LineOf(number));
                if (targets.Contains(height.PitchClass) || !scale.Contains(NoteName.Wrap(height.PitchClass - tonic.PitchClass, 12))) continue;
                Dot(pen, x + (fret - first + 0.5) * pitch, LineOf(number), height.PitchClass == tonic.PitchClass);
            }
        }
        for (var fret = first; fret <= last; fret++)
        {
            if (fret != first && fret != last && !IsMarked(fret)) continue;
            pen.Text(fret.ToString(CultureInfo.InvariantCulture), x + (fret - first + 0.5) * pitch, top - 0.95, HouseStyle.SmallSize, Face.Sans, Anchor.Middle);
        }
    }

    private static double LineOf(int number) => (number - 1) * HouseStyle.TabLineDistance;

    private static bool IsMarked(int fret) => (fret % 12) is 0 or 3 or 5 or 7 or 9;

    /// <summary>The sign of a target, about its middle.</summary>
    public static void Target(Pen pen, double x, double y) => pen.Glyph(Smufl.NoteheadDiamondBlack, x - 0.6, y, 1.1);

    private static void Dot(Pen pen, double x, double y, bool filled)
    {
        if (!filled) pen.White(x - 0.36, y - 0.36, x + 0.36, y + 0.36);
        pen.Glyph(filled ? Smufl.FretboardFilledCircle : Smufl.FretboardO, x, y, DotScale);
    }
}
