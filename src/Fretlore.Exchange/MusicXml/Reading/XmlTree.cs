using System.Globalization;
using System.Xml;
using System.Xml.Linq;
using Fretlore.Exchange.Import;

namespace Fretlore.Exchange.MusicXml.Reading;

/// <summary>Loads XML that may be hostile: no document type is followed, no entity made, no address opened, nothing endless.</summary>
internal static class XmlTree
{
    public static XElement Load(Stream stream)
    {
        var settings = new XmlReaderSettings
        {
            // Files from other programs name the standard's document type: it is passed over, never fetched, and what it declares is not used.
            DtdProcessing = DtdProcessing.Ignore,
            XmlResolver = null,
            MaxCharactersInDocument = ImportLimits.MostBytes,
            MaxCharactersFromEntities = 1024,
            IgnoreComments = true,
            IgnoreProcessingInstructions = true,
            IgnoreWhitespace = true,
            CheckCharacters = true,
        };
        using var reader = XmlReader.Create(stream, settings);
        try
        {
            return Read(reader) ?? throw new RefusedFileException("The file holds no XML.", "Export it again from the program it comes from.");
        }
        catch (XmlException e)
        {
            throw new RefusedFileException(
                string.Create(CultureInfo.InvariantCulture, $"The file is not sound XML: it breaks off at line {e.LineNumber}."),
                "Export it again from the program it comes from, as MusicXML.");
        }
        catch (Exception e) when (e is System.Text.DecoderFallbackException or ArgumentException or InvalidOperationException)
        {
            throw new RefusedFileException("The file's text can't be read in the encoding it names.", "Export it again as UTF-8.");
        }
    }

    private static XElement? Read(XmlReader reader)
    {
        XElement? root = null;
        var open = new Stack<XElement>();
        while (reader.Read())
        {
            switch (reader.NodeType)
            {
                case XmlNodeType.Element:
                    if (open.Count >= ImportLimits.DeepestElement) throw TooDeep();
                    var element = new XElement(reader.LocalName.Length > 0 ? XmlConvert.EncodeLocalName(reader.LocalName) : "empty");
                    var isEmpty = reader.IsEmptyElement;
                    while (reader.MoveToNextAttribute())
                    {
                        if (reader.Prefix.Length == 0 && reader.LocalName != "xmlns") element.SetAttributeValue(reader.LocalName, reader.Value);
                    }
                    if (open.TryPeek(out var parent)) parent.Add(element);
                    else root = element;
                    if (!isEmpty) open.Push(element);
                    break;
                case XmlNodeType.EndElement:
                    open.Pop();
                    break;
                case XmlNodeType.Text or XmlNodeType.CDATA when open.Count > 0:
                    open.Peek().Add(new XText(reader.Value));
                    break;
                case XmlNodeType.EntityReference:
                    throw new RefusedFileException("The file uses entities of its own making.", "Export it again from the program it comes from.");
            }
        }
        return root;
    }

    private static RefusedFileException TooDeep() => new("The file's elements lie within each other deeper than any score's.", "Export it again from the program it comes from.");
}
