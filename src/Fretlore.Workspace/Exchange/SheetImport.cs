using System.Collections.Immutable;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.MusicXml;
using Fretlore.Exchange.Reports;
using Fretlore.Exchange.Sheets;
using Fretlore.Syntax;

namespace Fretlore.Workspace.Exchange;

/// <summary>What became of a file from elsewhere.</summary>
public abstract record SheetImport
{
    private SheetImport()
    {
    }

    /// <summary>A sheet of the file's music.</summary>
    /// <param name="Text">The sheet.</param>
    /// <param name="Bars">How many bars are written.</param>
    /// <param name="Parts">How many parts it has.</param>
    /// <param name="Remarks">Each thing that was not carried over as it was.</param>
    /// <param name="Findings">What is wrong with the sheet all the same, such as a grip that no rule could mend.</param>
    public sealed record Made(string Text, int Bars, int Parts, ImmutableArray<Remark> Remarks, ImmutableArray<Finding> Findings) : SheetImport;

    /// <summary>The file can't be used.</summary>
    public sealed record Refused(string Reason, string Remedy) : SheetImport;

    /// <summary>Reads a file as MusicXML, plain or compressed.</summary>
    public static SheetImport Read(byte[] file) => MusicXmlReader.Read(file) switch
    {
        ImportResult.Made made => Write(made),
        ImportResult.Refused refused => new Refused(refused.Reason, refused.Remedy),
        _ => throw new InvalidOperationException(),
    };

    private static Made Write(ImportResult.Made made)
    {
        var sheet = SheetWriter.Write(made.Song);
        var bound = SongWorkspace.Open(new SourceText(sheet.Text, ""));
        return new Made(sheet.Text, made.Song.Bars.Count, made.Song.Parts.Count, [.. made.Remarks, .. sheet.Remarks], [.. bound.Findings.Where(f => f.Severity == Severity.Error)]);
    }
}
