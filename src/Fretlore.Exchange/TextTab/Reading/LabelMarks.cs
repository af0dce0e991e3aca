using Fretlore.Exchange.Import;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.TextTab.Reading;

/// <summary>Puts what stands above a bar's strings on its events.</summary>
internal static class LabelMarks
{
    public static void Put(SystemLabels labels, TimedBar bar)
    {
        if (bar.Events.Count == 0) return;
        foreach (var chord in labels.Chords.Where(c => c.Text is not ("N.C." or "NC"))) Nearest(bar, chord.Column, e => e with { ChordSymbol = chord.Text });
        foreach (var words in labels.Words.Where(w => w.Text.Length > 0)) Nearest(bar, words.Column, e => e with { Words = e.Words is { } before ? before + " " + words.Text : words.Text });
        foreach (var change in labels.Changes)
        {
            if (DynamicOf(change.Text) is { } dynamic) Nearest(bar, change.Column, e => e with { Dynamic = dynamic });
        }
        foreach (var hand in labels.Hand) Nearest(bar, hand.Column, e => hand.Text is "d" or "u" ? e with { Stroke = hand.Text == "d" ? Stroke.Down : Stroke.Up } : e with { PickingFinger = hand.Text[0] });
        foreach (var mark in labels.Marks) Mark(bar, mark);
        foreach (var stretch in labels.Stretches)
        {
            for (var i = 0; i < bar.Events.Count; i++)
            {
                if (bar.Columns[i] >= stretch.From - 1 && bar.Columns[i] <= stretch.To) Stretch(bar.Events[i], stretch.Word);
            }
        }
    }

    private static void Nearest(TimedBar bar, int column, Func<Event, Event> put)
    {
        var item = bar.Events[NearestTo(bar, column)];
        item.Marks = put(item.Marks);
    }

    private static int NearestTo(TimedBar bar, int column)
    {
        var best = 0;
        for (var i = 1; i < bar.Columns.Count; i++)
        {
            if (Math.Abs(bar.Columns[i] - column) < Math.Abs(bar.Columns[best] - column)) best = i;
        }
        return best;
    }

    private static void Mark(TimedBar bar, ReadLabel mark)
    {
        var item = bar.Events[NearestTo(bar, mark.Column)];
        if (mark.Text == "roll") item.Marks = item.Marks with { Roll = Roll.LowToHigh };
        else if (mark.Text == "roll-down") item.Marks = item.Marks with { Roll = Roll.HighToLow };
        else if (mark.Text == "rake") item.Marks = item.Marks with { Roll = Roll.Rake };
        else if (mark.Text == "fermata") item.Marks = item.Marks with { HasFermata = true };
        else if (LabelReader.Numbered(mark.Text) is var (isTrill, number)) Ornament(item, isTrill, number);
        else foreach (var note in item.Notes) note.Marks = mark.Text == ">" ? note.Marks with { IsAccented = true } : note.Marks with { IsStaccato = true };
    }

    private static void Ornament(RawEvent item, bool isTrill, decimal number)
    {
        foreach (var note in item.Notes.Where(n => !n.Marks.IsDead))
        {
            note.Marks = isTrill ? note.Marks with { Trill = new Guitar.Fret((int)number) } : note.Marks with { DipCents = (int)(Math.Min(number, 6) * 200) };
        }
    }

    private static void Stretch(RawEvent item, string word)
    {
        var span = word switch { "arm" => Spans.TremoloArm, "wah" => Spans.Wah, "cresc" => Spans.Crescendo, "dim" => Spans.Diminuendo, _ => Spans.None };
        if (span != Spans.None) item.Marks = item.Marks with { Spans = item.Marks.Spans | span };
        foreach (var note in item.Notes.Concat(word is "palm" or "ring" ? item.Graces : []))
        {
            note.Marks = word switch
            {
                "palm" => note.Marks with { IsPalmMuted = true },
                "ring" => note.Marks with { LetsRing = true },
                "vib" when note.Marks.Vibrato.Width == VibratoWidth.None => note.Marks with { Vibrato = new Vibrato(VibratoWidth.Normal, int.MaxValue) },
                _ when word.StartsWith("trem", StringComparison.Ordinal) => note.Marks with { Tremolo = TremoloOf(word) },
                _ => note.Marks,
            };
        }
    }

    private static ValueBase TremoloOf(string word) => word[4..] switch
    {
        "E" => ValueBase.Eighth,
        "S" => ValueBase.Sixteenth,
        "Z" => ValueBase.SixtyFourth,
        _ => ValueBase.ThirtySecond,
    };

    private static Dynamic? DynamicOf(string text) => text switch
    {
        "pp" => Dynamic.Pianissimo,
        "p" => Dynamic.Piano,
        "mp" => Dynamic.MezzoPiano,
        "mf" => Dynamic.MezzoForte,
        "f" => Dynamic.Forte,
        "ff" => Dynamic.Fortissimo,
        _ => null,
    };
}
