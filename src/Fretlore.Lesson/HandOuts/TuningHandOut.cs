using System.Globalization;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout;
using Fretlore.Guitar;
using Fretlore.Hands.Strings;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.HandOuts;

/// <summary>How to tune for the song, and what strings do in that tuning.</summary>
internal static class TuningHandOut
{
    private const string Care =
        "Tune up slowly, a little at a time, and wear eye protection while you change or tune strings: one that breaks can hit an eye. "
        + "If your guitar was set up for another tuning or other strings, its neck, action and bridge may need a new setup: ask a guitar technician.";

    public static Document Of(Song song, Paper paper, ITextMetrics texts)
    {
        var pages = new HandOutPages(song, "Tuning and strings", paper, texts);
        pages.Title("Tuning and strings");
        foreach (var parts in song.Parts.GroupBy(p => (p.Neck, p.Strings))) Write(pages, parts.Key.Neck, parts.Key.Strings, string.Join(", ", parts.Select(p => p.Title)));
        return pages.ToDocument();
    }

    private static void Write(HandOutPages pages, Neck neck, ValueList<GuitarString> strings, string who)
    {
        pages.Heading($"{who}: {neck.Tuning}");
        pages.Paragraph(neck.Capo.IsOff
            ? "Written from the low string to the high one; string 1 is the highest. No capo."
            : Text($"Written from the low string to the high one, without the capo; string 1 is the highest. {CapoWords(neck)}"));
        var geometry = NeckGeometry.Of(neck);
        var isSaid = strings.Count == neck.StringCount;
        var set = isSaid ? StringSet.Of(neck.Tuning, geometry, strings.Items) : StringSet.For(neck.Tuning, geometry, StringFeel.Named[0]);
        var usual = UsualSet.For(neck.StringCount);
        pages.Table([0, 0.12, 0.26, 0.42, 0.58, 0.74],
        [
            ["String", "Note", "Hertz", "From the usual", "Gauge", "Tension"],
            .. set.Strings.Select(s => (string[])
            [
                s.Number.ToString(), s.Pitch.ToString(), Text($"{s.Pitch.Height.Hertz():0.00}"), FromUsual(s.Pitch.Height, usual?.Tuning[s.Number].Height), s.Gauge.ToString(),
                Text($"{s.Tension.Newtons:0} N ({s.Tension.PoundsForce:0.0} lbf)"),
            ]),
        ]);
        pages.Paragraph(Text($"Hertz are for A4 = 440. Gauges, in inches (w: wound), are {(isSaid ? "the player's" : "those that come nearest to an even pull")} on {Scale(neck)}; together they pull {set.Load.Newtons:0} N ({set.Load.PoundsForce:0} lbf)."));
        foreach (var remark in StringRemarks.On(set, isSaid ? null : StringFeel.Named[0], usual?.At(geometry.MiddleScaleLength))) pages.Paragraph(remark.Text);
        pages.Paragraph(Care);
    }

    private static string Scale(Neck neck) => neck.LowScaleLength is { } low
        ? Text($"scales from {neck.ScaleLength:0} mm for the high string to {low:0} mm for the low one")
        : Text($"a scale of {neck.ScaleLength:0} mm");

    private static string CapoWords(Neck neck) => neck.Capo is { IsPartial: true } capo
        ? Text($"After tuning put the {capo.Words} and leave the other strings free: open, they sound {Sounding(neck)} then. Frets on the pages are counted from the nut; 0 on a string under the capo is that string as the capo stops it.")
        : Text($"Put the capo at fret {neck.Capo.Fret} after tuning; frets on the pages are counted from it.");

    private static string Sounding(Neck neck) => string.Join(' ', neck.Tuning.LowToHigh.Select((open, i) => open.Transpose(Interval.Chromatic(neck.Capo.On(new StringNumber(neck.StringCount - i)) % 12)).Name.ToString()));

    private static string FromUsual(Height now, Height? usual) => usual is not { } from ? "" : (now - from) switch
    {
        0 => "as usual",
        var up and > 0 => Text($"up {Steps(up)}"),
        var down => Text($"down {Steps(-down)}"),
    };

    private static string Steps(int semitones) => semitones switch
    {
        1 => "a half step",
        2 => "a whole step",
        _ when semitones % 2 == 0 => Text($"{semitones / 2} whole steps"),
        _ => Text($"{semitones / 2}½ steps"),
    };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
