using System.Globalization;
using System.Text;
using System.Xml;

namespace Fretlore.Exchange.MusicXml;

/// <summary>Elements and text on an XML writer, in the few shapes MusicXML needs.</summary>
internal sealed class XmlOutput(XmlWriter writer)
{
    /// <summary>An element with what <paramref name="content"/> writes in it.</summary>
    public void Element(string name, Action content, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Start(name, attributes);
        content();
        writer.WriteEndElement();
    }

    /// <summary>An element with text in it.</summary>
    public void Text(string name, string text, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Start(name, attributes);
        writer.WriteString(Clean(text));
        writer.WriteEndElement();
    }

    public void Number(string name, long value) => Text(name, value.ToString(CultureInfo.InvariantCulture));

    public void Empty(string name, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Start(name, attributes);
        writer.WriteEndElement();
    }

    public static string Digits(long value) => value.ToString(CultureInfo.InvariantCulture);

    public static string Digits(double value) => Math.Round(value, 4).ToString("0.####", CultureInfo.InvariantCulture);

    private void Start(string name, ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        writer.WriteStartElement(name);
        foreach (var (attribute, value) in attributes)
        {
            if (value is not null) writer.WriteAttributeString(attribute, Clean(value));
        }
    }

    // A title may hold characters that XML 1.0 has no way to write, such as a bell.
    private static string Clean(string text)
    {
        try
        {
            return XmlConvert.VerifyXmlChars(text);
        }
        catch (XmlException)
        {
            var clean = new StringBuilder(text.Length);
            foreach (var rune in text.EnumerateRunes())
            {
                if (rune.Value >= 0x10000 || XmlConvert.IsXmlChar((char)rune.Value)) clean.Append(rune.ToString());
            }
            return clean.ToString();
        }
    }
}
