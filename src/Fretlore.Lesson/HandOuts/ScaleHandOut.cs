using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout;
using Fretlore.Guitar;
using Fretlore.Lesson.Diagrams;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Lesson.HandOuts;

/// <summary>The scales the song comes from, on the whole neck of each tuning, with their degrees.</summary>
internal static class ScaleHandOut
{
    private const int MostFrets = 15;

    /// <returns>Null when no scale was found in the song.</returns>
    public static Document? Of(Song song, SongReading reading, Paper paper, ITextMetrics texts)
    {
        var found = Found(song, reading).ToArray();
        if (found.Length == 0) return null;
        var pages = new HandOutPages(song, "Scales", paper, texts);
        pages.Title("Scales of the song");
        pages.Paragraph("Squares are the scale's root. The number on each note is its degree: b3 is a minor third, 5 the fifth. String 1, the highest, is on top; open strings stand left of the nut.");
        foreach (var (neck, scale, notes, bars) in found)
        {
            pages.Heading($"{scale.Root} {scale.Name.ToLowerInvariant()}, on {neck.Tuning}{(neck.Capo.IsOff ? "" : $", capo {neck.Capo}")}");
            pages.Paragraph($"Notes: {string.Join(" ", notes)}. In {bars}. {scale.Reason}{(scale.Reason.EndsWith('.') ? "" : ".")}");
            var marks = FittingMarks(pages.Width);
            var box = Box(neck, scale.Root, notes);
            pages.Pictures([("", marks.WidthOf(box), marks.HeightOf(box), (x, y) => marks.Draw(box, x, y))]);
        }
        return pages.ToDocument();
    }

    private static NeckMarks FittingMarks(double width) => new(Math.Min(7, width / (MostFrets * 1.5 + 2.2)));

    internal static NeckBox Box(Neck neck, NoteName root, IReadOnlyList<NoteName> notes)
    {
        var dots = new List<NeckDot>();
        var frets = Math.Min(MostFrets, neck.HighestFret.Number);
        for (var number = 1; number <= neck.StringCount; number++)
        {
            for (var fret = 0; fret <= frets; fret++)
            {
                if (!neck.Has(new StringNumber(number), new Fret(fret))) continue;
                var sounding = neck.Sounding(new StringNumber(number), new Fret(fret)).PitchClass;
                if (notes.Where(n => n.PitchClass == sounding).Cast<NoteName?>().FirstOrDefault() is not { } note) continue;
                dots.Add(new NeckDot(new StringNumber(number), new Fret(fret), Interval.Between(root, note).ToDegree(), note == root));
            }
        }
        return new NeckBox($"{root}", neck.StringCount, 1, frets, dots.ToValueList(), []) { Capo = neck.Capo };
    }

    // Each scale once for each neck, where it first comes.
    private static IEnumerable<(Neck Neck, ScaleReading Scale, IReadOnlyList<NoteName> Notes, string Bars)> Found(Song song, SongReading reading)
    {
        var told = new HashSet<(Neck, NoteName, string)>();
        for (var part = 0; part < song.Parts.Count; part++)
        {
            foreach (var phrase in reading.Parts[part].Phrases.Where(p => !p.Scales.IsDefaultOrEmpty))
            {
                var (scale, neck) = (phrase.Scales[0], song.Parts[part].Bars[phrase.FirstBar].Neck);
                var notes = NotesOf(song, reading, part, phrase, scale);
                // Two or three notes are no scale to hand out.
                if (notes.Count < 5 || !told.Add((neck, scale.Root, scale.Name))) continue;
                yield return (neck, scale, notes, Script.Whereabouts.Bars(song, [(phrase.FirstBar, phrase.FirstBar + phrase.BarCount)]));
            }
        }
    }

    // What is played and belongs to it, and what belongs to it and is not played.
    private static List<NoteName> NotesOf(Song song, SongReading reading, int part, PhraseReading phrase, ScaleReading scale)
    {
        var played = song.Parts[part].Bars.Skip(phrase.FirstBar).Take(phrase.BarCount).SelectMany(bar => bar.Notes).Where(n => !n.IsDead).Select(n => reading.SpellingOf(n.Id).Name);
        return [.. played.Where(n => !scale.Outside.Contains(n)).Concat(scale.Missing).DistinctBy(n => n.PitchClass).OrderBy(n => NoteName.Wrap(n.PitchClass - scale.Root.PitchClass, 12))];
    }
}
