using System.Xml.Linq;
using Fretlore.Exchange.Import;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml.Reading;

/// <summary>Reads chord frames as shapes.</summary>
internal static class FrameReader
{
    private const int MostFrets = 36;

    /// <summary>The shape of a frame, or null where it holds nothing that can be played.</summary>
    /// <param name="frame">The frame element.</param>
    /// <param name="isOwn">Whether Fretlore wrote it: a barre without a finger is then one that was worked out.</param>
    /// <param name="symbol">The chord symbol it stands under, or null.</param>
    /// <param name="at">Where it stands.</param>
    public static StatedShape? Of(XElement frame, bool isOwn, string? symbol, (int Bar, Beats At) at)
    {
        if (frame.Whole("frame-strings") is not (>= 1 and <= 12 and var count)) return null;
        var frets = new Fret?[count];
        var fingers = new Finger?[count];
        var starts = new SortedDictionary<int, Finger?>();
        var spans = new List<(int Low, int High, Finger? Finger)>();
        foreach (var note in frame.Elements("frame-note"))
        {
            if (note.Whole("string") is not { } number || number < 1 || number > count || note.Whole("fret") is not (>= 0 and <= MostFrets and var fret)) return null;
            var index = count - number;
            frets[index] = new Fret(fret);
            if (fret > 0) fingers[index] = XmlWords.Finger(note.Text("fingering"));
            switch (note.Element("barre")?.Said("type"))
            {
                case "start":
                    starts[index] = fingers[index];
                    break;
                case "stop" when starts.LastOrDefault(s => frets[s.Key] == frets[index], new(-1, null)) is { Key: >= 0 } start:
                    spans.Add((start.Key, index, start.Value ?? fingers[index]));
                    starts.Remove(start.Key);
                    break;
            }
        }
        if (frets.All(f => f is null)) return null;
        var unsaid = !isOwn && !Lay(spans, frets, fingers);
        return new StatedShape(at.Bar, at.At, new Shape(frets.ToValueList()), fingers.Any(f => f is not null) ? fingers.ToValueList() : default)
        {
            Name = isOwn ? NameOf(frame.Said("id")) : null,
            Symbol = symbol,
            HasBarreWithoutFinger = unsaid,
        };
    }

    // A finger for each string its barre holds. One on the lowest fret is the index finger's: others have to stand above it (common practice).
    private static bool Lay(List<(int Low, int High, Finger? Finger)> spans, Fret?[] frets, Finger?[] fingers)
    {
        var areSaid = true;
        var lowest = frets.Where(f => f is { IsOpen: false }).Select(f => f!.Value.Number).DefaultIfEmpty().Min();
        foreach (var (low, high, stated) in spans)
        {
            var finger = stated ?? (frets[low]!.Value.Number == lowest && lowest > 0 ? Finger.Index : null);
            areSaid &= finger is not null;
            for (var i = low; i <= high && finger is not null; i++)
            {
                if (frets[i] == frets[low]) fingers[i] ??= finger;
            }
        }
        return areSaid;
    }

    private static string? NameOf(string? id)
    {
        if (id is null || !id.StartsWith(FrameWriter.IdStart, StringComparison.Ordinal)) return null;
        var name = id[FrameWriter.IdStart.Length..];
        var count = name.IndexOf(FrameWriter.IdCount, StringComparison.Ordinal);
        if (count >= 0) name = name[..count];
        return name.Length is > 0 and <= 60 && name.All(c => char.IsLetterOrDigit(c) || c is '.' or '-') ? name : null;
    }
}
