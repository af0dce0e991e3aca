using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>The notations of a note: how it is tied, joined, grouped and played.</summary>
/// <remarks>
/// What joins two notes of a string has the string's number, so that two strings can be joined at once. Glides from and to no fixed fret are the
/// standard's scoop, plop, doit and falloff; a hammer-on from nowhere is a tap of the fretting hand.
/// </remarks>
internal sealed class NotationsWriter(XmlOutput xml, Joins joins)
{
    public void Write(Note note, bool isFirst, NotePlace place) => xml.Element("notations", () =>
    {
        WriteTies(note);
        WriteSlur(note);
        if (isFirst) WriteTuplet(place);
        WriteSlides(note);
        WriteOrnaments(note, place.Event);
        WriteTechnical(note, isFirst, place.Event, place.Capo);
        WriteArticulations(note);
        if (isFirst && place.Event.HasFermata) xml.Empty("fermata", ("type", "upright"));
        if (place.Event.Roll != Roll.None) xml.Empty("arpeggiate", ("direction", place.Event.Roll == Roll.HighToLow ? "down" : "up"));
    });

    public void WriteGrace(Note note, NotePlace place) => xml.Element("notations", () =>
    {
        WriteSlur(note);
        WriteSlides(note);
        WriteTechnical(note, false, null, place.Capo);
        WriteArticulations(note);
    });

    public void WriteRest(NotePlace place)
    {
        if (!place.Tuplet.Starts && !place.Tuplet.Stops && place.Event.Stroke == Stroke.None && !place.Event.HasFermata) return;
        xml.Element("notations", () =>
        {
            WriteTuplet(place);
            if (place.Event.Stroke != Stroke.None) xml.Element("technical", () => WriteStroke(place.Event.Stroke));
            if (place.Event.HasFermata) xml.Empty("fermata", ("type", "upright"));
        });
    }

    private void WriteTies(Note note)
    {
        if (note.IsTiedFromBefore && joins.Arrives(note)) xml.Empty("tied", ("type", "stop"));
        if (joins.Departs(note, Attack.Held)) xml.Empty("tied", ("type", "start"));
        else if (note.LetsRing) xml.Empty("tied", ("type", "let-ring"));
    }

    private void WriteSlur(Note note)
    {
        var (arrives, departs) = (joins.ArrivesLegato(note), joins.DepartsLegato(note));
        if (arrives && !departs) xml.Empty("slur", ("type", "stop"), ("number", NumberOf(note)));
        if (departs && !arrives) xml.Empty("slur", ("type", "start"), ("number", NumberOf(note)));
    }

    private void WriteTuplet(NotePlace place)
    {
        if (place.Tuplet.Starts) xml.Empty("tuplet", ("type", "start"), ("number", "1"), ("bracket", "yes"));
        if (place.Tuplet.Stops) xml.Empty("tuplet", ("type", "stop"), ("number", "1"));
    }

    private void WriteSlides(Note note)
    {
        if (note.Attack is Attack.Glide or Attack.PickedGlide && joins.Arrives(note)) xml.Empty("slide", ("type", "stop"), ("number", NumberOf(note)));
        if (joins.Departs(note, Attack.Glide) || joins.Departs(note, Attack.PickedGlide))
            xml.Empty("slide", ("type", "start"), ("number", NumberOf(note)), ("line-type", "solid"));
    }

    private void WriteOrnaments(Note note, Event item)
    {
        var tremolo = note.Tremolo ?? (item.Spans.HasFlag(Spans.TremoloPicking) ? ValueBase.ThirtySecond : null);
        if (tremolo is null && note.Vibrato.Width == VibratoWidth.None && note.Trill is null) return;
        xml.Element("ornaments", () =>
        {
            if (note.Trill is not null) xml.Empty("trill-mark");
            if (note.Vibrato.Width != VibratoWidth.None)
            {
                xml.Empty("wavy-line", ("type", "start"), ("number", NumberOf(note)));
                xml.Empty("wavy-line", ("type", "stop"), ("number", NumberOf(note)));
                if (note.Vibrato.Width == VibratoWidth.Wide) xml.Text("other-ornament", "wide vibrato");
                if (note.Bend is { } bend && note.Vibrato.AfterMoves < bend.ToCents.Count)
                    xml.Text("other-ornament", Vibratos.AfterMove + XmlOutput.Digits(note.Vibrato.AfterMoves));
            }
            // Beams or flags of the note count as strokes too.
            if (tremolo is { } stroke)
                xml.Text("tremolo", XmlOutput.Digits(Math.Max(1, Beaming.CountOf(stroke) - Beaming.CountOf(item.Value.Base))), ("type", "single"));
        });
    }

    private void WriteTechnical(Note note, bool isFirst, Event? item, Capo capo) => xml.Element("technical", () =>
    {
        if (isFirst && item is not null) WriteStroke(item.Stroke);
        WriteHarmonic(note, capo);
        if (note.Trill is { } trill) xml.Text("other-technical", OwnWords.Trill + XmlOutput.Digits(capo.AboveOpen(note.String, trill)));
        if (isFirst && item?.Roll == Roll.Rake) xml.Text("other-technical", OwnWords.Rake);
        if (note.Finger is { } finger) xml.Text("fingering", Names.FingerOf(finger));
        if (isFirst && item?.PickingFinger is { } plucking) xml.Text("pluck", plucking.ToString());
        xml.Number("string", note.String.Value);
        xml.Number("fret", capo.AboveOpen(note.String, note.Fret));
        WriteLegato(note, Attack.HammerOn, "hammer-on", "H");
        WriteLegato(note, Attack.PullOff, "pull-off", "P");
        WriteBend(note);
        if (note.DipCents > 0) WriteDip(note.DipCents);
        if (note.Attack == Attack.Tap) xml.Text("tap", "T", ("hand", "right"));
        if (note.Attack == Attack.HammerFromNowhere) xml.Text("tap", "H", ("hand", "left"));
    });

    private void WriteStroke(Stroke stroke)
    {
        if (stroke == Stroke.Down) xml.Empty("down-bow");
        if (stroke == Stroke.Up) xml.Empty("up-bow");
    }

    private void WriteHarmonic(Note note, Capo capo)
    {
        if (note.Harmonic is not { } harmonic) return;
        xml.Element("harmonic", () =>
        {
            xml.Empty(harmonic.Kind == HarmonicKind.Natural ? "natural" : "artificial");
            xml.Empty(harmonic.Kind == HarmonicKind.Pinch ? "base-pitch" : "sounding-pitch");
        });
        if (harmonic.Kind == HarmonicKind.Touched) xml.Text("other-technical", "touched at fret " + XmlOutput.Digits(capo.AboveOpen(note.String, harmonic.TouchedAt)));
        if (harmonic.Kind == HarmonicKind.Pinch) xml.Text("other-technical", "pinch harmonic");
    }

    private void WriteLegato(Note note, Attack attack, string element, string sign)
    {
        if (note.Attack == attack && joins.Arrives(note)) xml.Empty(element, ("type", "stop"), ("number", NumberOf(note)));
        if (joins.Departs(note, attack)) xml.Text(element, sign, ("type", "start"), ("number", NumberOf(note)));
    }

    private void WriteBend(Note note)
    {
        if (note.Bend is not { } bend) return;
        var cents = bend.FromCents;
        // What a held value starts from was bent by the value before it.
        if (cents > 0 && !note.IsTiedFromBefore) WriteBend(cents, "pre-bend");
        foreach (var target in bend.ToCents)
        {
            WriteBend(target - cents, target < cents ? "release" : null);
            cents = target;
        }
    }

    private void WriteBend(int cents, string? kind) => xml.Element("bend", () =>
    {
        xml.Text("bend-alter", XmlOutput.Digits(cents / 100.0));
        if (kind is not null) xml.Empty(kind);
    });

    private void WriteDip(int cents) => xml.Element("bend", () =>
    {
        xml.Text("bend-alter", XmlOutput.Digits(-cents / 100.0));
        xml.Text("with-bar", "dip");
    });

    private void WriteArticulations(Note note)
    {
        if (!note.IsAccented && !note.IsStaccato && note.GlideIn == GlideIn.None && note.GlideOut == GlideOut.None) return;
        xml.Element("articulations", () =>
        {
            if (note.IsAccented) xml.Empty("accent");
            if (note.IsStaccato) xml.Empty("staccato");
            if (note.GlideIn != GlideIn.None) xml.Empty(note.GlideIn == GlideIn.FromBelow ? "scoop" : "plop");
            if (note.GlideOut != GlideOut.None) xml.Empty(note.GlideOut == GlideOut.Upwards ? "doit" : "falloff");
        });
    }

    private static string NumberOf(Note note) => XmlOutput.Digits(note.String.Value);
}
