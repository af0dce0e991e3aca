using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.RoadMaps;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.EndMatter;

/// <summary>Finds which signs the pages show and says what each means: one row a sign.</summary>
internal static class UsedSigns
{
    public static List<LegendEntry> Of(ScoreModel model, bool degrees)
    {
        var slots = model.Measures.SelectMany(m => m.Parts).SelectMany(p => p.Voices).SelectMany(v => v.Slots).ToArray();
        var notes = slots.SelectMany(s => s.Heads.Concat(s.Graces)).Select(h => h.Note).ToArray();
        var events = slots.Select(s => s.Event).ToArray();
        var staff = model.Staves[0].ShowsStaff;
        var tab = model.Staves[0].ShowsTab;
        var entries = new List<LegendEntry>();

        void Add(bool isUsed, Action<Pen, double, double> draw, string words)
        {
            if (isUsed) entries.Add(new LegendEntry(draw, words));
        }

        void Letter(bool isUsed, string letters, string words) => Add(isUsed, Letters(letters), words);

        bool Any(Func<Note, bool> has) => Array.Exists(notes, n => has(n));

        if (tab)
        {
            Add(Any(n => n.Bend is { ToCents.Count: > 0 } b && b.ToCents[0] > b.FromCents), BendUp, "Bend: full is a whole step, \u00BD a half step");
            Add(Any(n => n is { Bend.FromCents: > 0, IsTiedFromBefore: false }), BentBefore, "Bend before picking");
            Add(Any(n => n.Bend is { } b && b.ToCents.Contains(0)), Release, "Let the bend down again");
        }
        Add(Any(n => n.Vibrato.Width == VibratoWidth.Normal), Waves(Smufl.GuitarVibratoStroke), "Vibrato");
        Add(Any(n => n.Vibrato.Width == VibratoWidth.Wide), Waves(Smufl.GuitarWideVibratoStroke), "Wide vibrato");
        Letter(Any(n => n.Attack == Attack.HammerOn), "H", "Hammer on with a fretting finger, not picked");
        Letter(Any(n => n.Attack == Attack.PullOff), "P", "Pull off to the lower note, not picked");
        Letter(Any(n => n.Attack == Attack.HammerFromNowhere), "H", "Without an arc: hammer a silent string");
        Letter(Any(n => n.Attack == Attack.Tap), "T", "Tap with the picking hand");
        if (tab)
        {
            Add(Any(n => n.Attack == Attack.Glide), (pen, x, y) => Slide(pen, x, y, true), "Slide, not picked again");
            Add(Any(n => n.Attack == Attack.PickedGlide), (pen, x, y) => Slide(pen, x, y, false), "Slide, picked on arrival");
            Add(Any(n => n.GlideIn != GlideIn.None), (pen, x, y) => Open(pen, x, y, true), "Slide in from no fret in particular");
            Add(Any(n => n.GlideOut != GlideOut.None), (pen, x, y) => Open(pen, x, y, false), "Slide off the note");
            Letter(Any(n => n.IsDead), "x", "Dead note: no pitch");
            Letter(Any(n => n.IsGhost), "(5)", "Ghost note: barely heard");
            Letter(Any(n => n.Harmonic?.Kind == HarmonicKind.Natural), "\u203912\u203A", "Harmonic: touch the string over this fret");
            Letter(Any(n => n.Harmonic?.Kind == HarmonicKind.Touched), "3\u203915\u203A", "Stop the first fret, touch over the second");
        }
        Letter(Any(n => n.Harmonic?.Kind == HarmonicKind.Pinch), "P.H.", "Pinch the harmonic with the thumb");
        Add(staff && slots.Any(s => s.Reached.Length > 0), (pen, x, y) => pen.GlyphCentred(Smufl.NoteheadBlack, x, y - 0.5, Staff.ReachedHeads.Scale), "The pitch a bend reaches");
        Letter(Any(n => n.IsPalmMuted), "P.M.", "Palm mute as far as the line goes");
        Letter(Any(n => n.LetsRing), "let ring", "Let every note sound on");
        Letter(events.Any(e => e.Spans.HasFlag(Spans.TremoloPicking)), "trem. pick", "Pick as fast as you can");
        Letter(events.Any(e => e.Spans.HasFlag(Spans.TremoloArm)), "w/ bar", "Use the tremolo arm");
        Letter(events.Any(e => e.Spans.HasFlag(Spans.Wah)), "wah", "Use the wah pedal");
        Add(model.Hands.Strokes && events.Any(e => e.Stroke == Stroke.Down), (pen, x, y) => pen.GlyphCentred(Smufl.StringsDownBow, x, y, 0.8), "Downstroke");
        Add(model.Hands.Strokes && events.Any(e => e.Stroke == Stroke.Up), (pen, x, y) => pen.GlyphCentred(Smufl.StringsUpBow, x, y, 0.8), "Upstroke");
        Add(events.Any(e => e.Roll is Roll.LowToHigh or Roll.HighToLow && !e.IsRest), (pen, x, y) => Staff.ChordDrawer.DrawRoll(pen, Roll.LowToHigh, x, y - 1.6, y + 0.2), "Roll the chord, low string first; an arrow down: high string first");
        Add(events.Any(e => e.Roll == Roll.Rake), (pen, x, y) => Staff.ChordDrawer.DrawRoll(pen, Roll.Rake, x, y - 1.2, y + 0.2), "Rake: sweep over the dead strings into the last one");
        Add(Any(n => n.Trill is not null), (pen, x, y) => pen.GlyphCentred(Smufl.OrnamentTrill, x, y, 0.85), "Trill: hammer and pull between the two frets as long as the wave goes");
        Add(Any(n => n.DipCents > 0), Dip, "Dip with the tremolo arm, so many whole steps, and let it come back");
        Letter(Any(n => model.Hands.FingerOf(n) is not null), "1 2 3 4 T", "Fretting fingers from the index on, and the thumb");
        Add(model.Hands.HasPositions, (pen, x, y) => pen.Text("V", x, y, HouseStyle.SmallSize, Face.SerifBold, Anchor.Middle), "Position: the index finger is at this fret");
        Add(model.Hands.Strokes && events.Any(e => e.PickingFinger is not null), (pen, x, y) => pen.Text("p i m a", x, y, HouseStyle.SmallSize, Face.SerifItalic, Anchor.Middle), "Picking hand: thumb, index, middle, ring");
        Add(!tab && model.Measures.Any(m => m.Parts.Select((p, i) => (Part: p, Neck: model.Staves[i].Part.Neck)).Any(p => p.Part.Voices.Any(v => v.Slots.Any(s => Staff.StringCircles.NumberFor(s, p.Neck) is not null)))),
            (pen, x, y) => pen.GlyphCentred(Smufl.GuitarString3, x, y - 0.5, 0.7), "The string to play it on, from the highest one");
        Add(events.Any(e => e.HasFermata), (pen, x, y) => pen.GlyphCentred(Smufl.FermataAbove, x, y, 0.85), "Fermata: hold it for longer than written");
        Add(model.Song.Bars.Any(b => b.IsSegno), (pen, x, y) => pen.GlyphCentred(Smufl.Segno, x, y, 0.6), "Segno: D.S. goes back to here");
        Add(model.Song.Bars.Any(b => b.IsCoda), (pen, x, y) => pen.GlyphCentred(Smufl.Coda, x, y - 0.3, 0.6), "Coda: to be gone to from \u201CTo Coda\u201D");
        Add(model.Measures.Any(m => m.Parts.Any(p => p.IsFree)), (pen, x, y) => pen.GlyphCentred(Smufl.NoteheadSlashHorizontalEnds, x, y - 0.6, 0.8), "Play freely by the rules given");
        Add(tab && model.Measures.Any(m => model.Staves.Any(staff => RoadMapStretch.At(model.Song, staff, m) is { } stretch && RoadMapRow.RegionIn(stretch, staff, m) is { HasTargets: true })),
            (pen, x, y) => NeckRegion.Target(pen, x, y - 0.6), "In free bars: a note to land on");
        Letter(staff && model.Staves.Any(s => s.Clef == Clef.Treble15mb), "15", "Below the clef: sounds two octaves lower than written");
        Add(!staff && events.Any(e => !e.IsRest && e.Value.Base == Music.ValueBase.Half), (pen, x, y) => pen.Line(x, y - 1.4, x, y, pen.Ink.Stem), "Half a stem: a half note; none: a whole note");
        Add(degrees, (pen, x, y) => DegreeSign(pen, x, y, Face.SansBold), "Below the notes: a tone of the chord, counted from its root");
        Add(degrees, (pen, x, y) => DegreeSign(pen, x, y, Face.Sans), "Not of the chord: a tension, or a note that passes");
        Add(degrees, (pen, x, y) => DegreeSign(pen, x, y, Face.SerifItalic), "No chord sounds: counted from the key's tonic");
        return entries;
    }

    private static void DegreeSign(Pen pen, double x, double y, Face face)
    {
        const string Sign = "\u266D3";
        MixedText.Draw(pen, Sign, x - MixedText.Width(pen.Ink, Sign, HouseStyle.SmallSize, face) / 2, y, HouseStyle.SmallSize, face);
    }

    private static Action<Pen, double, double> Letters(string letters) => (pen, x, y) => pen.Text(letters, x, y, HouseStyle.SmallSize, Face.Sans, Anchor.Middle);

    private static Action<Pen, double, double> Waves(int glyph) => (pen, x, y) =>
    {
        var step = pen.Ink.Music.AdvanceOf(glyph);
        for (var i = 0; i < 4; i++) pen.Glyph(glyph, x + (i - 2) * step, y - 0.2);
    };

    private static void BendUp(Pen pen, double x, double y)
    {
        pen.Curve(new(x - 1.2, y), new(x + 0.2, y), new(x + 0.5, y - 0.6), new(x + 0.5, y - 1.1), 0.15);
        pen.Polygon(new Point(x + 0.5, y - 1.7), new Point(x + 0.2, y - 1), new Point(x + 0.8, y - 1));
    }

    private static void BentBefore(Pen pen, double x, double y)
    {
        pen.Line(x, y, x, y - 1.1, 0.15);
        pen.Polygon(new Point(x, y - 1.7), new Point(x - 0.3, y - 1), new Point(x + 0.3, y - 1));
    }

    private static void Release(Pen pen, double x, double y)
    {
        pen.Curve(new(x - 1, y - 1.6), new(x + 0.2, y - 1.6), new(x + 0.5, y - 1.2), new(x + 0.5, y - 0.6), 0.15);
        pen.Polygon(new Point(x + 0.5, y), new Point(x + 0.2, y - 0.7), new Point(x + 0.8, y - 0.7));
    }

    private static void Dip(Pen pen, double x, double y)
    {
        pen.Line(x - 0.55, y - 1, x, y - 0.1, 0.14);
        pen.Line(x, y - 0.1, x + 0.55, y - 1, 0.14);
    }

    private static void Slide(Pen pen, double x, double y, bool slurred)
    {
        pen.Text("5", x - 1.6, y, HouseStyle.SmallSize, Face.Sans, Anchor.Middle);
        pen.Text("9", x + 1.6, y, HouseStyle.SmallSize, Face.Sans, Anchor.Middle);
        pen.Line(x - 0.9, y - 0.15, x + 0.9, y - 0.85, 0.15);
        if (slurred) pen.Slur(x - 1.5, y - 1.3, x + 1.5, y - 1.3, -0.4);
    }

    private static void Open(Pen pen, double x, double y, bool into)
    {
        pen.Text("9", into ? x + 0.8 : x - 0.8, y, HouseStyle.SmallSize, Face.Sans, Anchor.Middle);
        if (into) pen.Line(x - 1.3, y - 0.1, x + 0.1, y - 0.9, 0.15);
        else pen.Line(x - 0.1, y - 0.9, x + 1.3, y - 0.1, 0.15);
    }
}
