using System.Xml;
using System.Xml.Linq;
using System.Xml.Schema;
using CsCheck;
using Fretlore.Exchange.MusicXml;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Outside;

/// <summary>Against the MusicXML 4.0 schema of the W3C Music Notation Community Group.</summary>
public class MusicXmlSchemaFacts
{
    [Theory]
    [InlineData(StaffForm.Notation)]
    [InlineData(StaffForm.Tablature)]
    [InlineData(StaffForm.Both)]
    public void MusicXml_OfGeneratedSongs_IsValidAgainstTheSchema(object form)
    {
        var schema = Schema();
        Assert.SkipWhen(schema is null, "The MusicXML schema does not stand beside this checkout.");
        SongGen.Songs.Sample(song => Assert.Equal("", Errors(Exchange.Written.MusicXml(song, (StaffForm)form), schema)), iter: Soak.Songs(60));
    }

    [Theory]
    [MemberData(nameof(DemoSongs.Names), MemberType = typeof(DemoSongs))]
    public void MusicXml_OfTheDemoSongs_IsValidAgainstTheSchema(string name)
    {
        var schema = Schema();
        Assert.SkipWhen(schema is null, "The MusicXML schema does not stand beside this checkout.");
        Assert.Equal("", Errors(Exchange.Written.MusicXml(DemoSongs.Load(name)), schema));
    }

    private static string Errors(XDocument document, XmlSchemaSet schema)
    {
        var errors = new List<string>();
        document.Validate(schema, (_, found) => errors.Add(found.Message));
        return string.Join('\n', errors);
    }

    private static XmlSchemaSet? Schema()
    {
        if (Repository.Check(Path.Combine("musicxml", "musicxml-4.0.xsd")) is not { } path) return null;
        var folder = Path.GetDirectoryName(path)!;
        var schema = new XmlSchemaSet { XmlResolver = null };
        foreach (var file in new[] { "xml.xsd", "xlink.xsd", "musicxml-4.0.xsd" })
        {
            using var reader = XmlReader.Create(Path.Combine(folder, file), new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore });
            schema.Add(null, reader);
        }
        schema.Compile();
        return schema;
    }
}
