using System.Text;
using Fretlore.Engraving.Fonts.Shaping;

namespace Fretlore.Engraving.Output;

/// <summary>Text as XML content or a quoted attribute may hold it.</summary>
internal static class XmlText
{
    public static StringBuilder Escaped(this StringBuilder to, string text)
    {
        foreach (var character in PlainLine.Of(text))
        {
            _ = character switch
            {
                '<' => to.Append("&lt;"),
                '>' => to.Append("&gt;"),
                '&' => to.Append("&amp;"),
                '"' => to.Append("&quot;"),
                _ => to.Append(character),
            };
        }

        return to;
    }
}
