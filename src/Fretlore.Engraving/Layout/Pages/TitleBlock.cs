using System.Globalization;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Guitar;

namespace Fretlore.Engraving.Layout.Pages;

/// <summary>The head of the first page: title, artist, credits, and how each part is tuned.</summary>
internal sealed class TitleBlock(Ink ink, double left, double right)
{
    private const double TitleSize = 5.2;
    private const double SmallestTitle = 3.4;
    private const double ArtistSize = 2.7;
    private const double NoteSize = 1.75;

    /// <param name="pen">Draws it, in the page's coordinates.</param>
    /// <param name="model">The song.</param>
    /// <param name="subject">What these pages are.</param>
    /// <param name="top">The top margin.</param>
    /// <returns>Where the music may begin.</returns>
    public double Draw(Pen pen, ScoreModel model, string subject, double top)
    {
        var info = model.Song.Info;
        var middle = (left + right) / 2;
        var y = top;
        var size = TitleSize;
        while (size > SmallestTitle && ink.TextWidth(info.Title, Face.SerifBold, size) > right - left) size -= 0.2;
        foreach (var line in LineWrap.Of(ink, info.Title, Face.SerifBold, size, right - left))
        {
            y += ink.CapHeight(Face.SerifBold, size);
            pen.Text(line, middle, y, size, Face.SerifBold, Anchor.Middle);
            y += size * 0.55;
        }
        foreach (var line in LineWrap.Of(ink, info.Artist ?? "", Face.Serif, ArtistSize, right - left))
        {
            y += ink.CapHeight(Face.Serif, ArtistSize) + 0.2;
            pen.Text(line, middle, y, ArtistSize, Face.Serif, Anchor.Middle);
            y += ArtistSize * 0.5;
        }
        y += 1.2;
        var notes = y;
        foreach (var line in Tunings(model)) notes = DrawNote(pen, line, notes);
        var credits = y;
        foreach (var line in LineWrap.Of(ink, info.Credits ?? "", Face.SerifItalic, NoteSize, (right - left) * 0.4))
        {
            credits = DrawCredit(pen, line, Face.SerifItalic, credits);
        }
        if (model.Staves.Length < model.Song.Parts.Count) credits = DrawCredit(pen, subject, Face.Serif, credits);
        return Math.Max(notes, credits) + 1.5;
    }

    private double DrawCredit(Pen pen, string value, Face face, double y)
    {
        y += NoteSize * 0.75;
        pen.Text(value, right, y, NoteSize, face, Anchor.End);
        return y + NoteSize * 0.55;
    }

    private double DrawNote(Pen pen, string value, double y)
    {
        var size = NoteSize;
        var width = MixedText.Width(ink, value, size, Face.Serif);
        var room = (right - left) * 0.58;
        if (width > room) size *= room / width;
        y += size * 0.75;
        MixedText.Draw(pen, value, left, y, size, Face.Serif);
        return y + size * 0.55;
    }

    // One line for all parts when they are tuned alike, else one for each.
    private static IEnumerable<string> Tunings(ScoreModel model)
    {
        var necks = model.Staves.Select(s => (s.Part.Title, Text: TuningOf(s.Part.Neck))).ToArray();
        if (necks.Length > 1 && necks.Select(n => n.Text).Distinct().Count() == 1) return [necks[0].Text];
        return necks.Select(n => $"{n.Title} \u2013 {n.Text}");
    }

    private static string TuningOf(Neck neck)
    {
        var notes = neck.Tuning.LowToHigh.Select(p => MixedText.SignsOf(p.Name.ToString()) + p.Octave.ToString(CultureInfo.InvariantCulture));
        var text = neck.Tuning == Tuning.Standard ? "standard tuning" : "tuned " + string.Join(' ', notes);
        return neck.Capo > 0 ? text + string.Create(CultureInfo.InvariantCulture, $", capo {neck.Capo}") : text;
    }
}
