using System.Globalization;
using Fretlore.Exchange.Sheets;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Exchange.TextTab;

/// <summary>What stands above the strings of one part: values, strokes, marks, chord symbols, changes, riffs, endings.</summary>
internal sealed class TabLabels(Song song, SongReading reading, int index, TabSigns signs)
{
    private readonly Part part = song.Parts[index];
    private readonly ILookup<int, ChordMoment> chords = (index < reading.Parts.Length ? reading.Parts[index].Chords : []).ToLookup(c => c.Bar);
    private readonly ILookup<int, string> riffs = song.RiffUses.Where(u => u.Part == index).ToLookup(u => u.FirstBar, u => u.Riff);

    /// <summary>True when something changes at a bar for all parts or for this one.</summary>
    public bool HasChanges(int bar) => Changes(bar).Any() || song.Bars[bar].Tempos.Count > 0 || riffs[bar].Any();

    /// <summary>Adds the labels of a bar's moments to a piece of it.</summary>
    /// <param name="piece">A bar, or the piece of one that has these moments.</param>
    /// <param name="bar">Its index.</param>
    /// <param name="moments">The moments.</param>
    /// <param name="columnOf">The column of each moment in the piece.</param>
    /// <param name="start">The piece that has the bar's start; null for others.</param>
    public void AddTo(TabBar piece, int bar, List<TabMoment> moments, Func<int, int> columnOf, TabBar? start)
    {
        if (start is not null) AddStart(start, bar);
        for (var i = 0; i < moments.Count; i++)
        {
            piece.Labels.Add(new TabLabel(TabRow.Values, columnOf(i), moments[i].Value));
            foreach (var item in moments[i].Events) AddEvent(piece, item, moments[i], columnOf(i));
        }
        // What stands where no note starts goes to the next moment, or to the bar's last; a tempo is written where it belongs, in the parts that play there.
        foreach (var mark in song.Bars[bar].Tempos.Where(t => !t.At.IsZero && (StartsAt(part, bar, t.At) || (index == 0 && !song.Parts.Any(p => StartsAt(p, bar, t.At))))))
            Place(mark.At, TabRow.Changes, $"({SheetWords.Of(mark.Tempo)})");
        foreach (var chord in chords[bar]) Place(chord.At, TabRow.Chords, chord.Symbol);
        foreach (var item in part.Bars[bar].Strands.SelectMany(s => s.Events).Where(e => e.ChordSymbol is not null && !chords[bar].Any(c => c.At == e.Start)))
            Place(item.Start, TabRow.Chords, item.ChordSymbol!);
        AddStretches(piece, moments, columnOf);

        void Place(Beats at, TabRow row, string text)
        {
            if (moments.Count == 0)
            {
                if (start is not null) piece.Labels.Add(new TabLabel(row, 2, text));
                return;
            }
            var (first, end) = (moments[0].At, moments[^1].At + moments[^1].Length);
            if (at < first || at >= end) return;
            var found = moments.FindIndex(m => m.At >= at);
            piece.Labels.Add(new TabLabel(row, columnOf(found < 0 ? moments.Count - 1 : found), text));
        }
    }

    private static bool StartsAt(Part part, int bar, Beats at) => part.Bars[bar].Strands.Any(s => s.Events.Any(e => e.Start == at));

    private void AddStart(TabBar piece, int bar)
    {
        var changes = Changes(bar).Concat(bar > 0 ? song.Bars[bar].Tempos.Where(t => t.At.IsZero).Select(t => SheetWords.Of(t.Tempo)) : []).Select(c => $"({c})").Concat(riffs[bar].Select(r => "riff " + r));
        var text = string.Join("  ", changes);
        if (text.Length > 0) piece.Labels.Add(new TabLabel(TabRow.Changes, 0, text));
    }

    /// <summary>Says at a bar's end where it is gone to from there, and of a repeat how often it is played, where that is more than twice.</summary>
    public void AddTimes(TabBar end, int bar)
    {
        if (song.Bars[bar].Jump is not Jump.None and var jump) end.Labels.Add(new TabLabel(TabRow.Form, Math.Max(0, end.Width - 3), SheetWords.Of(jump)));
        var count = song.Bars[bar].RepeatCount;
        if (count > 2 && song.Bars[bar].EndingPasses.Count == 0) end.Labels.Add(new TabLabel(TabRow.Form, end.Width, string.Create(CultureInfo.InvariantCulture, $"x{count}")));
    }

    private IEnumerable<string> Changes(int bar)
    {
        var (now, before) = (song.Bars[bar], bar > 0 ? song.Bars[bar - 1] : null);
        if (now.IsPickup) yield return "upbeat";
        if (now.IsSegno) yield return signs.Use("segno");
        if (now.IsCoda) yield return signs.Use("coda");
        if (before is not null && now.Meter != before.Meter) yield return SheetWords.Of(now.Meter);
        if (before is not null && now.Key is { } key && key != before.Key) yield return "key " + SheetWords.Of(key);
        if (before is not null && now.FeelChange is { } feel) yield return SheetWords.Of(feel);
        var capo = part.Bars[bar].Neck.Capo;
        if (capo != (bar > 0 ? part.Bars[bar - 1].Neck.Capo : part.Neck.Capo)) yield return "capo " + capo;
    }

    private void AddEvent(TabBar piece, Event item, TabMoment moment, int column)
    {
        if (item.Words is { } words) piece.Labels.Add(new TabLabel(TabRow.Changes, column, SheetWords.Quoted(words)));
        if (item.Dynamic is { } dynamic) piece.Labels.Add(new TabLabel(TabRow.Changes, column, SheetWords.Of(dynamic)));
        if (item.Stroke != Stroke.None) piece.Labels.Add(new TabLabel(TabRow.Hand, column, signs.Use("d u", item.Stroke == Stroke.Down ? "d" : "u")));
        if (item.PickingFinger is { } finger) piece.Labels.Add(new TabLabel(TabRow.Hand, column, signs.Use("p i m a c", finger.ToString())));
        if (item.Roll != Roll.None) piece.Labels.Add(new TabLabel(TabRow.Marks, column, signs.Use(item.Roll switch { Roll.LowToHigh => "roll", Roll.Rake => "rake", _ => "roll-down" })));
        if (item.HasFermata) piece.Labels.Add(new TabLabel(TabRow.Marks, column, signs.Use("fermata")));
        if (item.Notes.Items.FirstOrDefault(n => n.Trill is not null)?.Trill is { } trill) piece.Labels.Add(new TabLabel(TabRow.Marks, column, signs.Use("tr(7)", $"tr({trill})")));
        if (item.Notes.Items.FirstOrDefault(n => n.DipCents > 0) is { } dipped) piece.Labels.Add(new TabLabel(TabRow.Marks, column, signs.Use("dip(1)", string.Create(CultureInfo.InvariantCulture, $"dip({dipped.DipCents / 200m:0.###})"))));
        if (item.Notes.Any(n => n.IsAccented)) piece.Labels.Add(new TabLabel(TabRow.Marks, column, signs.Use(">")));
        if (item.Notes.Any(n => n.IsStaccato)) piece.Labels.Add(new TabLabel(TabRow.Marks, column, signs.Use(".")));
    }

    private void AddStretches(TabBar piece, List<TabMoment> moments, Func<int, int> columnOf)
    {
        foreach (var word in moments.SelectMany(m => m.Events).SelectMany(WordsOf).Distinct().Order(StringComparer.Ordinal))
        {
            var columns = new List<int>();
            for (var i = 0; i <= moments.Count; i++)
            {
                var stands = i < moments.Count && (moments[i].Events.Exists(e => WordsOf(e).Contains(word)) || columns.Count > 0 && moments[i].SoundsOn);
                if (stands) columns.Add(columnOf(i));
                else if (columns.Count > 0)
                {
                    piece.Stretches.Add(new TabStretch(word, columns, i < moments.Count ? columnOf(i) - 1 : piece.Width - 1, columns[0] == columnOf(0), i == moments.Count));
                    columns = [];
                }
            }
        }
    }

    private IEnumerable<string> WordsOf(Event item)
    {
        if (item.Notes.Any(n => n.IsPalmMuted)) yield return signs.Use("PM");
        if (item.Notes.Any(n => n.LetsRing)) yield return signs.Use("let ring");
        if (item.Spans.HasFlag(Spans.TremoloPicking) || item.Notes.Any(n => n.Tremolo is not null)) yield return signs.Use("trem", TremoloOf(item));
        if (item.Spans.HasFlag(Spans.TremoloArm)) yield return signs.Use("arm");
        if (item.Spans.HasFlag(Spans.Wah)) yield return signs.Use("wah");
        if (item.Spans.HasFlag(Spans.Crescendo)) yield return signs.Use("cresc");
        if (item.Spans.HasFlag(Spans.Diminuendo)) yield return signs.Use("dim");
    }

    private static string TremoloOf(Event item)
    {
        var value = item.Notes.Select(n => n.Tremolo).FirstOrDefault(t => t is not null) ?? ValueBase.ThirtySecond;
        return value == ValueBase.ThirtySecond ? "trem" : $"trem:{SheetWords.Letter(value)}";
    }
}
