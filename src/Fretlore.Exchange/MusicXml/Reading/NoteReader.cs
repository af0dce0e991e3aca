using System.Xml.Linq;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.Reports;
using Fretlore.Guitar;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml.Reading;

/// <summary>Reads what a note element says of one note.</summary>
internal sealed class NoteReader(Remarks remarks, string part)
{
    private static readonly HashSet<string> PlainNotations =
        ["tied", "tuplet", "slide", "glissando", "ornaments", "technical", "articulations", "arpeggiate", "slur", "accidental-mark", "dynamics"];

    private static readonly HashSet<string> PlainTechnical =
        ["string", "fret", "hammer-on", "pull-off", "bend", "tap", "harmonic", "fingering", "pluck", "down-bow", "up-bow", "other-technical", "open-string"];

    // By number: whether a note under it is reached without a pick, which is what a slur says in tablature.
    private readonly Dictionary<string, (bool Joins, int Bar)> openSlurs = [];

    /// <summary>The note, with the marks of its event; null when it is no pitch that can be read.</summary>
    /// <param name="element">A note element with a pitch.</param>
    /// <param name="bar">Index of the bar.</param>
    /// <param name="transposed">Semitones from written to sounding.</param>
    /// <param name="marks">The marks of the event so far; changed.</param>
    public RawNote? Read(XElement element, int bar, int transposed, ref Event marks)
    {
        if (XmlWords.Pitch(element.Element("pitch")) is not var (_, midi)) return null;
        var note = new RawNote { Midi = midi + transposed };
        var made = note.Marks;
        if (element.Element("notehead") is { } head)
        {
            made = made with { IsDead = head.Value.Trim() == "x", IsGhost = head.Said("parentheses") == "yes" };
        }
        if (element.Element("play")?.Elements("mute").Any(m => m.Value.Trim() == "palm") == true) made = made with { IsPalmMuted = true };
        foreach (var tie in element.Elements("tie"))
        {
            if (tie.Said("type") == "start") note.StartsTie = true;
            if (tie.Said("type") == "stop") made = made with { Attack = Attack.Held };
        }
        List<XElement> slurs = [];
        foreach (var notations in element.Elements("notations"))
        {
            foreach (var item in notations.Elements())
            {
                made = Notation(item, made, note, bar, ref marks);
                if (item.Name.LocalName == "slur") slurs.Add(item);
            }
        }
        // Whether a slide is picked on arrival is told by the slur over it, which may be written after it.
        if (made.Attack == Attack.Glide && openSlurs.Count == 0 && !slurs.Exists(s => s.Said("type") == "stop")) made = made with { Attack = Attack.PickedGlide };
        TrackSlurs(slurs, made.Attack is not (Attack.Picked or Attack.Held), bar);
        note.Marks = made;
        return note;
    }

    private void TrackSlurs(List<XElement> slurs, bool isJoined, int bar)
    {
        if (isJoined && openSlurs.Count > 0)
        {
            foreach (var number in openSlurs.Keys.ToArray()) openSlurs[number] = openSlurs[number] with { Joins = true };
        }
        foreach (var slur in slurs)
        {
            var number = slur.Said("number") ?? "1";
            if (slur.Said("type") == "start")
            {
                if (openSlurs.TryGetValue(number, out var open)) SayEndless(open.Bar);
                openSlurs[number] = (false, bar);
            }
            else if (slur.Said("type") == "stop" && openSlurs.Remove(number, out var ended) && !ended.Joins) LeaveOut("slur", bar);
        }
    }

    /// <summary>Names what is still open when the part is over.</summary>
    public void EndPart()
    {
        foreach (var (_, bar) in openSlurs.Values) SayEndless(bar);
        openSlurs.Clear();
    }

    private void SayEndless(int bar) => remarks.Add(RemarkKind.LeftOut, "A slur that begins here and never ends is not carried over.", part, bar + 1);

    private Note Notation(XElement item, Note made, RawNote note, int bar, ref Event marks)
    {
        switch (item.Name.LocalName)
        {
            case "tied" when item.Said("type") == "let-ring":
                return made with { LetsRing = true };
            case "tied" when item.Said("type") == "start":
                note.StartsTie = true;
                return made;
            case "tied" when item.Said("type") == "stop" && made.Attack == Attack.Picked:
                return made with { Attack = Attack.Held };
            case "slide" or "glissando" when item.Said("type") == "stop" && made.Attack == Attack.Picked:
                return made with { Attack = Attack.Glide };
            case "arpeggiate":
                if (marks.Roll != Roll.Rake) marks = marks with { Roll = item.Said("direction") == "down" ? Roll.HighToLow : Roll.LowToHigh };
                return made;
            case "fermata":
                marks = marks with { HasFermata = true };
                return made;
            case "ornaments":
                foreach (var ornament in item.Elements()) made = Ornament(ornament, made, bar);
                return made;
            case "technical":
                foreach (var technical in item.Elements()) made = Technical(technical, made, note, bar, ref marks);
                return made;
            case "articulations":
                foreach (var articulation in item.Elements()) made = Articulation(articulation, made, bar);
                return made;
            case "dynamics" when item.Elements().Select(d => XmlWords.Dynamic(d.Name.LocalName)).FirstOrDefault(d => d is not null) is { } dynamic:
                marks = marks with { Dynamic = dynamic };
                return made;
            case var name when !PlainNotations.Contains(name):
                LeaveOut(name, bar);
                return made;
            default:
                return made;
        }
    }

    private Note Ornament(XElement item, Note made, int bar)
    {
        switch (item.Name.LocalName)
        {
            case "wavy-line":
                return made.Vibrato.Width == VibratoWidth.None && item.Said("type") != "stop" ? made with { Vibrato = new Vibrato(VibratoWidth.Normal, int.MaxValue) } : made;
            case "other-ornament" when item.Value.Trim() == "wide vibrato":
                return made with { Vibrato = made.Vibrato with { Width = VibratoWidth.Wide } };
            case "other-ornament" when item.Value.Trim().StartsWith(Vibratos.AfterMove, StringComparison.Ordinal) && XmlWords.Whole(item.Value.Trim()[Vibratos.AfterMove.Length..]) is { } moves:
                return made with { Vibrato = made.Vibrato with { AfterMoves = Math.Max(0, moves) } };
            // The other fret is said in words of our own, or found once the note has a place.
            case "trill-mark":
                return made.Trill is null ? made with { Trill = PlayedNote.UnknownTrill } : made;
            case "tremolo" when item.Said("type") is null or "single":
                var strokes = Math.Clamp(XmlWords.Whole(item.Value.Trim()) ?? 3, 1, 5);
                return made with { Tremolo = Tremolos.Of(strokes) };
            case var name:
                LeaveOut(name, bar);
                return made;
        }
    }

    private Note Articulation(XElement item, Note made, int bar)
    {
        switch (item.Name.LocalName)
        {
            case "accent" or "strong-accent":
                return made with { IsAccented = true };
            case "staccato" or "staccatissimo":
                return made with { IsStaccato = true };
            case "scoop":
                return made with { GlideIn = GlideIn.FromBelow };
            case "plop":
                return made with { GlideIn = GlideIn.FromAbove };
            case "doit":
                return made with { GlideOut = GlideOut.Upwards };
            case "falloff":
                return made with { GlideOut = GlideOut.Downwards };
            case var name:
                LeaveOut(name, bar);
                return made;
        }
    }

    private Note Technical(XElement item, Note made, RawNote note, int bar, ref Event marks)
    {
        var value = item.Value.Trim();
        switch (item.Name.LocalName)
        {
            case "string":
                note.String = XmlWords.Whole(value);
                return made;
            case "fret":
                note.Fret = XmlWords.Whole(value);
                return made;
            case "hammer-on" or "pull-off" when item.Said("type") == "stop" && made.Attack != Attack.Held:
                return made with { Attack = item.Name.LocalName == "hammer-on" ? Attack.HammerOn : Attack.PullOff };
            case "tap":
                return made with { Attack = item.Said("hand") == "left" ? Attack.HammerFromNowhere : Attack.Tap };
            case "bend" when item.Text("with-bar") == "dip" && XmlWords.Number(item.Text("bend-alter")) is < 0 and >= -12 and var dip:
                return made with { DipCents = (int)Math.Round(-dip * 100) };
            case "bend":
                ReadBend(item, note);
                return made;
            case "harmonic":
                return made with { Harmonic = HarmonicOf(item, made.Harmonic) };
            case "other-technical" when value == OwnWords.Rake:
                marks = marks with { Roll = Roll.Rake };
                return made;
            case "other-technical":
                return OtherTechnical(value, made, bar);
            case "fingering" when item.Said("substitution") != "yes" && item.Said("alternate") != "yes":
                return XmlWords.Finger(value) is { } finger ? made with { Finger = finger } : made;
            case "pluck":
                if (value is "p" or "i" or "m" or "a" or "c") marks = marks with { PickingFinger = value[0] };
                return made;
            case "down-bow" or "up-bow":
                marks = marks with { Stroke = item.Name.LocalName == "up-bow" ? Stroke.Up : Stroke.Down };
                return made;
            case var name when !PlainTechnical.Contains(name):
                LeaveOut(name, bar);
                return made;
            default:
                return made;
        }
    }

    /// <summary>The stroke of a rest: a stroke in the air.</summary>
    public static Stroke StrokeOf(XElement rest) => rest.Elements("notations").Elements("technical").Elements().Select(e => e.Name.LocalName switch
    {
        "down-bow" => Stroke.Down,
        "up-bow" => Stroke.Up,
        _ => Stroke.None,
    }).FirstOrDefault(s => s != Stroke.None);

    private static void ReadBend(XElement item, RawNote note)
    {
        if (XmlWords.Number(item.Text("bend-alter")) is not { } alter || Math.Abs(alter) > 12) return;
        var cents = (int)Math.Round(alter * 100);
        if (item.Element("release") is not null) cents = -Math.Abs(cents);
        // A string is bent up before it is struck, whatever sign a file gives that.
        if (item.Element("pre-bend") is not null) cents = Math.Abs(cents);
        note.Bends.Add((cents, item.Element("pre-bend") is not null));
    }

    private static Harmonic HarmonicOf(XElement item, Harmonic? before)
    {
        if (before is { Kind: HarmonicKind.Touched or HarmonicKind.Pinch }) return before;
        var kind = item.Element("artificial") is null ? HarmonicKind.Natural : item.Element("base-pitch") is null ? HarmonicKind.Touched : HarmonicKind.Pinch;
        return new Harmonic(kind, Fret.Open);
    }

    private Note OtherTechnical(string value, Note made, int bar)
    {
        const string Touched = "touched at fret ";
        if (value == "pinch harmonic") return made with { Harmonic = new Harmonic(HarmonicKind.Pinch, Fret.Open) };
        if (value.StartsWith(Touched, StringComparison.Ordinal) && XmlWords.Whole(value[Touched.Length..]) is >= 0 and <= 60 and var fret)
            return made with { Harmonic = new Harmonic(HarmonicKind.Touched, new Fret(fret)) };
        if (value.StartsWith(OwnWords.Trill, StringComparison.Ordinal) && XmlWords.Whole(value[OwnWords.Trill.Length..]) is >= 0 and <= 60 and var other)
            return made with { Trill = new Fret(other) };
        if (value.Length > 0) LeaveOut($"“{value}”", bar);
        return made;
    }

    private void LeaveOut(string what, int bar) => remarks.Add(RemarkKind.LeftOut, $"The sign {what} is not carried over.", part, bar + 1);
}
