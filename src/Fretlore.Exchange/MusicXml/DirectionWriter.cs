using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>What stands above or below the notes at a moment: tempo, sections, words, dynamics, stretches.</summary>
internal sealed class DirectionWriter(XmlOutput xml, StaffForm form)
{
    private static readonly (Stretch Stretch, string Words)[] WordsOf =
    [
        (Stretch.PalmMute, "P.M."), (Stretch.LetRing, "let ring"), (Stretch.TremoloArm, "with arm"), (Stretch.Wah, "wah"),
    ];

    public void Section(string name, long offset) => Direction("above", () => xml.Text("rehearsal", name), offset);

    public void Words(string words, long offset, int? voice = null) => Direction("above", () => xml.Text("words", words), offset, voice);

    public void Tempo(Tempo tempo, long offset) => Direction("above", () => xml.Element("metronome", () =>
    {
        xml.Text("beat-unit", Names.TypeOf(tempo.Beat.Base));
        for (var i = 0; i < tempo.Beat.Dots; i++) xml.Empty("beat-unit-dot");
        xml.Text("per-minute", XmlOutput.Digits((double)tempo.PerMinute));
    }), offset, sound: () => xml.Empty("sound", ("tempo", XmlOutput.Digits(tempo.QuartersPerMinute))));

    public void Feel(Feel feel) => Direction("above", () => xml.Text("words", feel.Swung is null ? "Straight" : "Swing"), 0, sound: () => xml.Element("sound", () => xml.Element("swing", () =>
    {
        if (feel.Swung is not (ValueBase.Eighth or ValueBase.Sixteenth))
        {
            xml.Empty("straight");
            return;
        }
        xml.Number("first", 2);
        xml.Number("second", 1);
        xml.Text("swing-type", Names.TypeOf(feel.Swung.Value));
    })));

    /// <summary>The sign of a place that is jumped to, and for players what it is called.</summary>
    public void Target(string sign, long offset) => Direction("above", () => xml.Empty(sign), offset, sound: () => xml.Empty("sound", (sign, sign)));

    /// <summary>A jump in words, and for players by its attribute.</summary>
    public void Jump(Jump jump, long offset)
    {
        var (words, attribute, value) = JumpNames.Of(jump);
        Direction("above", () => xml.Text("words", words), offset, sound: () => xml.Empty("sound", (attribute, value)));
    }

    public void Dynamic(Dynamic dynamic, int velocity, int voice) => Direction(
        "below",
        () => xml.Element("dynamics", () => xml.Empty(Names.DynamicOf(dynamic))),
        0,
        voice,
        // In percent of forte, 90 in MIDI, as the standard has it.
        () => xml.Empty("sound", ("dynamics", XmlOutput.Digits(velocity / 0.9))));

    public void Starts(Stretch stretches, Stretch stopsAtOnce, int voice)
    {
        foreach (var (stretch, words) in WordsOf)
        {
            if (!stretches.HasFlag(stretch)) continue;
            var isLong = !stopsAtOnce.HasFlag(stretch);
            xml.Element("direction", () =>
            {
                xml.Element("direction-type", () => xml.Text("words", words));
                if (isLong) xml.Element("direction-type", () => xml.Empty("dashes", ("type", "start"), ("number", NumberOf(stretch, voice))));
                Place(0, voice);
            }, ("placement", "above"));
        }
        if (stretches.HasFlag(Stretch.Crescendo)) Wedge("crescendo", voice);
        if (stretches.HasFlag(Stretch.Diminuendo)) Wedge("diminuendo", voice);
    }

    public void Stops(Stretch stretches, Stretch startedAtOnce, int voice)
    {
        foreach (var (stretch, _) in WordsOf)
        {
            if (!stretches.HasFlag(stretch) || startedAtOnce.HasFlag(stretch)) continue;
            Direction("above", () => xml.Empty("dashes", ("type", "stop"), ("number", NumberOf(stretch, voice))), 0, voice);
        }
        if ((stretches & (Stretch.Crescendo | Stretch.Diminuendo)) != 0) Wedge("stop", voice);
    }

    private void Wedge(string type, int voice) =>
        Direction("below", () => xml.Empty("wedge", ("type", type), ("number", XmlOutput.Digits(voice))), 0, voice);

    // Up to 16 at once can be told apart: four kinds in four voices.
    private static string NumberOf(Stretch stretch, int voice) => XmlOutput.Digits(int.Log2((int)stretch) + 4 * ((voice - 1) % 4) + 1);

    private void Direction(string placement, Action type, long offset, int? voice = null, Action? sound = null) => xml.Element("direction", () =>
    {
        xml.Element("direction-type", type);
        Place(offset, voice);
        sound?.Invoke();
    }, ("placement", placement));

    private void Place(long offset, int? voice)
    {
        if (offset != 0) xml.Number("offset", offset);
        if (voice is { } number) xml.Number("voice", number);
        if (form.HasTwoStaves()) xml.Number("staff", 1);
    }
}
