using Fretlore.Exchange.Reports;
using Fretlore.Exchange.Sheets;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Import;

/// <summary>Makes a song of a file's music: strings chosen, values written, ties and bends put in order.</summary>
internal static class SongMaker
{
    public static Song Make(RawSong raw, Remarks remarks)
    {
        var parts = new List<Part>();
        var made = new List<RawPart>();
        foreach (var part in raw.Parts)
        {
            if (part.HasUnpitched && !part.Events.Any(e => e.Notes.Count > 0) && raw.Parts.Count > 1)
            {
                remarks.Add(RemarkKind.LeftOut, "The part has no notes that can be played on a neck.", part.Title);
                continue;
            }
            parts.Add(new PartBuilder(part, remarks).Build(raw.Bars));
            made.Add(part);
        }
        if (parts.Count == 0) throw new RefusedFileException("The file holds no notes.", "Export it again from the program it comes from.");
        var next = 0;
        var numbered = parts.Select(p => p with
        {
            Name = SheetNames.Short(p.Title),
            Bars = p.Bars.Select(b => b with { Strands = b.Strands.Select(s => s with { Events = s.Events.Select(Number).ToValueList() }).ToValueList() }).ToValueList(),
        }).ToValueList();
        var song = new Song
        {
            Info = raw.Info,
            Bars = raw.Bars.ToValueList(),
            Parts = numbered,
            Sections = raw.Sections.Select((s, i) => s with { BarCount = (i + 1 < raw.Sections.Count ? raw.Sections[i + 1].FirstBar : raw.Bars.Count) - s.FirstBar }).ToValueList(),
            NoteCount = next,
        };
        song = new ShapeNaming(remarks, raw.IsOwn).Named(song, [.. made.Select(p => p.Shapes)]);
        return song with { Parts = song.Parts.Select((p, i) => p with { Bars = BarsAgain.Marked(p, made[i].Again, song.Bars, remarks) }).ToValueList() };

        Event Number(Event item) => item with { Graces = item.Graces.Select(With).ToValueList(), Notes = item.Notes.Select(With).ToValueList() };

        Note With(Note note) => note with { Id = new NoteId(next++) };
    }
}
