using System.Globalization;
using System.Xml.Linq;
using Fretlore.Exchange.Reports;
using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Exchange.MusicXml.Reading;

/// <summary>Reads what holds from a place of a part on: divisions, key, metre, tuning, and signs over whole bars.</summary>
internal sealed class AttributesReader(Remarks remarks, string part, PartFacts facts)
{
    /// <summary>Of a quarter note.</summary>
    public long Divisions { get; private set; } = 1;

    /// <summary>Semitones from written to sounding.</summary>
    public int Transposed { get; private set; }

    /// <summary>1 or 2 under a sign for playing as many bars again, or 0.</summary>
    public int Again { get; private set; }

    /// <summary>A partial capo that our own words tell of in the measure, or null.</summary>
    public Capo? SaidCapo { get; set; }

    /// <summary>The capo at present.</summary>
    public Capo Capo { get; private set; }

    public void Read(XElement item, MeasureMusic made, int bar)
    {
        if (item.Whole("divisions") is > 0 and <= 1_000_000 and var count) Divisions = count;
        foreach (var key in item.Elements("key").Take(1))
        {
            if (key.Whole("fifths") is { } fifths) made.Key = (true, XmlWords.Key(fifths, key.Text("mode")?.ToLowerInvariant()));
            else remarks.Add(RemarkKind.LeftOut, "A key signature that is not major, minor or a mode is not carried over.", part, bar + 1);
        }
        foreach (var sign in item.Elements("time").Take(1)) made.Meter = MeterOf(sign) ?? made.Meter;
        foreach (var transpose in item.Elements("transpose").Take(1))
        {
            Transposed = Math.Clamp((transpose.Whole("chromatic") ?? 0) + 12 * (transpose.Whole("octave-change") ?? 0), -48, 48);
        }
        foreach (var clef in item.Elements("clef").Where(c => c.Text("sign") == "TAB")) facts.TabStaves.Add(XmlWords.Whole(clef.Said("number")) ?? 1);
        foreach (var details in item.Elements("staff-details")) ReadStaff(details, bar);
        foreach (var sign in item.Elements("measure-style").Elements()) ReadStyle(sign, bar);
    }

    // Rests of several bars are there bar by bar too.
    private void ReadStyle(XElement sign, int bar)
    {
        switch (sign.Name.LocalName)
        {
            case "measure-repeat" when sign.Said("type") == "start":
                Again = XmlWords.Whole(sign.Value.Trim()) is >= 1 and <= 2 and var count ? count : 0;
                if (Again == 0) remarks.Add(RemarkKind.LeftOut, "A sign for more than two bars played again is not carried over; the bars are as the file has them.", part, bar + 1);
                break;
            case "measure-repeat":
                Again = 0;
                break;
            case "beat-repeat" when sign.Said("type") == "start":
                remarks.Add(RemarkKind.LeftOut, "A sign for beats played again is not carried over; the bars are as the file has them.", part, bar + 1);
                break;
            case "slash" when sign.Said("type") == "start":
                remarks.Add(RemarkKind.LeftOut, "Slashes in place of notes are not carried over; the bars are as the file has them.", part, bar + 1);
                break;
        }
    }

    private void ReadStaff(XElement details, int bar)
    {
        var strings = new SortedDictionary<int, Pitch>();
        foreach (var tuning in details.Elements("staff-tuning"))
        {
            if (XmlWords.Whole(tuning.Said("line")) is >= 1 and <= 12 and var line && XmlWords.Pitch(tuning, "tuning-") is var (name, midi) && midi is >= 12 and <= 100)
                strings[line] = new Height(midi).Spell(name);
        }
        if (SaidCapo is { } said && !said.Fits(strings.Count)) SaidCapo = null;
        if (SaidCapo is { } over) foreach (var line in strings.Keys.ToArray()) strings[line] = PartialCapo.Lowered(strings[line], new StringNumber(strings.Keys.Last() - line + 1), over);
        if (strings.Count is >= 4 and <= 9)
        {
            if (facts.Tuning is null) facts.Tuning = new Tuning(strings.Values.ToValueList());
            else if (!facts.Tuning.LowToHigh.SequenceEqual(strings.Values)) remarks.Add(RemarkKind.LeftOut, "A change of tuning within a part is not carried over.", part, bar + 1);
            facts.TabStaves.Add(XmlWords.Whole(details.Said("number")) ?? 1);
        }
        else if (strings.Count > 0) remarks.Add(RemarkKind.LeftOut, $"A tuning of {strings.Count.ToString(CultureInfo.InvariantCulture)} strings is not carried over: a neck has four to nine.", part, bar + 1);
        if (SaidCapo is { } partial && strings.Count > 0) facts.Capos[bar] = partial;
        else if (details.Whole("capo") is >= 0 and <= 12 and var capo) facts.Capos[bar] = capo;
        else if (strings.Count > 0 && facts.Capos.Count > 0) facts.Capos[bar] = 0;
        if (facts.Capos.TryGetValue(bar, out var now)) Capo = now;
    }

    private static Meter? MeterOf(XElement sign)
    {
        var (count, unit) = (new List<int>(), 0);
        foreach (var (beats, type) in sign.Elements("beats").Zip(sign.Elements("beat-type")))
        {
            if (XmlWords.Whole(type.Value.Trim()) is not { } one || one is < 1 or > 64) return null;
            var groups = beats.Value.Split('+').Select(b => XmlWords.Whole(b.Trim()) ?? 0).ToList();
            if (unit == 0) unit = one;
            if (groups.Exists(g => g is < 1 or > 64) || one < unit && unit % one != 0 || one > unit && one % unit != 0) return null;
            if (one > unit) count = [.. count.Select(c => c * (one / unit))];
            var factor = one < unit ? unit / one : 1;
            unit = Math.Max(unit, one);
            count.AddRange(groups.Select(g => g * factor));
        }
        if (count.Count == 0) return null;
        var stated = count.Count > 1 ? count.ToValueList() : default;
        return Meter.IsValid(count.Sum(), unit, stated) ? new Meter(count.Sum(), unit, stated) : null;
    }
}
