using System.Globalization;
using System.Text;
using Fretlore.Syntax;
using Fretlore.Workspace;
using Fretlore.Workspace.Exchange;

namespace Fretlore.Bench;

/// <summary>How long a MusicXML file of about a megabyte takes to read, and to become a sheet; and what memory that asks for.</summary>
internal static class ExchangeLook
{
    private const int Megabyte = 1_000_000;
    private const int Runs = 21;

    public static int Print(TextWriter output)
    {
        // The smallest song whose file has a megabyte.
        var file = Array.Empty<byte>();
        var bars = 0;
        while (file.Length < Megabyte)
        {
            bars += 80;
            file = SongExport.Write(SongWorkspace.Open(new SourceText(GeneratedSong.Sheet(bars), "bench.lore")), ExportForm.MusicXml).Bytes;
        }
        var text = Encoding.UTF8.GetString(file);
        var bare = Encoding.UTF8.GetBytes(text.Replace("<software>Fretlore</software>", "<software>Other</software>", StringComparison.Ordinal));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{bars} bars, 2 parts: {file.Length / 1000} KB of MusicXML"));
        Measure(output, "MusicXML to song, our own file", () => Fretlore.Exchange.MusicXml.MusicXmlReader.Read(file), file.Length, "under 100 ms");
        Measure(output, "MusicXML to song, another's", () => Fretlore.Exchange.MusicXml.MusicXmlReader.Read(bare), file.Length, "under 100 ms");
        Measure(output, "MusicXML to checked sheet", () => SheetImport.Read(file), file.Length, "holds under 20 times");
        return 0;
    }

    private static void Measure(TextWriter output, string name, Func<object> way, int size, string wanted)
    {
        var timing = Timing.Of(way, Runs);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"{name,-32} median {timing.Median,7:0.0} ms  best {timing.Best,7:0.0} ms  allocates {(double)timing.Allocated / size,5:0.0} times the file, holds at most {(double)HeldMemory.Most(way) / size,5:0.0} times  {wanted}").TrimEnd());
    }
}
