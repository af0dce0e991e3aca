using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Exchange.Import;

/// <summary>Chooses a neck for a part whose file says no tuning.</summary>
internal static class NeckChoice
{
    private const int UsualFrets = 24;
    private const int MostFrets = 36;

    // The usual guitar first, then necks that reach lower (common practice for seven and eight strings and for the bass).
    private static readonly string[] Tunings =
        ["E2 A2 D3 G3 B3 E4", "B1 E2 A2 D3 G3 B3 E4", "E1 A1 D2 G2", "F#1 B1 E2 A2 D3 G3 B3 E4", "B0 E1 A1 D2 G2 C3", "C#1 F#1 B1 E2 A2 D3 G3 B3 E4"];

    public static Neck For(RawPart part)
    {
        var capo = part.Capos.TryGetValue(0, out var first) ? first : Capo.Off;
        var highest = part.Events.SelectMany(e => e.Notes.Concat(e.Graces)).Max(n => n.Fret) ?? 0;
        var frets = Math.Clamp(Math.Max(UsualFrets, highest + capo.CountedFrom), UsualFrets, MostFrets);
        if (part.Tuning is not null) return new Neck(part.Tuning, capo, frets);
        var heights = part.Events.SelectMany(e => e.Notes).Select(n => n.Midi).ToList();
        return Tunings.Select(t => new Neck(Tuning.TryParse(t, out var tuning) ? tuning : Tuning.Standard, capo, frets)).MinBy(n => heights.Count(h => !Reaches(n, h)))!;
    }

    /// <summary>True when a height can be played somewhere on a neck.</summary>
    public static bool Reaches(Neck neck, int midi) => Enumerable.Range(1, neck.StringCount).Any(n => neck.FretOf(new StringNumber(n), new Height(midi)) is not null);
}
