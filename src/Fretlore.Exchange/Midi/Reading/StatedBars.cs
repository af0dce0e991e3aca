using System.Globalization;
using System.Text.RegularExpressions;
using Fretlore.Exchange.Import;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>Writes a part as its track states it in <see cref="BarWords"/>, with the pitches of its keys.</summary>
/// <remarks>Words are believed only as far as they fit: where they and the keys do not come out even, or sound otherwise, what sounds counts.</remarks>
internal sealed partial class StatedBars
{
    private const int MostBytesOfABar = 20_000;

    // How far ahead among the keys of a channel one is looked for.
    private const int FarthestKey = 64;

    private readonly Dictionary<int, LinkedList<MidiKey>> keys;
    private readonly StatedNeck neck;
    private readonly Dictionary<int, (RawNote Note, WheelCurve? Curve)> sounding = [];
    private readonly Dictionary<MidiKey, WheelCurve> curves;

    private StatedBars(PartTrack track, Dictionary<MidiKey, WheelCurve> curves)
    {
        neck = track.Neck!;
        keys = track.Keys.GroupBy(k => k.Channel).ToDictionary(g => g.Key, g => new LinkedList<MidiKey>(g));
        this.curves = curves;
    }

    private sealed record StatedNote(int String, int? Key, bool IsHeld, Attack Attack, bool IsStaccato, bool Rings, ValueBase? Tremolo, Fret? Trill, int Keys);

    private sealed record StatedEvent(int Bar, RawEvent Raw, List<StatedNote> Graces, List<StatedNote> Notes);

    /// <summary>Writes the part's bars; false when the words do not fit the keys. What has been written then is of no use.</summary>
    public static bool Write(PartTrack track, MidiBars bars, Dictionary<MidiKey, WheelCurve> curves, RawPart part)
    {
        var events = new List<StatedEvent>();
        foreach (var (tick, words) in track.Neck!.Bars)
        {
            var (bar, at) = bars.Place(tick);
            if (at > ExactGrid.Tolerance(bars.TicksPerQuarter) || !Parse(words, bar, events)) return false;
        }
        var made = new StatedBars(track, curves);
        foreach (var item in events.OrderBy(e => e.Bar).ThenBy(e => e.Raw.Start))
        {
            if (!made.Fill(item)) return false;
            part.Bars[item.Bar].Add(item.Raw);
        }
        foreach (var number in made.sounding.Keys) made.End(number);
        return made.keys.Values.All(q => q.Count == 0);
    }

    /// <summary>True when a part sounds as its track does: the same keys at the same ticks.</summary>
    public static bool SoundsAs(PerformedPart part, PartTrack track, double ticksPerQuarter)
    {
        var heard = part.Notes.Select(n => (Number: Math.Clamp(n.Height.Midi, 0, 127), Tick: (long)Math.Round(n.Onset.ToDouble() * ticksPerQuarter))).Distinct().Order().ToList();
        var stated = track.Keys.Select(k => (k.Number, Tick: k.On)).Distinct().Order().ToList();
        return heard.Count == stated.Count && heard.Zip(stated).All(p => p.First.Number == p.Second.Number && Math.Abs(p.First.Tick - p.Second.Tick) <= 1);
    }

    private bool Fill(StatedEvent item)
    {
        foreach (var grace in item.Graces)
        {
            if (Make(grace, item.Raw) is not { } note) return false;
            item.Raw.Graces.Add(note);
        }
        foreach (var stated in item.Notes)
        {
            if (Make(stated, item.Raw) is not { } note) return false;
            item.Raw.Notes.Add(note);
        }
        return true;
    }

    private RawNote? Make(StatedNote stated, RawEvent item)
    {
        var marks = new RawNote { Midi = 0 }.Marks with { Attack = stated.Attack, IsStaccato = stated.IsStaccato, LetsRing = stated.Rings, Tremolo = stated.Tremolo, Trill = stated.Trill };
        if (stated.IsHeld)
        {
            if (!sounding.TryGetValue(stated.String, out var before)) return null;
            var held = new RawNote { Midi = before.Note.Midi, String = stated.String, Marks = marks with { Attack = Attack.Held } };
            sounding[stated.String] = (held, before.Curve);
            return held;
        }
        if (stated.String < 1 || stated.String > neck.Channels.Count || !keys.TryGetValue(neck.Channels[stated.String - 1], out var queue)) return null;
        // A key that another string of its channel presses too.
        if (stated is { Keys: 0, Key: <= 127 and { } number }) return Sounding(new RawNote { Midi = number, String = stated.String, Marks = marks }, null);
        if (stated.Keys < 1 || queue.Count < stated.Keys || Next(queue, stated.Key) is not { } first) return null;
        var rest = first.Next;
        queue.Remove(first);
        for (var i = 1; i < stated.Keys; i++)
        {
            if (rest is null) return null;
            (var used, rest) = (rest, rest.Next);
            queue.Remove(used);
        }
        var curve = curves.GetValueOrDefault(first.Value);
        var note = new RawNote { Midi = first.Value.Number, String = stated.String, Marks = marks };
        curve?.Put(note);
        if (curve is { IsArm: true }) item.Marks = item.Marks with { Spans = item.Marks.Spans | Spans.TremoloArm };
        return Sounding(note, curve);
    }

    private RawNote Sounding(RawNote note, WheelCurve? curve)
    {
        End(note.String!.Value);
        sounding[note.String.Value] = (note, curve);
        return note;
    }

    // The first key, or the first of its number.
    private static LinkedListNode<MidiKey>? Next(LinkedList<MidiKey> queue, int? number)
    {
        var node = queue.First;
        for (var i = 0; node is not null && number is not null && node.Value.Number != number; i++) node = i < FarthestKey ? node.Next : null;
        return node;
    }

    // A note glides off at the end of its last value.
    private void End(int number)
    {
        if (sounding.TryGetValue(number, out var last) && last.Curve is { } curve) last.Note.Marks = last.Note.Marks with { GlideOut = curve.GlideOut };
    }

    private static bool Parse(string words, int bar, List<StatedEvent> events)
    {
        if (words.Length > MostBytesOfABar) return false;
        var (voice, at) = (0, Beats.Zero);
        foreach (var word in words.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (LineStart().Match(word) is { Success: true } line)
            {
                if (Number(line, 3) is not (> 0 and var under)) return false;
                (voice, at) = (Number(line, 1), Beats.Of(Number(line, 2), under));
                continue;
            }
            if (EventWord().Match(word) is not { Success: true } found || voice == 0 || ValueOf(Number(found, 1)) is not { } value) return false;
            if (value == ValueBase.SixtyFourth && found.Groups[2].Length > 0) return false;
            var written = new NoteValue(value, found.Groups[2].Length);
            Tuplet? tuplet = null;
            if (found.Groups[3].Success)
            {
                if (Number(found, 3) is not (> 1 and <= 32 and var count) || Number(found, 4) is not (> 0 and <= 32 and var inTimeOf) || ValueOf(Number(found, 5)) is not { } unit) return false;
                if (count == inTimeOf || inTimeOf > 4 * count || count > 4 * inTimeOf) return false;
                tuplet = new Tuplet(count, inTimeOf, unit);
            }
            var raw = new RawEvent { Start = at, Duration = tuplet is { } t ? written.Length * t.Factor : written.Length, Value = written, Tuplet = tuplet, Voice = voice };
            raw.Marks = raw.Marks with
            {
                Roll = found.Groups[6].Value switch { "<" => Roll.LowToHigh, ">" => Roll.HighToLow, "%" => Roll.Rake, _ => Roll.None },
                Stroke = found.Groups[7].Value switch { "d" => Stroke.Down, "u" => Stroke.Up, _ => Stroke.None },
            };
            var item = new StatedEvent(bar, raw, [], []);
            foreach (Match note in NoteWord().Matches(found.Groups[8].Value)) (note.Groups[1].Value == "^" ? item.Graces : item.Notes).Add(NoteOf(note));
            events.Add(item);
            at += raw.Duration;
        }
        return true;
    }

    private static StatedNote NoteOf(Match note) => new(
        Number(note, 2), note.Groups[3].Success ? Number(note, 3) : null, note.Groups[4].Length > 0,
        note.Groups[5].Value switch { "~" => Attack.Glide, "-" => Attack.PickedGlide, _ => Attack.Picked },
        note.Groups[6].Length > 0, note.Groups[7].Length > 0, note.Groups[8].Success ? ValueOf(Number(note, 8)) : null,
        note.Groups[9].Success ? new Fret(Math.Min(60, Number(note, 9))) : null, note.Groups[10].Success ? Number(note, 10) : 1);

    private static ValueBase? ValueOf(int number) => Enum.IsDefined((ValueBase)number) ? (ValueBase)number : null;

    private static int Number(Match match, int group) => int.Parse(match.Groups[group].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^\|([1-4])@([0-9]{1,4})/([0-9]{1,4})$", RegexOptions.CultureInvariant)]
    private static partial Regex LineStart();

    [GeneratedRegex(@"^([0-9]{1,2})(\.{0,2})(?::([0-9]{1,2}):([0-9]{1,2}):([0-9]{1,2}))?([<>%]?)([du]?)((?:[/^][0-9]{1,2}(?:k[0-9]{1,3})?=?[~-]?s?r?(?:\*[0-9]{1,2})?(?:![0-9]{1,2})?(?:x[0-9]{1,4})?)*)$", RegexOptions.CultureInvariant)]
    private static partial Regex EventWord();

    [GeneratedRegex(@"([/^])([0-9]{1,2})(?:k([0-9]{1,3}))?(=?)([~-]?)(s?)(r?)(?:\*([0-9]{1,2}))?(?:!([0-9]{1,2}))?(?:x([0-9]{1,4}))?", RegexOptions.CultureInvariant)]
    private static partial Regex NoteWord();
}
