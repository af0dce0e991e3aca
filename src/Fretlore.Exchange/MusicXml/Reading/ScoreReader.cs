using System.Globalization;
using System.Xml.Linq;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.Reports;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml.Reading;

/// <summary>Reads a whole score, partwise or timewise.</summary>
internal sealed class ScoreReader(XElement root, Remarks remarks)
{
    private readonly List<(string Title, string? Sound, PartFacts Facts, List<MeasureMusic> Measures)> parts = [];
    private readonly List<MeasureLines> lines = [];
    private readonly List<bool> isImplicit = [];

    // In a file of ours, some signs say more than the standard asks of them.
    private bool IsOwn { get; } = root.Element("identification")?.Element("encoding").Text("software") == HeaderWriter.Software;

    public RawSong Read()
    {
        var written = root.Name.LocalName switch
        {
            "score-partwise" => Partwise(),
            "score-timewise" => Timewise(),
            _ => throw new RefusedFileException("The file is XML, but no MusicXML score.", "Import a file that ends in .musicxml, .mxl or .xml and begins with score-partwise or score-timewise."),
        };
        if (written.Count == 0 || written.All(p => p.Measures.Count == 0)) throw new RefusedFileException("The score holds no music.", "Export it again from the program it comes from.");
        if (written.Count > ImportLimits.MostParts) throw new RefusedFileException("The score has more parts than are taken.", "Export the parts you want on their own.");
        if (written.Max(p => p.Measures.Count) > ImportLimits.MostBars) throw new RefusedFileException("The score has more bars than are taken.", "Split the score and import its pieces.");
        var names = root.Elements("part-list").Elements("score-part").GroupBy(p => p.Said("id") ?? "").ToDictionary(g => g.Key, g => g.First());
        foreach (var (id, measures) in written) ReadPart(names.GetValueOrDefault(id), measures);
        var song = new RawSong { Info = Info(), IsOwn = IsOwn };
        WriteBars(song);
        for (var p = 0; p < parts.Count; p++) new PartMaker(remarks, parts[p].Title, parts[p].Sound, parts[p].Facts).Write(parts[p].Measures, song);
        return song;
    }

    private List<(string Id, List<(XElement? Measure, List<XElement> Items)> Measures)> Partwise() =>
        [.. root.Elements("part").Select(p => (p.Said("id") ?? "", p.Elements("measure").Select(m => ((XElement?)m, m.Elements().ToList())).ToList()))];

    // Measures that hold parts, turned round; a part that a measure leaves out has an empty one there.
    private List<(string Id, List<(XElement? Measure, List<XElement> Items)> Measures)> Timewise()
    {
        var measures = root.Elements("measure").ToList();
        var ids = measures.SelectMany(m => m.Elements("part")).Select(p => p.Said("id") ?? "").Distinct().ToList();
        if (ids.Count > ImportLimits.MostParts) throw new RefusedFileException("The score has more parts than are taken.", "Export the parts you want on their own.");
        return [.. ids.Select(id => (id, measures.Select(m => ((XElement?)m, m.Elements("part").Where(p => (p.Said("id") ?? "") == id).Elements().ToList())).ToList()))];
    }

    private void ReadPart(XElement? named, List<(XElement? Measure, List<XElement> Items)> measures)
    {
        var title = named.Text("part-name") is { Length: > 0 } name ? name : named.Text("part-abbreviation") is { Length: > 0 } shortName ? shortName
            : string.Create(CultureInfo.InvariantCulture, $"Part {parts.Count + 1}");
        var facts = new PartFacts { IsOwn = IsOwn, SaysPalmMutes = measures.Any(m => m.Items.Any(i => i.Element("play") is not null)) };
        var reader = new MeasureReader(remarks, title, facts);
        var read = new List<MeasureMusic>();
        for (var i = 0; i < measures.Count; i++)
        {
            while (lines.Count <= i)
            {
                lines.Add(new MeasureLines());
                isImplicit.Add(false);
            }
            foreach (var barline in measures[i].Items.Where(m => m.Name.LocalName == "barline")) BarlineReader.Read(barline, lines[i]);
            isImplicit[i] |= measures[i].Measure?.Said("implicit") == "yes";
            read.Add(reader.Read(measures[i].Items, i));
        }
        reader.EndPart();
        if (facts.Lyrics > 0) remarks.Add(RemarkKind.LeftOut, "The words to sing are not carried over.", title);
        parts.Add((title, SoundOf(named), facts, read));
    }

    private static string? SoundOf(XElement? named) => named?.Element("midi-instrument").Whole("midi-program") switch
    {
        25 => "nylon",
        26 => "acoustic",
        27 => "jazz",
        29 or 30 => "edge",
        31 => "driven",
        _ => null,
    };

    private SongInfo Info()
    {
        var creators = root.Elements("identification").Elements("creator").ToList();
        string? Creator(params ReadOnlySpan<string> types)
        {
            foreach (var type in types)
            {
                var names = creators.Where(c => c.Said("type") == type && c.Value.Trim().Length > 0).Select(c => XmlWords.Line(c.Value)).ToList();
                if (names.Count > 0) return string.Join(", ", names);
            }
            return null;
        }
        var title = root.Element("work").Text("work-title") is { Length: > 0 } work ? work : root.Text("movement-title") is { Length: > 0 } movement ? movement : "Untitled";
        return new SongInfo(title, Creator("artist"), Creator("composer", "lyricist", "arranger"), root.Element("identification").Text("rights") is { Length: > 0 } rights ? rights : null);
    }

    private void WriteBars(RawSong song)
    {
        var count = parts.Max(p => p.Measures.Count);
        var (meter, key) = (Meter.FourFour, (Key?)null);
        var number = 0;
        for (var i = 0; i < count; i++)
        {
            var here = parts.Where(p => i < p.Measures.Count).Select(p => p.Measures[i]).ToList();
            meter = here.Select(m => m.Meter).FirstOrDefault(m => m is not null) ?? meter;
            if (here.FirstOrDefault(m => m.Key.IsStated) is { } stated) key = stated.Key.Key ?? (i == 0 ? null : key);
            var (length, barMeter, isPickup) = LengthOf(i, here.Max(m => m.Length), meter);
            if (!isPickup) number++;
            var tempos = here.SelectMany(m => m.Tempos).Where(t => t.At < length).GroupBy(t => t.At).Select(g => g.First()).OrderBy(t => t.At).ToList();
            if (i == 0 && (tempos.Count == 0 || !tempos[0].At.IsZero))
            {
                tempos.Insert(0, new TempoMark(Beats.Zero, Tempo.Default));
                remarks.Add(RemarkKind.Guessed, "The file says no tempo at its start: 120 quarters a minute are taken.");
            }
            song.Bars.Add(new Bar
            {
                Number = number,
                Meter = barMeter,
                Key = key,
                Length = length,
                IsPickup = isPickup,
                Tempos = tempos.ToValueList(),
                FeelChange = here.Select(m => m.Feel).FirstOrDefault(f => f is not null),
                IsSegno = here.Exists(m => m.IsSegno),
                IsCoda = here.Exists(m => m.IsCoda),
                Jump = here.Select(m => m.Jump).FirstOrDefault(j => j != Jump.None),
            });
            if (here.Select(m => m.Section).FirstOrDefault(s => s is not null) is { } section) song.Sections.Add(new Section(section, i, 0));
        }
        JumpMarks.Settle(song.Bars, remarks);
        FormReader.Write(lines, song.Bars, remarks);
    }

    private (Beats Length, Meter Meter, bool IsPickup) LengthOf(int index, Beats filled, Meter meter)
    {
        if (filled == meter.Length || filled.IsZero) return (meter.Length, meter, false);
        var isBinary = (filled.Denominator & (filled.Denominator - 1)) == 0 && filled.Denominator <= 16;
        if (filled < meter.Length && isBinary && (index == 0 || isImplicit[index])) return (filled, meter, true);
        var rounded = isBinary ? filled : ValuePieces.Shortest * ((filled + ValuePieces.Shortest / 2).WholeCount(ValuePieces.Shortest));
        if (!isBinary) remarks.Add(RemarkKind.Changed, "A bar of odd length is rounded to the nearest 64th.", null, index + 1);
        if (rounded == meter.Length) return (meter.Length, meter, false);
        for (var unit = meter.Unit; unit <= 64; unit *= 2)
        {
            var units = rounded * unit / 4;
            if (units.Denominator != 1 || units.Numerator is < 1 or > 64) continue;
            var other = new Meter((int)units.Numerator, unit);
            return (other.Length, other, false);
        }
        throw new RefusedFileException(string.Create(CultureInfo.InvariantCulture, $"Bar {index + 1} is too long to be written in any metre."), "Divide it in the program it comes from, and export it again.");
    }
}
