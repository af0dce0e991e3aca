using System.Collections.Immutable;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.EndMatter;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Model;

namespace Fretlore.Engraving.Layout.Pages;

/// <summary>The head of the first page: title, artist, credits, and how each part is tuned.</summary>
internal sealed class TitleBlock(Ink ink, FrameRows? frames, double left, double right)
{
    private const double TitleSize = 5.2;
    private const double SmallestTitle = 3.4;
    private const double ArtistSize = 2.7;
    private const double NoteSize = 1.75;

    /// <summary>Rows of chord frames a head may hold.</summary>
    public const int MostRows = 2;

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
            y += size * 0.45;
        }
        foreach (var line in LineWrap.Of(ink, info.Artist ?? "", Face.Serif, ArtistSize, right - left))
        {
            y += ink.CapHeight(Face.Serif, ArtistSize);
            pen.Text(line, middle, y, ArtistSize, Face.Serif, Anchor.Middle);
            y += ArtistSize * 0.45;
        }
        y += 0.9;
        var notes = y;
        foreach (var line in Tunings(model)) notes = DrawNote(pen, line, notes);
        var credits = y;
        foreach (var line in LineWrap.Of(ink, info.Credits ?? "", Face.SerifItalic, NoteSize, (right - left) * 0.32))
        {
            credits = DrawCredit(pen, line, Face.SerifItalic, credits);
        }
        if (model.Staves.Length < model.Song.Parts.Count) credits = DrawCredit(pen, subject, Face.Serif, credits);
        y = Math.Max(notes, credits) + 1;
        foreach (var row in RowsOf(frames))
        {
            frames!.Draw(pen, row, left, y);
            y += frames.HeightOf(row);
        }
        return y;
    }

    /// <summary>Rows of frames that stand in the head; more than two of them go after the music.</summary>
    private ImmutableArray<(int First, int End)> RowsOf(FrameRows? shown) =>
        shown?.Rows(right - left) is { Length: <= MostRows } rows ? rows : [];

    private double DrawCredit(Pen pen, string value, Face face, double y)
    {
        y += NoteSize * 0.75;
        pen.Text(value, right, y, NoteSize, face, Anchor.End);
        return y + NoteSize * 0.55;
    }

    private double DrawNote(Pen pen, string value, double y)
    {
        foreach (var line in LineWrap.Of(ink, value, Face.Serif, NoteSize, (right - left) * 0.66))
        {
            y += NoteSize * 0.75;
            MixedText.Draw(pen, line, left, y, NoteSize, Face.Serif);
            y += NoteSize * 0.55;
        }
        return y;
    }

    // One line for all parts when they are tuned alike, else one for each.
    private static IEnumerable<string> Tunings(ScoreModel model)
    {
        var necks = model.Staves.Select(s => (s.Part.Title, Text: TuningText.Of(s.Part.Neck))).ToArray();
        if (necks.Length > 1 && necks.Select(n => n.Text).Distinct().Count() == 1) return [Capital(necks[0].Text)];
        return necks.Select(n => $"{n.Title}: {n.Text}");
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
