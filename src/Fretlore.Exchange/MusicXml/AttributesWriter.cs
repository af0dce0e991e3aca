using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>Key, metre, clefs, tuning and capo, where they begin or change.</summary>
internal sealed class AttributesWriter(XmlOutput xml, StaffForm form)
{
    private (long Divisions, int Signature, Key? Key, Meter Meter, Neck Neck)? before;
    private int again;

    /// <param name="restBars">How many bars of rest begin here for all parts; fewer than two are not told.</param>
    /// <param name="repeats">1 or 2 where the last bar or the last two are played again, or 0.</param>
    public void Write(Bar bar, Neck neck, long divisions, int restBars, int repeats)
    {
        var now = (divisions, bar.Key?.Signature ?? 0, bar.Key, bar.Meter, neck);
        var isFirst = before is null;
        var (newDivisions, newKey, newMeter, newNeck) = before is not { } last
            ? (true, true, true, true)
            : (last.Divisions != divisions, last.Key != bar.Key, last.Meter != bar.Meter, last.Neck != neck);
        var (wasAgain, newAgain) = (again, again != repeats);
        (before, again) = (now, repeats);
        if (!newDivisions && !newKey && !newMeter && !newNeck && !newAgain && restBars < 2) return;
        xml.Element("attributes", () =>
        {
            if (newDivisions) xml.Number("divisions", divisions);
            if (newKey) WriteKey(bar.Key);
            if (newMeter) WriteMeter(bar.Meter);
            if (isFirst) WriteClefs();
            if (newNeck) WriteNeck(neck);
            if (restBars > 1) xml.Element("measure-style", () => xml.Number("multiple-rest", restBars));
            if (newAgain && wasAgain > 0) WriteAgain("stop", wasAgain);
            if (newAgain && repeats > 0) WriteAgain("start", repeats);
        });
    }

    // The bars are written out too: the sign is for those who print them.
    private void WriteAgain(string type, int bars) => xml.Element("measure-style", () =>
        xml.Text("measure-repeat", XmlOutput.Digits(bars), ("type", type), ("slashes", bars > 1 ? XmlOutput.Digits(bars) : null)));

    private void WriteKey(Key? key) => xml.Element("key", () =>
    {
        xml.Number("fifths", key?.Signature ?? 0);
        if (key is { } stated) xml.Text("mode", Names.ModeOf(stated));
    });

    private void WriteMeter(Meter meter) => xml.Element("time", () =>
    {
        xml.Text("beats", meter.StatedGroups.Count > 0 ? string.Join('+', meter.StatedGroups) : XmlOutput.Digits(meter.Count));
        xml.Number("beat-type", meter.Unit);
    });

    private void WriteClefs()
    {
        var two = form.HasTwoStaves();
        if (two) xml.Number("staves", 2);
        // The clef with the 8 below says that the guitar sounds an octave under treble clef, so pitches stay the ones that sound.
        if (two) WriteClef("1", "G", 2, -1);
        WriteClef(two ? "2" : null, "TAB", 5, 0);
    }

    private void WriteClef(string? staff, string sign, int line, int octaveChange) => xml.Element("clef", () =>
    {
        xml.Text("sign", sign);
        xml.Number("line", line);
        if (octaveChange != 0) xml.Number("clef-octave-change", octaveChange);
    }, ("number", staff));

    private void WriteNeck(Neck neck) => xml.Element("staff-details", () =>
    {
        xml.Number("staff-lines", neck.StringCount);
        for (var line = 1; line <= neck.StringCount; line++)
        {
            // Line 1 is the bottom line, the lowest string.
            var open = neck.Tuning.LowToHigh[line - 1];
            if (neck.Capo.IsPartial) open = PartialCapo.Raised(open, new StringNumber(neck.StringCount - line + 1), neck.Capo);
            xml.Element("staff-tuning", () =>
            {
                xml.Text("tuning-step", open.Name.Step.ToString());
                if (open.Name.Alteration != 0) xml.Number("tuning-alter", open.Name.Alteration);
                xml.Number("tuning-octave", open.Octave);
            }, ("line", XmlOutput.Digits(line)));
        }
        if (neck.Capo is { IsOff: false, IsPartial: false } capo) xml.Number("capo", capo.Fret);
    }, ("number", form.HasTwoStaves() ? "2" : null), ("print-object", form == StaffForm.Notation ? "no" : null));
}
