using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>Bar lines with repeats and endings.</summary>
internal static class BarLines
{
    public static void WriteLeft(XmlOutput xml, Bar bar)
    {
        if (!bar.StartsRepeat && !bar.StartsEnding) return;
        xml.Element("barline", () =>
        {
            if (bar.StartsRepeat) xml.Text("bar-style", "heavy-light");
            if (bar.StartsEnding) Ending(xml, bar, "start");
            if (bar.StartsRepeat) xml.Empty("repeat", ("direction", "forward"));
        }, ("location", "left"));
    }

    public static void WriteRight(XmlOutput xml, Bar bar)
    {
        var repeats = bar.RepeatCount > 1;
        if (!repeats && !bar.EndsEnding && bar.EndLine == BarLine.Single) return;
        xml.Element("barline", () =>
        {
            if (repeats || bar.EndLine == BarLine.Final) xml.Text("bar-style", "light-heavy");
            else if (bar.EndLine == BarLine.Double) xml.Text("bar-style", "light-light");
            // An ending that goes back is closed with a downward stroke, the last one is left open (common practice).
            if (bar.EndsEnding) Ending(xml, bar, repeats ? "stop" : "discontinue");
            if (repeats) xml.Empty("repeat", ("direction", "backward"), ("times", XmlOutput.Digits(bar.RepeatCount)));
        }, ("location", "right"));
    }

    private static void Ending(XmlOutput xml, Bar bar, string type) =>
        xml.Empty("ending", ("number", string.Join(',', bar.EndingPasses)), ("type", type));
}
