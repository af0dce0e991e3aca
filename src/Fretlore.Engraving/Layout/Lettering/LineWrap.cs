using Fretlore.Engraving.Drawing;

namespace Fretlore.Engraving.Layout.Lettering;

/// <summary>Breaks a text into lines no wider than a width, between words, or within a word that is wider than that alone.</summary>
internal static class LineWrap
{
    public static List<string> Of(Ink ink, string value, Face face, double size, double width)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in value.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        {
            var tried = line.Length == 0 ? word : line + " " + word;
            if (ink.TextWidth(tried, face, size) <= width)
            {
                line = tried;
                continue;
            }
            if (line.Length > 0) lines.Add(line);
            line = word;
            while (ink.TextWidth(line, face, size) > width && line.Length > 1)
            {
                var fits = line.Length - 1;
                while (fits > 1 && ink.TextWidth(line[..fits], face, size) > width) fits--;
                if (char.IsHighSurrogate(line[fits - 1]) && fits > 1) fits--;
                lines.Add(line[..fits]);
                line = line[fits..];
            }
        }
        if (line.Length > 0) lines.Add(line);
        return lines;
    }
}
