using Fretlore.Exchange.Reports;
using Fretlore.Exchange.Sheets;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Import;

/// <summary>Bars under a sign for playing the last bar, or the last two, again.</summary>
internal static class BarsAgain
{
    /// <summary>Writes out what stands only as a sign: bars under one that hold nothing.</summary>
    public static void Fill(RawPart part)
    {
        foreach (var (bar, count) in part.Again)
        {
            if (bar < count || bar >= part.Bars.Count || part.Bars[bar].Exists(e => e.Notes.Count > 0)) continue;
            part.Bars[bar] = [.. part.Bars[bar - count].Select(Copy)];
        }
    }

    /// <summary>The bars of a part, marked where they are like those that they play again.</summary>
    public static ValueList<PartBar> Marked(Part part, SortedDictionary<int, int> again, ValueList<Bar> form, Remarks remarks)
    {
        if (again.Count == 0) return part.Bars;
        var bars = part.Bars.ToArray();
        var keys = new BarKeys();
        foreach (var (bar, count) in again)
        {
            if (bar >= bars.Length || bars[bar].IsRest) continue;
            if (bar >= count && bars[bar].Neck == bars[bar - count].Neck && KeyOf(bar) == KeyOf(bar - count))
                bars[bar] = Like(bars[bar], bars[bar - count]) with { Repeats = count };
            else remarks.Add(RemarkKind.Changed, "A sign for bars played again stands at other music than that of the bars before it: the notes are kept.", part.Title, bar + 1);
        }
        return bars.ToValueList();

        int KeyOf(int bar) => keys.Of(form[bar] with { EndLine = BarLine.Single }, Bare(bars[bar]));
    }

    // What a file need not say again.
    private static PartBar Bare(PartBar bar) => bar with
    {
        Strands = bar.Strands.Select(s => s with
        {
            Events = s.Events.Select(e => e with { Shape = null, ChordSymbol = null, Notes = e.Notes.Select(n => n with { Finger = null }).ToValueList() }).ToValueList(),
        }).ToValueList(),
    };

    private static PartBar Like(PartBar bar, PartBar before) => bar with
    {
        Strands = bar.Strands.Zip(before.Strands, (strand, like) => strand with { Events = strand.Events.Zip(like.Events, Like).ToValueList() }).ToValueList(),
    };

    private static Event Like(Event item, Event like) => item with
    {
        Shape = like.Shape,
        ChordSymbol = like.ChordSymbol,
        Notes = item.Notes.Zip(like.Notes, (note, other) => note with { Finger = other.Finger }).ToValueList(),
    };

    private static RawEvent Copy(RawEvent item)
    {
        var copy = new RawEvent { Start = item.Start, Duration = item.Duration, Value = item.Value, Tuplet = item.Tuplet, Voice = item.Voice, Staff = item.Staff, Marks = item.Marks };
        copy.Notes.AddRange(item.Notes.Select(Copy));
        copy.Graces.AddRange(item.Graces.Select(Copy));
        return copy;
    }

    private static RawNote Copy(RawNote note)
    {
        var copy = new RawNote { Midi = note.Midi, String = note.String, Fret = note.Fret, Marks = note.Marks, StartsTie = note.StartsTie };
        copy.Bends.AddRange(note.Bends);
        return copy;
    }
}
