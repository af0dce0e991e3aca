using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;

namespace Fretlore.Tests.Engraving.Layout;

/// <summary>The collision checker: what is inked on a page where something else is, bar by bar.</summary>
internal static class InkCheck
{
    // Flags curl back beside their own head by the font's design, brackets join their own line, and wavy lines overlap from one piece to the next.
    private static readonly string[] Joined = ["glyph E24", "glyph EAB", "glyph E003", "glyph E004"];

    public static List<string> Collisions(DrawnPage page, FontLibrary fonts, InkKind upTo = InkKind.BarLine)
    {
        var found = new List<string>();
        var all = InkBoxes.Of(page, fonts).Where(p => p.Kind <= upTo && !Joined.Any(p.Path.Contains)).OrderBy(p => p.Ink.Left).ToArray();
        var widest = all.Where(p => p.Kind == InkKind.Sign).Select(p => p.Ink.Right - p.Ink.Left).DefaultIfEmpty(0).Max();
        for (var i = 0; i < all.Length; i++)
        {
            if (all[i].Kind != InkKind.Sign) continue;
            var sign = all[i];
            var first = i;
            while (first > 0 && all[first - 1].Ink.Left > sign.Ink.Left - 12) first--;
            for (var j = first; j < all.Length && all[j].Ink.Left < sign.Ink.Right; j++)
            {
                if (i == j || (all[j].Kind == InkKind.Sign && j < i)) continue;
                if (AllowedFor(sign, all[j]) is { } allowed && InkBoxes.Overlap(sign.Ink, all[j].Ink, allowed)) found.Add($"{sign.Path} on {all[j].Path} at {sign.Ink.Left:0.0}, {sign.Ink.Top:0.0}");
            }
        }
        return [.. found.Distinct()];
    }

    // How far two pieces of ink may share a place; null where they may touch as they like.
    private static double? AllowedFor(InkPiece sign, InkPiece other) => other.Kind switch
    {
        InkKind.Sign => 0.15,
        InkKind.Stroke => 0.1,
        InkKind.Beam => IsTremolo(sign) ? null : IsAccidental(sign) ? 0.5 : 0.12,
        InkKind.Stem => sign.Path.Contains(" text ", StringComparison.Ordinal) || IsAccidental(sign) ? 0.05 : null,
        InkKind.BarLine => sign.Path.Contains(" text ", StringComparison.Ordinal) || IsAccidental(sign) ? 0.05 : null,
        _ => null,
    };

    private static bool IsTremolo(InkPiece sign) => sign.Path.Contains(" glyph E22", StringComparison.Ordinal);

    private static bool IsAccidental(InkPiece sign) => sign.Path.Contains(" glyph E26", StringComparison.Ordinal);
}
