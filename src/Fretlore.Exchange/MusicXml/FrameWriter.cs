using System.Xml;
using Fretlore.Guitar;
using Fretlore.Hands.Shapes;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>Named shapes as the standard's chord frames: strings, frets, fingers and barres.</summary>
/// <remarks>A barre is drawn where one finger holds a fret on several strings: a stated one with its finger, one that was worked out without.</remarks>
internal sealed class FrameWriter(XmlOutput xml)
{
    /// <summary>What the id of a frame begins with; the shape's name follows, and a count where it is not the first.</summary>
    public const string IdStart = "shape-";

    public const char IdCount = '_';

    private const int FewestFrets = 4;
    private const int LastFretFromTheNut = 5;

    private readonly Dictionary<string, int> written = [];

    /// <param name="named">The shape on the neck it is played on; its frets are told from the open string.</param>
    public void Write(NamedShape named)
    {
        var frets = named.Shape.LowToHigh;
        var held = named.Shape.On(named.Neck).Where(on => !on.Fret.IsOpen).Select(on => named.Neck.Capo.AboveOpen(on.String, on.Fret)).ToList();
        var (lowest, highest) = held.Count == 0 ? (1, 1) : (held.Min(), held.Max());
        var first = highest > LastFretFromTheNut ? lowest : 1;
        var barres = Barres(named);
        xml.Element("frame", () =>
        {
            xml.Number("frame-strings", frets.Count);
            xml.Number("frame-frets", Math.Max(FewestFrets, highest - first + 1));
            if (first > 1) xml.Text("first-fret", XmlOutput.Digits(first), ("text", XmlOutput.Digits(first) + "fr."), ("location", "right"));
            foreach (var (number, fret, _) in named.Shape.On(named.Neck)) WriteNote(number, named.Neck.Capo.AboveOpen(number, fret), named.FingerOf(number, fret), barres.GetValueOrDefault(number));
        }, ("unplayed", "x"), ("id", IdOf(named.Name)));
    }

    private void WriteNote(StringNumber number, int fret, Finger? finger, string? barre) => xml.Element("frame-note", () =>
    {
        xml.Number("string", number.Value);
        xml.Number("fret", fret);
        if (finger is { } held) xml.Text("fingering", Names.FingerOf(held));
        if (barre is not null) xml.Empty("barre", ("type", barre));
    });

    // Where a barre starts and stops: the lowest and the highest string that its finger holds.
    private static Dictionary<StringNumber, string> Barres(NamedShape named)
    {
        var barres = new Dictionary<StringNumber, string>();
        if (ShapeFingers.Of(named) is not { } fingers) return barres;
        var held = named.Shape.On(named.Neck).Where(s => !s.Fret.IsOpen && fingers[fingers.Length - s.String.Value] is not null);
        foreach (var finger in held.GroupBy(s => (fingers[fingers.Length - s.String.Value], s.Fret)).Where(g => g.Count() > 1))
        {
            barres[finger.First().String] = "start";
            barres[finger.Last().String] = "stop";
        }
        return barres;
    }

    private string? IdOf(string name)
    {
        if (!name.All(XmlConvert.IsNCNameChar)) return null;
        var count = written[name] = written.GetValueOrDefault(name) + 1;
        return IdStart + name + (count > 1 ? IdCount + XmlOutput.Digits(count) : "");
    }
}
