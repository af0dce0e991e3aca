using System.Globalization;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.Reports;
using Fretlore.Exchange.Sheets;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.TextTab.Reading;

/// <summary>Makes a song of the bars of all parts.</summary>
internal sealed class SongAssembler(TabHeading heading, List<ReadPart> parts, TextFindings findings, Remarks remarks, bool isOwn)
{
    private const int HighestFretTaken = 24;

    private readonly BarEvents events = new(findings);

    // What is known of one written bar of one part.
    private sealed record PlacedBar(ReadBar Read, Meter Meter, Beats Length, bool IsPickup, Key? Key, Feel? Feel, List<TempoMark> Tempos, Capo Capo, List<RawEvent> Events);

    public RawSong Make()
    {
        var song = new RawSong { Info = new SongInfo(heading.Title ?? "Untitled", heading.Artist, heading.Credits, heading.Rights) };
        var first = parts[0].Bars[0];
        var meter = heading.Metre ?? MetreOf(first);
        if (meter is null) findings.Add(TextFindingKind.MetreTaken, first.Line, first.Index, 1, (meter = MetreFitting()).Value.ToString());
        if (heading.Tempo is null) findings.Add(TextFindingKind.TempoTaken, first.Line, first.Index, 1);
        var placed = parts.ConvertAll(p => Place(p, meter.Value));
        var model = placed.MaxBy(p => p.Count)!;
        WriteBars(song, model, placed);
        for (var p = 0; p < parts.Count; p++) song.Parts.Add(PartOf(parts[p], placed[p], model.Count));
        var sections = new SortedDictionary<int, string>();
        for (var p = 0; p < parts.Count; p++)
        {
            foreach (var (bar, name) in parts[p].Sections) sections.TryAdd(placed[p].FindIndex(b => ReferenceEquals(b.Read, parts[p].Bars[bar])), name);
        }
        song.Sections.AddRange(sections.Where(s => s.Key >= 0 && s.Key < model.Count).Select(s => new Section(s.Value, s.Key, 0)));
        return song;
    }

    // The metre that the spacing of the notes fits best; 4/4 unless another one is clearly better.
    private Meter MetreFitting()
    {
        var bars = parts.SelectMany(p => p.Bars).Where(b => b.Labels.Values.Count == 0 && b.Notes.Count > 0).Take(200).Select(b => (Columns: b.Moments().ConvertAll(m => m.Column), b.Width)).Where(b => b.Columns.Count <= BarEvents.MostMoments).ToList();
        if (bars.Count == 0) return Meter.FourFour;
        double CostOf(Meter meter) => bars.Sum(b => SpacingRhythm.Of(b.Columns, Math.Max(b.Width, b.Columns[^1] + 1), meter).Cost) / bars.Count;
        var usual = CostOf(Meter.FourFour);
        foreach (var other in (ReadOnlySpan<Meter>)[new Meter(3, 4), new Meter(6, 8)])
        {
            if (usual > 0.05 && CostOf(other) < usual / 3) return other;
        }
        return Meter.FourFour;
    }

    private static Meter? MetreOf(ReadBar bar) => bar.Labels.Changes.Select(c => HeaderWords.MetreOf(c.Text)).FirstOrDefault(m => m is not null);

    private List<PlacedBar> Place(ReadPart part, Meter meter)
    {
        var placed = new List<PlacedBar>();
        var (key, capo) = (heading.Key, part.Capo);
        var frets = Math.Max(HighestFretTaken, part.Bars.SelectMany(b => b.Notes).Select(n => n.Fret + capo.CountedFrom).DefaultIfEmpty(0).Max());
        var neck = new Neck(part.Tuning, capo, Math.Min(frets, 36));
        var guessed = new List<(ReadBar Bar, int From, int To)>();
        foreach (var bar in part.Bars.SelectMany(b => Parted(b, meter)))
        {
            meter = MetreOf(bar) ?? meter;
            key = bar.Labels.Changes.Select(c => c.Text.StartsWith("key ", StringComparison.Ordinal) ? HeaderWords.KeyOf(c.Text[4..]) : null).FirstOrDefault(k => k is not null) ?? key;
            capo = bar.Labels.Changes.Select(c => c.Text.StartsWith("capo ", StringComparison.Ordinal) ? HeaderWords.CapoOf(c.Text[5..]) : null).FirstOrDefault(c => c?.Fits(part.Tuning.StringCount) == true) ?? capo;
            if (capo != neck.Capo) neck = neck with { Capo = capo };
            var timed = bar.Rests > 0 ? new TimedBar([], null, [], false) : events.Of(bar, meter, neck);
            if (timed.IsGuessed)
            {
                var number = placed.Count + 1;
                if (guessed.Count > 0 && guessed[^1].Bar.Line == bar.Line && guessed[^1].To == number - 1) guessed[^1] = guessed[^1] with { To = number };
                else guessed.Add((bar, number, number));
            }
            var (length, barMeter, isPickup) = LengthOf(bar, timed, meter, placed.Count == 0);
            var feel = bar.Labels.Changes.Select(c => HeaderWords.FeelOf(c.Text)).FirstOrDefault(f => f is not null);
            placed.Add(new PlacedBar(bar, barMeter, length, isPickup, key, feel, TemposOf(bar, timed, length), capo, timed.Events));
            for (var more = 1; more < bar.Rests; more++) placed.Add(placed[^1] with { Read = new ReadBar { Line = bar.Line, Index = bar.Index }, Feel = null, Tempos = [], Events = [] });
            // A repeat that ends at bars of rest ends at the last of them, and a jump is made from there.
            if (bar.Rests > 1)
            {
                (placed[^1].Read.Repeats, placed[^1].Read.IsDouble, bar.Repeats, bar.IsDouble) = (bar.Repeats, bar.IsDouble, 0, false);
                var jumps = bar.Labels.Changes.FindAll(c => SheetWords.JumpOf(c.Text) != Jump.None);
                placed[^1].Read.Labels.Changes.AddRange(jumps);
                bar.Labels.Changes.RemoveAll(jumps.Contains);
            }
            if (placed.Count > ImportLimits.MostBars) throw new RefusedFileException("The tab has more bars than are taken.", "Split it and import its pieces.");
        }
        foreach (var (bar, from, to) in guessed)
        {
            var words = from == to ? string.Create(CultureInfo.InvariantCulture, $"bar {from}") : string.Create(CultureInfo.InvariantCulture, $"bars {from} to {to}");
            findings.Add(TextFindingKind.RhythmFromSpacing, bar.Line, bar.Index, 1, words);
        }
        return placed;
    }

    // Where no bar lines stand, or more notes than a bar can have, the usual distance is taken for an eighth, and as many as fill the metre for a bar.
    private List<ReadBar> Parted(ReadBar bar, Meter meter)
    {
        if (bar.Labels.Values.Count > 0 || bar.Labels.Counts.Count > 0) return [bar];
        var moments = bar.Moments();
        if (moments.Count == 0 || (!bar.IsUnbounded && moments.Count <= BarEvents.MostMoments)) return [bar];
        findings.Add(TextFindingKind.BarLinesTaken, bar.Line, bar.Index, 1);
        var eighth = SpacingRhythm.UsualGap(moments.ConvertAll(m => m.Column));
        var width = Math.Max(1, (int)(meter.Length * 2).WholeCount(Beats.Quarter) * eighth);
        var pieces = new List<ReadBar>();
        foreach (var group in moments.GroupBy(m => (m.Column - moments[0].Column) / width))
        {
            var piece = new ReadBar { Line = bar.Line, Index = bar.Index, Width = width, FirstBeat = 0 };
            foreach (var (column, notes) in group)
            {
                foreach (var note in notes)
                {
                    piece.Notes.Add(note);
                    piece.Shifts[note] = bar.ColumnOf(note) - note.Column - moments[0].Column - group.Key * width;
                }
            }
            while (pieces.Count < group.Key && pieces.Count < ImportLimits.MostBars) pieces.Add(new ReadBar { Line = bar.Line, Index = bar.Index, Width = width });
            pieces.Add(piece);
        }
        (pieces[0].StartsRepeat, pieces[^1].Repeats, pieces[^1].IsDouble) = (bar.StartsRepeat, bar.Repeats, bar.IsDouble);
        return pieces;
    }

    private (Beats Length, Meter Meter, bool IsPickup) LengthOf(ReadBar bar, TimedBar timed, Meter meter, bool isFirst)
    {
        if (timed.Length is not { } length || length == meter.Length) return (meter.Length, meter, false);
        // Tuplets are whole in an upbeat too.
        var isBinary = (length.Denominator & (length.Denominator - 1)) == 0;
        if (isBinary && length < meter.Length && (isFirst || bar.Labels.Changes.Exists(c => c.Text == "upbeat"))) return (length, meter, true);
        findings.Add(TextFindingKind.BarLengthOdd, bar.Line, bar.Index, Math.Max(1, bar.Width), meter.ToString());
        for (var unit = meter.Unit; unit <= 64; unit *= 2)
        {
            var units = length * unit / 4;
            if (units.Denominator == 1 && units.Numerator is >= 1 and <= 64) return (length, new Meter((int)units.Numerator, unit), false);
        }
        return (meter.Length, meter, false);
    }

    private static List<TempoMark> TemposOf(ReadBar bar, TimedBar timed, Beats length)
    {
        var tempos = new SortedDictionary<Beats, TempoMark>();
        foreach (var change in bar.Labels.Changes)
        {
            if (!change.Text.Contains('=', StringComparison.Ordinal) || HeaderWords.TempoOf(change.Text) is not { } tempo) continue;
            var at = timed.Columns.FindIndex(c => c >= change.Column);
            var place = at > 0 ? timed.Events[at].Start : Beats.Zero;
            if (place < length) tempos[place] = new TempoMark(place, tempo);
        }
        return [.. tempos.Values];
    }

    private void WriteBars(RawSong song, List<PlacedBar> model, List<List<PlacedBar>> all)
    {
        var (number, lines) = (0, new List<MeasureLines>());
        ValueList<int> before = [];
        for (var i = 0; i < model.Count; i++)
        {
            var (bar, read) = (model[i], model[i].Read);
            if (!bar.IsPickup) number++;
            // A tempo within a bar stands in the parts that play there.
            var tempos = all.Where(p => i < p.Count).SelectMany(p => p[i].Tempos).Where(t => t.At < bar.Length).DistinctBy(t => t.At).OrderBy(t => t.At).ToList();
            if (i == 0 && !tempos.Exists(t => t.At.IsZero)) tempos.Insert(0, new TempoMark(Beats.Zero, heading.Tempo ?? Tempo.Default));
            var changes = all.Where(p => i < p.Count).SelectMany(p => p[i].Read.Labels.Changes).Select(c => c.Text).ToList();
            song.Bars.Add(new Bar
            {
                Number = number,
                Meter = bar.Meter,
                Key = bar.Key,
                Length = bar.Length,
                IsPickup = bar.IsPickup,
                Tempos = tempos.ToValueList(),
                IsSegno = changes.Contains("segno"),
                IsCoda = changes.Contains("coda"),
                Jump = changes.Select(SheetWords.JumpOf).FirstOrDefault(j => j != Jump.None),
                FeelChange = bar.Feel ?? (i == 0 ? heading.Feel : null),
            });
            var passes = read.Passes;
            var next = i + 1 < model.Count ? model[i + 1].Read.Passes : [];
            lines.Add(new MeasureLines
            {
                StartsRepeat = read.StartsRepeat,
                Repeats = read.Repeats,
                StartsEnding = passes.Count > 0 && passes != before ? passes : [],
                EndsEnding = passes.Count > 0 && next != passes,
                Line = read.IsDouble && read.Repeats == 0 ? i == model.Count - 1 ? BarLine.Final : BarLine.Double : BarLine.Single,
            });
            before = passes;
        }
        FormReader.Write(lines, song.Bars, remarks);
    }

    private RawPart PartOf(ReadPart part, List<PlacedBar> placed, int count)
    {
        var made = new RawPart { Title = part.Title, Tuning = part.Tuning };
        made.Capos[0] = part.Capo;
        for (var i = 0; i < count; i++)
        {
            made.Bars.Add(i < placed.Count ? placed[i].Events : []);
            if (i < placed.Count && placed[i].Capo != (i > 0 ? placed[i - 1].Capo : part.Capo)) made.Capos[i] = placed[i].Capo;
        }
        if (placed.Count < count && !isOwn) remarks.Add(RemarkKind.Guessed, "The part has fewer bars than another: it is taken to begin with it.", part.Title);
        return made;
    }
}
