using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Fretlore.Exchange.Reports;
using Fretlore.Exchange.Sheets;
using Fretlore.Guitar;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Exchange.TextTab;

/// <summary>One part as systems of tab, section by section.</summary>
internal sealed class TabPart
{
    // As much as the longest word over a note takes.
    private const int RoomForWords = 10;

    private readonly Song song;
    private readonly Part part;
    private readonly int width;
    private readonly Remarks remarks;
    private readonly TabSigns signs;
    private readonly TabLabels labels;
    private readonly HashSet<NoteId> doubled;
    private readonly ImmutableArray<Repeat> repeats;

    // For each bar its moments and their signs; all of them before anything is laid out, since a sign can lead on over a bar line.
    private readonly List<(List<TabMoment> Moments, List<TabCell?[]> Cells)> content = [];

    // The last note on each string, to which joints are attached.
    private readonly Dictionary<StringNumber, (TabCell Cell, Note Note)> last = [];

    public TabPart(Song song, SongReading reading, int part, int width, TabSigns signs, Remarks remarks)
    {
        (this.song, this.width, this.signs, this.remarks) = (song, width, signs, remarks);
        this.part = song.Parts[part];
        labels = new TabLabels(song, reading, part, signs);
        doubled = GlidesMistaken();
        repeats = Repeat.In(song.Bars);
        for (var bar = 0; bar < this.part.Bars.Count; bar++)
        {
            var moments = TabMoment.Of(this.part.Bars[bar], song.Bars[bar], this.part.Title, bar, remarks);
            content.Add((moments, CellsOf(moments, bar)));
        }
        var fingers = this.part.Bars.SelectMany(b => b.Notes).Count(n => n.Finger is not null);
        if (fingers > 0) remarks.Add(RemarkKind.LeftOut, "The fingers of the fretting hand are not carried over.", this.part.Title);
    }

    public void Write(StringBuilder text)
    {
        var names = TabHeader.StringNames(part.Neck.Tuning);
        var sections = song.Sections.Count > 0 ? song.Sections : [new Section("", 0, song.Bars.Count)];
        foreach (var section in sections)
        {
            if (section.Name.Length > 0) text.Append('[').Append(SheetWords.OneLine(section.Name).Replace(']', ')')).Append("]\n\n");
            var bars = new List<TabBar>();
            var end = section.FirstBar + section.BarCount;
            for (var bar = section.FirstBar; bar < end;)
            {
                var rests = RestsFrom(bar, end);
                bars.AddRange(rests > 0 ? [Rest(bar, rests)] : Bars(bar, width - names[0].Length - 4));
                bar += Math.Max(1, rests);
            }
            foreach (var system in Systems(bars, names[0].Length)) new TabSystem(names, system, width).Write(text);
        }
    }

    // Greedy: bars side by side as long as they fit; a repeat that ends and one that begins share a line.
    private IEnumerable<List<TabBar>> Systems(List<TabBar> bars, int nameWidth)
    {
        var system = new List<TabBar>();
        var used = nameWidth;
        foreach (var bar in bars)
        {
            if (system.Count > 0 && used + 2 + bar.Width + bar.Right.Length > width)
            {
                yield return system;
                system = [];
                used = nameWidth;
            }
            system.Add(bar);
            used += (system.Count == 1 ? Math.Max(1, bar.Left.Length) : Math.Max(0, bar.Left.Length - 1)) + bar.Width + bar.Right.Length;
        }
        if (system.Count > 0) yield return system;
    }

    // Bars of rest that nothing tells apart.
    private int RestsFrom(int first, int end)
    {
        var bar = first;
        while (bar < end && part.Bars[bar].IsRest && !song.Bars[bar].IsPickup)
        {
            if (bar > first && (labels.HasChanges(bar) || song.Bars[bar].StartsRepeat || song.Bars[bar].StartsEnding || part.Bars[bar].RoadMap != part.Bars[first].RoadMap)) break;
            bar++;
            if (song.Bars[bar - 1].RepeatCount > 0 || song.Bars[bar - 1].EndsEnding || song.Bars[bar - 1].EndLine != BarLine.Single || song.Bars[bar - 1].Jump != Jump.None) break;
        }
        return bar - first;
    }

    private TabBar Rest(int bar, int count)
    {
        var words = count == 1 ? "rest" : string.Create(CultureInfo.InvariantCulture, $"rest {count}");
        var made = NewBar(bar, [.. Enumerable.Repeat(new string('-', words.Length + 4), part.Neck.StringCount)]);
        made.Labels.Add(new TabLabel(TabRow.Values, 2, words));
        labels.AddTo(made, bar, [], _ => 2, made);
        made.WidenTo(made.Needed);
        SetLines(made, made, bar, bar + count - 1);
        labels.AddTimes(made, bar + count - 1);
        if (part.Bars[bar].RoadMap is { } map) made.Labels.Add(new TabLabel(TabRow.Changes, 0, SheetWords.Quoted("road map: " + map)));
        return made;
    }

    private TabBar NewBar(int bar, string[] strings)
    {
        var passes = song.Bars[bar].EndingPasses;
        return new TabBar
        {
            Strings = strings,
            Ending = passes.Count > 0 ? string.Join(',', passes) : null,
            StartsEnding = song.Bars[bar].StartsEnding,
        };
    }

    private void SetLines(TabBar first, TabBar last, int bar, int lastBar)
    {
        first.Left = song.Bars[bar].StartsRepeat ? "|:" : "|";
        last.Right = song.Bars[lastBar].RepeatCount > 0 ? ":|" : song.Bars[lastBar].EndLine != BarLine.Single ? "||" : "|";
    }

    // A bar that is too wide for a line is cut between moments; the pieces have no bar line between them.
    private List<TabBar> Bars(int index, int room)
    {
        var whole = Pieces(index, room);
        return whole.TrueForAll(p => p.Needed <= room) ? whole : Pieces(index, room - RoomForWords);
    }

    private List<TabBar> Pieces(int index, int room)
    {
        var (moments, cells) = content[index];
        var columns = TabColumns.Of(moments, cells, song.Bars[index].Length);
        var pieces = new List<TabBar>();
        for (var first = 0; first < moments.Count;)
        {
            var start = first == 0 ? 0 : SignsFrom(first) - 1;
            var end = moments.Count;
            while (end > first + 1 && columns[end] - start > room - 2) end--;
            // A long note alone is cut short: its value says how long it is.
            var stop = Math.Min(end == moments.Count ? columns[end] : SignsFrom(end), Math.Max(start + room, SignsTo(end - 1) + 1));
            var piece = NewBar(index, [.. Enumerable.Range(0, part.Neck.StringCount).Select(s => Line(s, first, end, start, stop))]);
            var (from, shift) = (first, start);
            labels.AddTo(piece, index, moments[first..end], m => columns[from + m] - shift, first == 0 ? piece : null);
            piece.WidenTo(Math.Min(piece.Needed, room + RoomForWords));
            pieces.Add(piece);
            first = end;
        }
        foreach (var piece in pieces) (piece.Left, piece.Right) = ("", "");
        SetLines(pieces[0], pieces[^1], index, index);
        labels.AddTimes(pieces[^1], index);
        return pieces;

        int SignsFrom(int moment) => columns[moment] - cells[moment].Max(c => c?.Before.Length ?? 0);

        int SignsTo(int moment) => columns[moment] + cells[moment].Max(c => c is null ? 0 : c.Body.Length + c.After.Length);

        string Line(int number, int first, int end, int start, int stop)
        {
            var line = new char[stop - start];
            Array.Fill(line, '-');
            for (var i = first; i < end; i++)
            {
                if (cells[i][number] is not { } cell) continue;
                var text = cell.Before + cell.Body + cell.After;
                text.CopyTo(0, line, columns[i] - start - cell.Before.Length, text.Length);
            }
            return new string(line);
        }
    }

    private List<TabCell?[]> CellsOf(List<TabMoment> moments, int bar)
    {
        var cells = new List<TabCell?[]>();
        var before = Repeat.Before(repeats, bar) is >= 0 and var earlier && earlier < content.Count ? content[earlier].Cells.LastOrDefault() : null;
        foreach (var moment in moments)
        {
            var row = new TabCell?[part.Neck.StringCount];
            foreach (var item in moment.Events)
            {
                foreach (var note in item.Graces) AddGrace(row, note);
                // What another line was played under is not in the column before, and can't be seen to sound on.
                foreach (var note in item.Notes.Where(n => !n.IsTiedFromBefore || (cells.Count > 0 ? cells[^1] : before)?[n.String.Value - 1] is not null)) Add(row, note);
            }
            foreach (var number in moment.Held.Where(h => row[h.Value - 1] is null)) row[number.Value - 1] = new TabCell { Body = signs.Use("=") };
            cells.Add(row);
        }
        return cells;
    }

    private void Add(TabCell?[] row, Note note)
    {
        var cell = signs.CellOf(note, doubled.Contains(note.Id));
        var number = note.String.Value - 1;
        var from = last.TryGetValue(note.String, out var found) ? found.Note : null;
        var joint = note.IsTiedFromBefore ? "" : signs.JointOf(note, from);
        if (row[number] is { } grace)
        {
            // The grace note before it on its string.
            cell.Before = grace.Before + joint + cell.Before;
        }
        else if (joint.Length > 0)
        {
            if (from is not null) found.Cell.After += joint;
            else cell.Before = joint + cell.Before;
        }
        row[number] = cell;
        last[note.String] = (cell, note.IsTiedFromBefore && from is not null ? from : note);
    }

    private void AddGrace(TabCell?[] row, Note note)
    {
        var cell = row[note.String.Value - 1] ??= new TabCell();
        var from = last.TryGetValue(note.String, out var found) ? found.Note : null;
        var own = signs.CellOf(note, false);
        cell.Before += signs.JointOf(note, from) + own.Before + signs.Use("g") + own.Body + own.After;
        last[note.String] = (new TabCell(), note);
    }

    // A glide off that the next note on its string would else be the end of.
    private HashSet<NoteId> GlidesMistaken()
    {
        var found = new HashSet<NoteId>();
        var open = new Dictionary<StringNumber, Note>();
        foreach (var note in part.Bars.SelectMany(b => b.Strands.SelectMany(s => s.Events.Select(e => (s, e))).OrderBy(e => e.e.Start)).SelectMany(e => e.e.Graces.Concat(e.e.Notes)))
        {
            if (open.TryGetValue(note.String, out var off) && !note.IsTiedFromBefore && (off.GlideOut == GlideOut.Upwards ? note.Fret.Number > off.Fret.Number : note.Fret.Number < off.Fret.Number))
                found.Add(off.Id);
            if (!note.IsTiedFromBefore) open.Remove(note.String);
            if (note.GlideOut != GlideOut.None) open[note.String] = note;
        }
        return found;
    }
}
