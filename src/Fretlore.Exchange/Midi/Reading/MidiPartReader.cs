using System.Globalization;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.Reports;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>Writes down what one part plays.</summary>
internal sealed class MidiPartReader(MidiBars bars, MidiTempos tempos, ValueBase?[] swung, Remarks remarks)
{
    // Of a file whose times are those of note values nearly all starts are.
    private const double MostlyExact = 0.85;
    private const double MostlyExactEnds = 0.75;

    /// <summary>A part as its track states it in words, with the pitches of its keys; null where it does not, or they don't fit.</summary>
    public RawPart? ReadStated(PartTrack track)
    {
        if (track.Neck is not { Bars.Count: > 0 }) return null;
        var (part, curves) = (Empty(track), Curves(track));
        return StatedBars.Write(track, bars, curves, part) ? part : null;
    }

    /// <summary>A part as it is heard.</summary>
    public RawPart Read(PartTrack track)
    {
        var isExact = IsExact(track.Keys.Select(k => k.On), MostlyExact);
        var rhythm = new WrittenRhythm(bars, swung, isExact);
        var tremolos = new Dictionary<MidiKey, ValueBase>(ReferenceEqualityComparer.Instance);
        var keys = isExact ? TremoloFinder.Joined(track.Keys, bars.TicksPerQuarter, tremolos, Array.Exists(swung, s => s is not null)) : track.Keys;
        var moments = new MomentFinder(bars.TicksPerQuarter, tempos.SecondsAt, isExact, k => track.Neck?.StringOf(k.Channel) is { } number ? -number : k.Number).Find(keys);
        Say(new RhythmFinder(bars, rhythm, tempos.SecondsAt, isExact).Write(moments), track.Title);
        var exactEnds = isExact && IsExact(track.Keys.Select(k => k.Off), MostlyExactEnds);
        var (part, curves) = (Empty(track), Curves(track));
        var lines = LineMaker.Make(Timed(Joined(moments), rhythm, exactEnds, curves, tremolos));
        foreach (var (voice, line) in lines)
        {
            for (var i = 0; i < line.Count; i++) Write(line[i], i > 0 ? line[i - 1] : null, voice, part, rhythm, track);
            RestWriter.Fill(part, voice, bars, rhythm);
        }
        if (curves.Values.Any(c => c.LeavesOut)) remarks.Add(RemarkKind.LeftOut, "What the pitch wheel does below a note is not carried over.", track.Title);
        return part;
    }

    private RawPart Empty(PartTrack track)
    {
        var part = new RawPart { Title = track.Title, Sound = GeneralMidi.SoundOf(track.Program), Tuning = track.Neck?.Tuning };
        if (track.Neck is { } stated) foreach (var (tick, capo) in stated.Capos) part.Capos[bars.Place(tick).Bar] = capo;
        for (var i = 0; i < bars.All.Count; i++) part.Bars.Add([]);
        return part;
    }

    private bool IsExact(IEnumerable<long> ticks, double share)
    {
        var places = ticks.Distinct().Select(t => bars.Place(t).At).ToList();
        var tolerance = ExactGrid.Tolerance(bars.TicksPerQuarter);
        return places.Count(p => ExactGrid.IsOnAny(p, tolerance)) >= share * places.Count;
    }

    private void Say(RhythmReport report, string title)
    {
        if (report.Moved > 0)
        {
            remarks.Add(RemarkKind.Guessed, string.Create(CultureInfo.InvariantCulture,
                $"The rhythm is worked out: of {report.Moments} moments {report.Moved} are moved to where they are written, by {report.UsualSeconds * 1000:0} ms as a rule and by {report.MostSeconds * 1000:0} ms at most; it is {Math.Floor(report.Sureness * 100):0} % sure."), title);
        }
        foreach (var (bar, sureness) in report.UnsureBars)
            remarks.Add(RemarkKind.Guessed, string.Create(CultureInfo.InvariantCulture, $"The rhythm of this bar could be another one ({Math.Floor(sureness * 100):0} % sure): listen, and mend it."), title, bar + 1);
    }

    // Moments that come to be written at one place are one.
    private static List<MidiMoment> Joined(List<MidiMoment> moments)
    {
        var joined = new List<MidiMoment>();
        foreach (var moment in moments)
        {
            if (joined.Count > 0 && (joined[^1].Bar, joined[^1].At) == (moment.Bar, moment.At)) joined[^1].Keys.AddRange(moment.Keys.Where(k => !joined[^1].Keys.Exists(o => o.Number == k.Number)));
            else joined.Add(moment);
        }
        return joined;
    }

    private Dictionary<MidiKey, WheelCurve> Curves(PartTrack track)
    {
        var curves = new Dictionary<MidiKey, WheelCurve>(ReferenceEqualityComparer.Instance);
        foreach (var channel in track.Keys.GroupBy(k => k.Channel))
        {
            if (!track.Wheels.TryGetValue(channel.Key, out var moves)) continue;
            var keys = channel.ToList();
            var severalAtOnce = false;
            for (var i = 0; i < keys.Count; i++)
            {
                if ((i + 1 < keys.Count && keys[i + 1].On < keys[i].Off - 1) || (i > 0 && keys[i - 1].Off > keys[i].On + 1))
                {
                    severalAtOnce = true;
                    continue;
                }
                int? next = i + 1 < keys.Count && keys[i + 1].On - keys[i].Off <= bars.TicksPerQuarter / 32 ? keys[i + 1].Number - keys[i].Number : null;
                if (WheelReader.Read(moves, keys[i], next, tempos.SecondsAt) is { } curve) curves[keys[i]] = curve;
            }
            if (severalAtOnce) remarks.Add(RemarkKind.LeftOut, "Bends of a channel that plays several notes at once are not carried over.", track.Title);
        }
        return curves;
    }

    private List<(MidiMoment, List<LineNote>)> Timed(List<MidiMoment> moments, WrittenRhythm rhythm, bool exactEnds, Dictionary<MidiKey, WheelCurve> curves, Dictionary<MidiKey, ValueBase> tremolos)
    {
        var timed = new List<(MidiMoment, List<LineNote>)>();
        for (var i = 0; i < moments.Count; i++)
        {
            var start = bars.All[moments[i].Bar].Start + moments[i].At;
            var next = i + 1 < moments.Count ? moments[i + 1] : null;
            Beats? nextStart = next is null ? null : bars.All[next.Bar].Start + next.At;
            var notes = moments[i].Keys.ConvertAll(k => new LineNote
            {
                Key = k,
                Start = start,
                End = EndOf(k, start, next, nextStart, rhythm, exactEnds),
                Curve = curves.GetValueOrDefault(k),
                Tremolo = tremolos.TryGetValue(k, out var stroke) ? stroke : null,
            });
            timed.Add((moments[i], notes));
        }
        return timed;
    }

    // A note that is let go a little before or after the next one starts is meant to last until then.
    private Beats EndOf(MidiKey key, Beats start, MidiMoment? nextMoment, Beats? nextStart, WrittenRhythm rhythm, bool exactEnds)
    {
        if (nextMoment is { Tick: var tick } && nextStart is { } next)
        {
            // Grace notes take their time from what is before on their string.
            if (nextMoment.Graces.Count > 0 && nextMoment.Graces[0].Channel == key.Channel && Math.Abs(nextMoment.Graces[0].On - key.Off) <= 2) return next;
            var gap = tick - key.Off;
            var most = Math.Max(bars.TicksPerQuarter / 8, 0.35 * (tick - key.On));
            if (Math.Abs(gap) <= 2) return next;
            if (!exactEnds && ((gap > 0 && gap <= most && gap <= bars.TicksPerQuarter) || (gap < 0 && -gap <= bars.TicksPerQuarter / 6))) return next;
        }
        var (bar, at) = rhythm.Place(key.Off, isStart: false);
        var end = bars.All[bar].Start + at;
        // So is one before a rest that begins with a beat.
        var beat = bars.All[bar].Start + Beats.Min(bars.All[bar].Length, Beats.Of(at.WholeCount(Beats.Quarter) + 1));
        if (!exactEnds && end < beat && (beat - end).ToDouble() <= Math.Min(0.3, 0.35 * (key.Off - key.On) / bars.TicksPerQuarter) && (nextStart is null || nextStart >= beat)) end = beat;
        return end > start ? end : start + rhythm.LeastFrom(bars.PlaceOf(start));
    }

    private void Write(LineEvent item, LineEvent? before, int voice, RawPart part, WrittenRhythm rhythm, PartTrack track)
    {
        var moment = item.Moment;
        var first = new Event { Start = Beats.Zero, Value = default, Roll = moment.Roll, Stroke = moment.Stroke };
        if (item.Notes.Exists(n => n.Curve is { IsArm: true })) first = first with { Spans = Spans.TremoloArm };
        var stops = item.Notes.Select(n => n.End).Append(item.End).Distinct().Order().ToList();
        var (from, isFirst) = (item.Start, true);
        foreach (var stop in stops)
        {
            var sounding = item.Notes.Where(n => n.End > from).ToList();
            for (var bar = moment.Bar; bar < bars.All.Count && from < stop; bar++)
            {
                var (barStart, barEnd) = (bars.All[bar].Start, bars.All[bar].Start + bars.All[bar].Length);
                if (from >= barEnd) continue;
                foreach (var (start, value, tuplet, length) in EventPieces.Of(from - barStart, Beats.Min(stop, barEnd) - barStart, q => rhythm.DivisionOf(bar, q)))
                {
                    var raw = new RawEvent { Start = start, Duration = length, Value = value, Tuplet = tuplet, Voice = voice };
                    if (isFirst)
                    {
                        raw.Marks = first;
                        raw.Notes.AddRange(sounding.Select(n => AsItEnds(Struck(n, item, before, track), n, barStart + start + length)));
                        raw.Graces.AddRange(moment.Graces.Select(g => Bare(g, track)));
                    }
                    else
                    {
                        raw.Marks = first with { Roll = Roll.None, Stroke = Stroke.None };
                        raw.Notes.AddRange(sounding.Select(n => AsItEnds(Held(n, track), n, barStart + start + length)));
                    }
                    part.Bars[bar].Add(raw);
                    isFirst = false;
                }
                from = Beats.Min(stop, barEnd);
            }
        }
    }

    private static RawNote Struck(LineNote note, LineEvent item, LineEvent? before, PartTrack track)
    {
        var made = Bare(note.Key, track);
        var glided = before is not null && before.End == item.Start && before.Notes.Exists(b => b.Curve is { GlidesOn: true } && b.Key.Channel == note.Key.Channel && b.End == item.Start && b.Key.Number != note.Key.Number);
        made.Marks = made.Marks with
        {
            Attack = glided ? Attack.Glide : Attack.Picked,
            IsStaccato = item.IsStaccato,
            LetsRing = note.Rings,
            Tremolo = note.Tremolo,
        };
        note.Curve?.Put(made);
        return made;
    }

    private static RawNote Held(LineNote note, PartTrack track)
    {
        var made = Bare(note.Key, track);
        made.Marks = made.Marks with { Attack = Attack.Held, Tremolo = note.Tremolo, LetsRing = note.Rings };
        return made;
    }

    // A note glides off at the end of its last value.
    private static RawNote AsItEnds(RawNote made, LineNote note, Beats end)
    {
        if (end >= note.End && note.Curve is { } curve) made.Marks = made.Marks with { GlideOut = curve.GlideOut };
        return made;
    }

    private static RawNote Bare(MidiKey key, PartTrack track) => new() { Midi = key.Number, String = track.Neck?.StringOf(key.Channel) };
}
