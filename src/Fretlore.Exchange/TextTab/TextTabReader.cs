using Fretlore.Exchange.Import;
using Fretlore.Exchange.Reports;
using Fretlore.Exchange.TextTab.Reading;

namespace Fretlore.Exchange.TextTab;

/// <summary>Reads plain-text tab as people post it: named strings or not, lines of different length, words between, frets of two digits.</summary>
/// <remarks>
/// Never fails, whatever the bytes: a file that can't be used is refused with a reason. Times are exact where note values or counted beats stand
/// with the strings; elsewhere a rhythm is proposed from how far apart the notes stand. The findings say what was guessed and where.
/// </remarks>
public static class TextTabReader
{
    private const int MostBytes = 4 * 1024 * 1024;

    public static ImportResult Read(byte[] file)
    {
        try
        {
            if (file.Length > MostBytes) throw new RefusedFileException("The file is larger than any tab that is taken.", "Split it and import its pieces.");
            var (findings, remarks) = (new TextFindings(), new Remarks());
            var (lines, encodingTaken) = TabText.Read(file);
            if (encodingTaken) findings.Add(TextFindingKind.EncodingTaken, lines[0], 0, 1);
            var isOwn = lines.Exists(l => l.Text == "Signs:") && lines.Exists(l => l.Text.StartsWith("Part: ", StringComparison.Ordinal));
            var collector = new PartCollector(findings, remarks, isOwn);
            collector.Read(TabBlocks.Of(lines, isOwn));
            collector.Parts.RemoveAll(p => p.Bars.Count == 0);
            if (!collector.Parts.Exists(p => p.Bars.Exists(b => b.Notes.Count > 0)))
                throw new RefusedFileException("The file is text, but there is no tab in it.", "Give a tab with a line for each string, such as e|--0--2--|, or a file of MusicXML or MIDI.");
            if (collector.Parts.Sum(p => p.Bars.Sum(b => b.Notes.Count)) > ImportLimits.MostNotes) throw new RefusedFileException("The tab has more notes than are taken.", "Split it and import its pieces.");
            var song = SongMaker.Make(new SongAssembler(collector.Heading, collector.Parts, findings, remarks, isOwn).Make(), remarks);
            return new ImportResult.Made(StatedSymbols.Kept(song), remarks.ToImmutable()) { Findings = findings.ToImmutable() };
        }
        catch (RefusedFileException refused)
        {
            return new ImportResult.Refused(refused.Message, refused.Remedy);
        }
    }
}
