using System.Xml.Linq;
using Fretlore.Exchange.Import;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml.Reading;

/// <summary>Reads a barline element: repeats, endings, double lines.</summary>
internal static class BarlineReader
{
    public static void Read(XElement barline, MeasureLines lines)
    {
        if (barline.Element("repeat") is { } repeat)
        {
            if (repeat.Said("direction") == "forward") lines.StartsRepeat = true;
            else lines.Repeats = XmlWords.Whole(repeat.Said("times")) is >= 2 and <= 100 and var times ? times : -1;
        }
        if (barline.Element("ending") is { } ending)
        {
            if (ending.Said("type") == "start") lines.StartsEnding = Passes(ending.Said("number") ?? "1");
            else lines.EndsEnding = true;
        }
        if (barline.Said("location") is null or "right")
        {
            lines.Line = barline.Text("bar-style") switch { "light-light" => BarLine.Double, "light-heavy" when lines.Repeats == 0 => BarLine.Final, _ => lines.Line };
        }
    }

    private static ValueList<int> Passes(string text)
    {
        var passes = new SortedSet<int>();
        foreach (var piece in text.Split([',', ' '], StringSplitOptions.RemoveEmptyEntries))
        {
            var ends = piece.Split('-').Select(XmlWords.Whole).ToArray();
            if (ends is [>= 1 and <= 100 and var one]) passes.Add(one);
            else if (ends is [>= 1 and <= 100 and var from, >= 1 and <= 100 and var to]) for (var p = from; p <= to; p++) passes.Add(p);
        }
        return passes.Count > 0 ? passes.ToValueList() : [1];
    }
}
