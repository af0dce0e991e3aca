using System.Globalization;
using System.Text;
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
        catch (Exception e) when (e is DecoderFallbackException or ArgumentException or InvalidOperationException)
        {
            throw new RefusedFileException("The file's text can't be read in the encoding it names.", "Export it again as UTF-8.");
        }
    }

    private static XElement? Read(XmlReader reader)
    {
        XElement? root = null;
        var texts = new TextPool();
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
                        if (reader.Prefix.Length == 0 && reader.LocalName != "xmlns") element.SetAttributeValue(reader.LocalName, texts.Of(reader.Value));
                    }
                    if (open.TryPeek(out var parent)) parent.Add(element);
                    else root = element;
                    if (!isEmpty) open.Push(element);
                    break;
                case XmlNodeType.EndElement:
                    open.Pop();
                    break;
                case XmlNodeType.Text or XmlNodeType.CDATA when open.Count > 0:
                    // A text that is all of an element needs no node of its own.
                    texts.AddTo(open.Peek(), reader);
                    break;
                case XmlNodeType.EntityReference:
                    throw new RefusedFileException("The file uses entities of its own making.", "Export it again from the program it comes from.");
            }
        }
        return root;
    }

    /// <summary>Short texts, each once: a score says the same few words and numbers thousands of times.</summary>
    private sealed class TextPool
    {
        private const int LongestText = 24;
        private const int MostTexts = 4096;

        private readonly HashSet<string> known = new(StringComparer.Ordinal);
        private readonly HashSet<string>.AlternateLookup<ReadOnlySpan<char>> lookup;
        private readonly char[] buffer = new char[LongestText];

        public TextPool() => lookup = known.GetAlternateLookup<ReadOnlySpan<char>>();

        public string Of(string text) => text.Length > LongestText ? text : Of(text.AsSpan());

        public void AddTo(XElement element, XmlReader reader)
        {
            var text = Read(reader);
            // Texts one after another stay apart: joined again and again they would take for ever.
            if (element.IsEmpty) element.Add(text);
            else element.Add(new XText(text));
        }

        private string Read(XmlReader reader)
        {
            if (reader.NodeType != XmlNodeType.Text || !reader.CanReadValueChunk) return reader.Value;
            var length = 0;
            int read;
            while (length < LongestText && (read = reader.ReadValueChunk(buffer, length, LongestText - length)) > 0) length += read;
            if (length < LongestText) return Of(buffer.AsSpan(0, length));
            var all = new StringBuilder().Append(buffer);
            while ((read = reader.ReadValueChunk(buffer, 0, LongestText)) > 0) all.Append(buffer, 0, read);
            return all.ToString();
        }

        private string Of(ReadOnlySpan<char> text)
        {
            if (lookup.TryGetValue(text, out var same)) return same;
            var made = text.ToString();
            if (known.Count < MostTexts) known.Add(made);
            return made;
        }
    }

    private static RefusedFileException TooDeep() => new("The file's elements lie within each other deeper than any score's.", "Export it again from the program it comes from.");
}
