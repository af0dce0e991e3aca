using System.Xml.Linq;
using Fretlore.Music;

namespace Fretlore.Exchange.MusicXml.Reading;

/// <summary>Chord symbols as text: root, kind, bass.</summary>
internal static class ChordSymbols
{
    private static readonly Dictionary<string, string> Kinds = new(StringComparer.Ordinal)
    {
        ["major"] = "", ["minor"] = "m", ["augmented"] = "aug", ["diminished"] = "dim", ["dominant"] = "7", ["major-seventh"] = "maj7",
        ["minor-seventh"] = "m7", ["diminished-seventh"] = "dim7", ["augmented-seventh"] = "aug7", ["half-diminished"] = "m7b5",
        ["major-minor"] = "m(maj7)", ["major-sixth"] = "6", ["minor-sixth"] = "m6", ["dominant-ninth"] = "9", ["major-ninth"] = "maj9",
        ["minor-ninth"] = "m9", ["dominant-11th"] = "11", ["major-11th"] = "maj11", ["minor-11th"] = "m11", ["dominant-13th"] = "13",
        ["major-13th"] = "maj13", ["minor-13th"] = "m13", ["suspended-second"] = "sus2", ["suspended-fourth"] = "sus4", ["power"] = "5",
    };

    public static string? Of(XElement harmony)
    {
        if (Name(harmony.Element("root"), "root") is not { } root) return null;
        var kind = harmony.Element("kind");
        var value = kind?.Value.Trim() ?? "major";
        if (value == "none") return null;
        var text = kind?.Said("text") ?? Kinds.GetValueOrDefault(value, "");
        if (kind?.Said("text") is null)
        {
            foreach (var degree in harmony.Elements("degree"))
            {
                if (degree.Whole("degree-value") is not { } number) continue;
                var alter = degree.Whole("degree-alter") ?? 0;
                var sign = alter switch { < 0 => "b", > 0 => "#", _ => "" };
                text += degree.Text("degree-type") switch { "add" => sign.Length > 0 ? sign + number : "add" + number, "subtract" => "no" + number, _ => sign + number };
            }
        }
        var bass = Name(harmony.Element("bass"), "bass");
        return root + text + (bass is null || bass == root ? "" : "/" + bass);
    }

    private static string? Name(XElement? element, string prefix)
    {
        if (element.Text(prefix + "-step") is not { Length: 1 } step || !NoteName.TryParse(step, out var name)) return null;
        var alter = element.Whole(prefix + "-alter") ?? 0;
        return Math.Abs(alter) > 2 ? null : (name with { Alteration = alter }).ToString();
    }
}
