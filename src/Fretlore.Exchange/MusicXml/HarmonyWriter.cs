using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>Chord symbols, from the reading or as the sheet states them.</summary>
internal sealed class HarmonyWriter(XmlOutput xml, StaffForm form, FrameWriter frames)
{
    /// <param name="chord">The chord.</param>
    /// <param name="shape">The shape it begins to be played with here, or null.</param>
    /// <param name="offset">From where the writer is, in divisions.</param>
    public void Write(ChordMoment chord, NamedShape? shape, long offset)
    {
        if (chord.Override is { } symbol && symbol != chord.Best.Symbol) WriteStated(symbol, chord.Best, shape, offset);
        else WriteChord(chord.Best.Root, chord.Best.Kind, ChordKind.Of(chord.Best), chord.Best.Bass, shape, offset, isStated: chord.Override is not null);
    }

    /// <summary>A symbol that the sheet states where the reading sees no chord, such as over a rest.</summary>
    public void Write(string symbol, NamedShape? shape, long offset) => WriteStated(symbol, null, shape, offset);

    /// <summary>A shape where no chord symbol stands, under the chord that it is by itself.</summary>
    public void Write(NamedShape shape, ChordReading chord, long offset) => WriteChord(chord.Root, chord.Kind, ChordKind.Of(chord), chord.Bass, shape, offset, isStated: false);

    // What the writer calls the chord is printed; where the root is the reading's too, its notes still tell the kind.
    private void WriteStated(string symbol, ChordReading? best, NamedShape? shape, long offset)
    {
        var length = symbol.Length > 1 && symbol[1] is '#' or 'b' or '♯' or '♭' ? 2 : 1;
        if (!NoteName.TryParse(symbol.AsSpan(0, Math.Min(length, symbol.Length)), out var root))
        {
            if (best is not null) WriteChord(best.Root, symbol, new ChordKind("other", []), best.Root, shape, offset);
            return;
        }
        var rest = symbol[length..];
        var slash = rest.LastIndexOf('/');
        var bass = root;
        if (slash >= 0 && NoteName.TryParse(rest.AsSpan(slash + 1), out var stated)) (bass, rest) = (stated, rest[..slash]);
        WriteChord(root, rest, best is not null && root == best.Root ? ChordKind.Of(best) : new ChordKind("other", []), bass, shape, offset);
    }

    private void WriteChord(NoteName root, string text, ChordKind kind, NoteName bass, NamedShape? shape, long offset, bool isStated = true) => xml.Element("harmony", () =>
    {
        xml.Element("root", () => WriteName("root", root));
        xml.Text("kind", kind.Value, ("text", text));
        if (bass != root) xml.Element("bass", () => WriteName("bass", bass));
        foreach (var (degree, alteration, type) in kind.Degrees)
        {
            xml.Element("degree", () =>
            {
                xml.Number("degree-value", degree);
                xml.Number("degree-alter", alteration);
                xml.Text("degree-type", type);
            }, ("print-object", "no"));
        }
        if (shape is not null) frames.Write(shape);
        if (offset != 0) xml.Number("offset", offset);
        if (form.HasTwoStaves()) xml.Number("staff", 1);
        // What the writer calls a chord otherwise than its notes do is, in the standard's words, an alternate analysis.
    }, ("type", isStated ? "alternate" : null));

    private void WriteName(string element, NoteName name)
    {
        xml.Text(element + "-step", name.Step.ToString());
        if (name.Alteration != 0) xml.Number(element + "-alter", name.Alteration);
    }
}
