using System.Globalization;
using System.Xml.Linq;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.Reports;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml.Reading;

/// <summary>Words, dynamics and chord symbols that wait for the event they stand at.</summary>
/// <param name="At">From the start of the bar.</param>
/// <param name="Voice">The voice it is for, or null.</param>
/// <param name="Put">Puts it on an event.</param>
/// <param name="What">What it is, for a remark.</param>
/// <param name="Stretch">A way of playing for the notes at this moment, as <see cref="Stretches"/> has it; or null.</param>
internal sealed record Waiting(Beats At, int? Voice, Func<Event, Event> Put, string What, string? Stretch = null);

/// <summary>What one measure of one part holds.</summary>
internal sealed class MeasureMusic
{
    public List<RawEvent> Events { get; } = [];

    public List<Waiting> Waiting { get; } = [];

    public List<TempoMark> Tempos { get; } = [];

    public Feel? Feel { get; set; }

    public bool IsSegno { get; set; }

    public bool IsCoda { get; set; }

    public Jump Jump { get; set; }

    public string? Section { get; set; }

    /// <summary>How far the measure reaches.</summary>
    public Beats Length { get; set; }

    public Meter? Meter { get; set; }

    public (bool IsStated, Key? Key) Key { get; set; }
}

/// <summary>Reads the measures of one part one after another.</summary>
internal sealed class MeasureReader(Remarks remarks, string part, PartFacts facts)
{
    private readonly NoteReader notes = new(remarks, part);
    private readonly AttributesReader attributes = new(remarks, part, facts);
    private readonly Dictionary<string, Spans> openSpans = [];
    private readonly Dictionary<string, string> openStretches = [];
    private int noteCount;
    private Beats time;
    private Beats lastStart;
    private RawEvent? last;
    private List<RawNote> graces = [];
    private MeasureMusic made = new();
    private int bar;

    public MeasureMusic Read(IReadOnlyCollection<XElement> items, int index)
    {
        (made, bar, time, lastStart, last) = (new MeasureMusic(), index, Beats.Zero, Beats.Zero, null);
        attributes.SaidCapo = facts.IsOwn ? items.Where(i => i.Name.LocalName == "direction").Elements("direction-type").Elements("words").Select(CapoOf).FirstOrDefault(c => c is not null) : null;
        foreach (var item in items)
        {
            switch (item.Name.LocalName)
            {
                case "attributes":
                    attributes.Read(item, made, bar);
                    break;
                case "note":
                    ReadNote(item);
                    break;
                case "backup":
                    time = Beats.Max(Beats.Zero, time - (item.Duration(attributes.Divisions) ?? Beats.Zero));
                    last = null;
                    break;
                case "forward":
                    time += item.Duration(attributes.Divisions) ?? Beats.Zero;
                    Reach(time);
                    last = null;
                    break;
                case "direction":
                    ReadDirection(item);
                    break;
                case "sound":
                    ReadJump(item, item);
                    ReadSound(item, time);
                    break;
                case "harmony":
                    ReadHarmony(item);
                    break;
                case "figured-bass":
                    remarks.Add(RemarkKind.LeftOut, "Figured bass is not carried over.", part, bar + 1);
                    break;
            }
        }
        if (graces.Count > 0)
        {
            remarks.Add(RemarkKind.LeftOut, "Grace notes after the last note of a bar are not carried over.", part, bar + 1);
            graces = [];
        }
        if (attributes.Again > 0) facts.Again[index] = attributes.Again;
        return made;
    }

    /// <summary>Names what the last measure leaves open.</summary>
    public void EndPart() => notes.EndPart();

    private void Reach(Beats at)
    {
        if (at > Beats.Of(4096)) throw new RefusedFileException("A bar of the file is longer than any music's.", "Export it again from the program it comes from.");
        made.Length = Beats.Max(made.Length, at);
    }

    private void ReadNote(XElement item)
    {
        if (++noteCount > ImportLimits.MostNotes) throw new RefusedFileException("The file has more notes than are taken.", "Split the score and import its pieces.");
        if (item.Element("lyric") is not null) facts.Lyrics++;
        if (item.Element("cue") is not null)
        {
            remarks.Add(RemarkKind.LeftOut, "Cue notes are not carried over.", part, bar + 1);
            Advance(item);
            return;
        }
        var isChord = item.Element("chord") is not null && (last is not null || graces.Count > 0 || item.Element("grace") is not null);
        var marks = isChord && last is not null ? last.Marks : new Event { Start = Beats.Zero, Value = default };
        RawNote? note = null;
        if (item.Element("rest") is null)
        {
            note = notes.Read(item, bar, attributes.Transposed, ref marks);
            if (note is not null && attributes.Capo.IsPartial) Write(note, attributes.Capo);
            facts.HasUnpitched |= note is null;
            if (note is null) remarks.Add(RemarkKind.LeftOut, "Notes without a pitch, such as drums, are not carried over.", part, bar + 1);
        }
        if (item.Element("grace") is not null)
        {
            if (note is not null) graces.Add(WithStretches(note, VoiceOf(item)));
            return;
        }
        if (isChord && last is not null)
        {
            if (note is not null) last.Notes.Add(WithStretches(note, last.Voice));
            last.Marks = marks;
            return;
        }
        Start(item, note, marks);
    }

    // Under a partial capo the file's frets count from the open string, and a sheet's from the nut.
    private static void Write(RawNote note, Capo capo)
    {
        if (note.String is not { } number) return;
        var at = new StringNumber(number);
        if (note.Fret is >= 0 and <= 60 and var fret) note.Fret = capo.Written(at, fret).Number;
        var marks = note.Marks;
        if (marks.Trill is { } trill && trill != PlayedNote.UnknownTrill) marks = marks with { Trill = capo.Written(at, trill.Number) };
        if (marks.Harmonic is { Kind: HarmonicKind.Touched } touched) marks = marks with { Harmonic = touched with { TouchedAt = capo.Written(at, touched.TouchedAt.Number) } };
        note.Marks = marks;
    }

    private static Capo? CapoOf(XElement words) => PartialCapo.Read(XmlWords.Line(words.Value));

    private void Start(XElement item, RawNote? note, Event marks)
    {
        var duration = item.Duration(attributes.Divisions) ?? Beats.Zero;
        lastStart = time;
        if (duration.IsZero) return;
        var (value, tuplet) = ValueOf(item);
        var made = new RawEvent
        {
            Start = time,
            Duration = duration,
            Value = value,
            Tuplet = tuplet,
            Voice = VoiceOf(item),
            Staff = item.Whole("staff") ?? 1,
        };
        if (note is null && item.Element("rest") is not null) marks = marks with { Stroke = NoteReader.StrokeOf(item), HasFermata = item.Elements("notations").Elements("fermata").Any() };
        made.Marks = marks with { Spans = SpansOf(made.Voice) };
        if (note is not null) made.Notes.Add(WithStretches(note, made.Voice));
        if (note is not null)
        {
            made.Graces.AddRange(graces);
            graces = [];
        }
        this.made.Events.Add(made);
        if (item.Element("rest")?.Said("measure") == "yes") facts.BarRests.Add(made);
        last = made;
        time += duration;
        Reach(time);
    }

    private void Advance(XElement item)
    {
        if (item.Element("chord") is not null || item.Element("grace") is not null) return;
        time += item.Duration(attributes.Divisions) ?? Beats.Zero;
        Reach(time);
        last = null;
    }

    private static int VoiceOf(XElement item) => Math.Clamp(item.Whole("voice") ?? 1, 1, 1000);

    private static (NoteValue?, Tuplet?) ValueOf(XElement item)
    {
        if (XmlWords.Value(item.Text("type")) is not { } value) return (null, null);
        var written = new NoteValue(value, Math.Min(2, item.Elements("dot").Count()));
        if (item.Element("time-modification") is not { } change) return (written, null);
        if (change.Whole("actual-notes") is not (>= 2 and <= 32 and var actual) || change.Whole("normal-notes") is not (>= 1 and <= 32 and var normal)) return (null, null);
        if (actual == normal || normal > 4 * actual || actual > 4 * normal) return (null, null);
        var unit = XmlWords.Value(change.Text("normal-type")) ?? value;
        return (written, new Tuplet(actual, normal, unit < value ? value : unit));
    }

    private RawNote WithStretches(RawNote note, int voice)
    {
        if (openStretches.Count == 0) return note;
        if (openStretches.ContainsValue(Key("ring", voice))) note.Marks = note.Marks with { LetsRing = true };
        if (!facts.SaysPalmMutes && openStretches.ContainsValue(Key("palm", voice))) note.Marks = note.Marks with { IsPalmMuted = true };
        return note;
    }

    private Spans SpansOf(int voice)
    {
        var spans = Spans.None;
        if (openSpans.Count == 0 && openStretches.Count == 0) return spans;
        var end = Key("", voice);
        foreach (var (key, span) in openSpans)
        {
            if (key.EndsWith(end, StringComparison.Ordinal)) spans |= span;
        }
        if (openStretches.ContainsValue(Key("arm", voice))) spans |= Spans.TremoloArm;
        if (openStretches.ContainsValue(Key("wah", voice))) spans |= Spans.Wah;
        return spans;
    }

    private static string Key(string what, int voice) => string.Create(CultureInfo.InvariantCulture, $"{what}/{voice}");

    private void ReadDirection(XElement item)
    {
        var at = Beats.Max(Beats.Zero, time + (XmlWords.Number(item.Text("offset")) is { } offset ? Beats.Of((long)Math.Round(offset * 10_000), 10_000 * attributes.Divisions) : Beats.Zero));
        var voice = item.Whole("voice");
        var hasTempo = item.Elements("direction-type").Elements("metronome").Select(MetronomeOf).FirstOrDefault(t => t is not null);
        var sound = item.Element("sound");
        var swings = sound?.Element("swing") is not null;
        var jumps = ReadJump(item, sound);
        var stretch = item.Elements("direction-type").Elements("words").Select(w => Stretches.Of(w.Value)).FirstOrDefault(s => s is not null);
        foreach (var type in item.Elements("direction-type").Elements())
        {
            switch (type.Name.LocalName)
            {
                case "rehearsal" when type.Value.Trim().Length > 0:
                    made.Section ??= XmlWords.Line(type.Value);
                    break;
                case "words" when attributes.SaidCapo is not null && CapoOf(type) is not null:
                    break;
                case "words" when stretch is null && !swings && !jumps && type.Value.Trim().Length > 0:
                    var words = XmlWords.Line(type.Value);
                    made.Waiting.Add(new Waiting(at, voice, e => e with { Words = e.Words is { } before ? before + " " + words : words }, $"The words “{words}”"));
                    break;
                case "dynamics":
                    ReadDynamics(type, at, voice);
                    break;
                case "wedge":
                    ReadWedge(type, voice ?? 1);
                    break;
                case "dashes" when type.Said("type") == "start" && stretch is { } kind:
                    openStretches[type.Said("number") ?? "1"] = Key(kind, voice ?? 1);
                    break;
                case "dashes" when type.Said("type") == "stop":
                    openStretches.Remove(type.Said("number") ?? "1");
                    break;
                case "words" when stretch is { } single && !item.Elements("direction-type").Elements("dashes").Any():
                    made.Waiting.Add(new Waiting(at, voice ?? 1, e => e, single, single));
                    break;
                case "segno":
                    made.IsSegno = true;
                    break;
                case "coda" when sound?.Said("tocoda") is null:
                    made.IsCoda = true;
                    break;
                case "coda":
                    break;
                case "pedal" or "octave-shift" or "scordatura" or "percussion":
                    remarks.Add(RemarkKind.LeftOut, $"The sign {type.Name.LocalName} is not carried over.", part, bar + 1);
                    break;
            }
        }
        if (hasTempo is { } tempo) AddTempo(at, tempo);
        if (sound is not null) ReadSound(sound, at, hasTempo is not null);
    }

    // What a jump ends at stands in its words.
    private bool ReadJump(XElement direction, XElement? sound)
    {
        if (sound is null) return false;
        var words = string.Join(' ', direction.Elements("direction-type").Elements("words").Select(w => w.Value));
        foreach (var attribute in (ReadOnlySpan<string>)["dacapo", "dalsegno", "tocoda", "fine"])
        {
            if (sound.Said(attribute) is null || JumpNames.Read(attribute, words) is not { } jump) continue;
            if (made.Jump == Jump.None) made.Jump = jump;
            return true;
        }
        return false;
    }

    private void ReadDynamics(XElement type, Beats at, int? voice)
    {
        foreach (var sign in type.Elements())
        {
            if (XmlWords.Dynamic(sign.Name.LocalName) is { } dynamic)
                made.Waiting.Add(new Waiting(at, voice, e => e with { Dynamic = dynamic }, "A dynamic"));
            else remarks.Add(RemarkKind.LeftOut, $"The dynamic {sign.Name.LocalName} is not carried over.", part, bar + 1);
        }
    }

    private void ReadWedge(XElement type, int voice)
    {
        var number = type.Said("number") ?? "1";
        foreach (var open in openSpans.Keys.Where(k => k.StartsWith(number + "/", StringComparison.Ordinal)).ToList()) openSpans.Remove(open);
        if (type.Said("type") is "crescendo" or "diminuendo") openSpans[Key(number, voice)] = type.Said("type") == "crescendo" ? Spans.Crescendo : Spans.Diminuendo;
    }

    private void ReadSound(XElement sound, Beats at, bool hasTempo = false)
    {
        if (!hasTempo && XmlWords.Number(sound.Said("tempo")) is > 0 and <= 2000 and var perMinute)
            AddTempo(at, new Tempo(new NoteValue(ValueBase.Quarter), Rounded(perMinute)));
        if (sound.Element("swing") is not { } swing) return;
        if (swing.Element("straight") is not null) made.Feel = Feel.Straight;
        else made.Feel = new Feel(XmlWords.Value(swing.Text("swing-type")) == ValueBase.Sixteenth ? ValueBase.Sixteenth : ValueBase.Eighth);
    }

    private static decimal Rounded(double number) => Math.Clamp(Math.Round((decimal)number, 4), 5m, 1000m);

    private static Tempo? MetronomeOf(XElement item)
    {
        if (XmlWords.Value(item.Text("beat-unit")) is not { } unit) return null;
        var digits = new string([.. (item.Text("per-minute") ?? "").SkipWhile(c => !char.IsAsciiDigit(c)).TakeWhile(c => char.IsAsciiDigit(c) || c == '.')]);
        if (XmlWords.Number(digits) is not (> 0 and <= 2000 and var perMinute)) return null;
        return new Tempo(new NoteValue(unit, Math.Min(2, item.Elements("beat-unit-dot").Count())), Rounded(perMinute));
    }

    private void AddTempo(Beats at, Tempo tempo)
    {
        made.Tempos.RemoveAll(t => t.At == at);
        made.Tempos.Add(new TempoMark(at, tempo));
    }

    private void ReadHarmony(XElement item)
    {
        var symbol = ChordSymbols.Of(item);
        var at = Beats.Max(Beats.Zero, time + (XmlWords.Number(item.Text("offset")) is { } offset ? Beats.Of((long)Math.Round(offset * 10_000), 10_000 * attributes.Divisions) : Beats.Zero));
        foreach (var frame in item.Elements("frame"))
        {
            if (FrameReader.Of(frame, facts.IsOwn, symbol, (bar, at)) is { } shape) facts.Shapes.Add(shape.Under(attributes.Capo));
            else remarks.Add(RemarkKind.LeftOut, "A chord diagram that no neck can have is not carried over.", part, bar + 1);
        }
        // Our own files tell the chords that the notes make from those that the sheet states.
        if (facts.IsOwn && item.Said("type") != "alternate") return;
        if (symbol is null) return;
        made.Waiting.Add(new Waiting(at, null, e => e with { ChordSymbol = symbol }, $"The chord symbol {symbol}"));
    }
}
