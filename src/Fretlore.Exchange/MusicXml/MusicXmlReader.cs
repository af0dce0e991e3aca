using Fretlore.Exchange.Import;
using Fretlore.Exchange.MusicXml.Reading;
using Fretlore.Exchange.Reports;

namespace Fretlore.Exchange.MusicXml;

/// <summary>Reads MusicXML 1.0 to 4.0, partwise or timewise, plain or compressed, as a song.</summary>
/// <remarks>
/// Never fails, whatever the bytes: a file that can't be used is refused with a reason. Strings and frets are the file's where it has them;
/// other notes are placed on the neck by <see cref="LinePlacer"/>, which the remarks say.
/// </remarks>
public static class MusicXmlReader
{
    public static ImportResult Read(byte[] file)
    {
        try
        {
            if (file.Length > ImportLimits.MostBytes) throw new RefusedFileException("The file is larger than any score that is taken.", "Split the score and import its pieces.");
            var remarks = new Remarks();
            using var plain = new MemoryStream(file, writable: false);
            var root = Compressed.IsZip(file) ? Compressed.Load(file) : XmlTree.Load(plain);
            var raw = new ScoreReader(root, remarks).Read();
            var song = SongMaker.Make(raw, remarks);
            return new ImportResult.Made(raw.IsOwn ? song : StatedSymbols.Kept(song), remarks.ToImmutable());
        }
        catch (RefusedFileException refused)
        {
            return new ImportResult.Refused(refused.Message, refused.Remedy);
        }
    }
}
