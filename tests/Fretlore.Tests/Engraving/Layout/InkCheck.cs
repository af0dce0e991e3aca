using System.Globalization;
using System.Text.RegularExpressions;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;

namespace Fretlore.Tests.Engraving.Layout;

/// <summary>Two pieces of ink that share a place.</summary>
/// <param name="Sign">The sign.</param>
/// <param name="Other">What is under it.</param>
/// <param name="At">The box around the sign.</param>
internal readonly record struct Touch(string Sign, string Other, Box At)
{
    /// <summary>The bar it is in, or nothing where it belongs to a whole system.</summary>
    public string Bar => Regex.Match(Sign + Other, "bar-[0-9]+|$").Value;

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Sign} on {Other} at {At.Left:0.0}, {At.Top:0.0}");
}

/// <summary>The collision checker: what is inked on a page where something else is.</summary>
internal static class InkCheck
{
    private const double Hair = 0.05;

    // The two heads of a second share the stem between them.
    private const double Stem = 0.19;

    public static List<Touch> Collisions(DrawnPage page, FontLibrary fonts, InkKind upTo = InkKind.BarLine)
    {
        var found = new HashSet<Touch>();
        var all = InkBoxes.Of(page, fonts).Where(p => p.Kind <= upTo).OrderBy(p => p.Ink.Left).ToArray();
        var widest = all.Select(p => p.Ink.Right - p.Ink.Left).DefaultIfEmpty(0).Max();
        for (var i = 0; i < all.Length; i++)
        {
            if (all[i].Kind != InkKind.Sign) continue;
            var sign = all[i];
            var first = i;
            while (first > 0 && all[first - 1].Ink.Left > sign.Ink.Left - widest) first--;
            for (var j = first; j < all.Length && all[j].Ink.Left < sign.Ink.Right; j++)
            {
                if (i == j || (all[j].Kind == InkKind.Sign && j < i)) continue;
                if (AllowedFor(sign, all[j]) is { } allowed && InkBoxes.Overlap(sign, all[j], allowed)) found.Add(new Touch(sign.Path, all[j].Path, sign.Ink));
            }
        }
        return [.. found.DistinctBy(t => t.ToString())];
    }

    // How far two pieces of ink may share a place; null where they may touch as they like.
    private static double? AllowedFor(InkPiece sign, InkPiece other) => other.Kind switch
    {
        InkKind.Sign => (IsWave(sign) && IsWave(other)) || IsUnison(sign, other) ? null : IsHead(sign) && IsHead(other) ? Stem : Hair,
        InkKind.Stroke => IsGraceFlag(sign) ? null : Hair,
        InkKind.Beam => IsTremolo(sign) ? null : Hair,
        InkKind.Stem or InkKind.BarLine => sign.Path.Contains(" text ", StringComparison.Ordinal) || Is(sign, "E26") ? Hair : null,
        _ => null,
    };

    // Wavy lines go on from one piece to the next.
    private static bool IsWave(InkPiece sign) => Is(sign, "EAB") || Is(sign, "EAA4");

    private static bool IsHead(InkPiece sign) => Is(sign, "E0A") || Is(sign, "E0D");

    // Two voices on one pitch share a head.
    private static bool IsUnison(InkPiece sign, InkPiece other) => IsHead(sign) && sign.Ink == other.Ink;

    private static bool IsTremolo(InkPiece sign) => Is(sign, "E22");

    // A grace note's flag has a stroke through it.
    private static bool IsGraceFlag(InkPiece sign) => sign.Scale < 1 && Is(sign, "E240");

    private static bool Is(InkPiece sign, string glyphs) => sign.Path.Contains(" glyph " + glyphs, StringComparison.Ordinal);
}
