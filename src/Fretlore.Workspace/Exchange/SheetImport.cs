using System.Collections.Immutable;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.Midi;
using Fretlore.Exchange.MusicXml;
using Fretlore.Exchange.Reports;
using Fretlore.Exchange.Sheets;
using Fretlore.Exchange.TextTab;
using Fretlore.Syntax;

namespace Fretlore.Workspace.Exchange;

/// <summary>What became of a file from elsewhere.</summary>
public abstract record SheetImport
{
    private SheetImport()
    {
    }

    /// <summary>A sheet of the file's music; it checks without errors.</summary>
    /// <param name="Text">The sheet.</param>
    /// <param name="Bars">How many bars are written.</param>
    /// <param name="Parts">How many parts it has.</param>
    /// <param name="Remarks">Each thing that was not carried over as it was.</param>
    public sealed record Made(string Text, int Bars, int Parts, ImmutableArray<Remark> Remarks) : SheetImport
    {
        /// <summary>What was guessed in the file, or could not be read, at its place in the file's text.</summary>
        public ImmutableArray<Finding> InFile { get; init; } = [];
    }

    /// <summary>The file can't be used.</summary>
    public sealed record Refused(string Reason, string Remedy) : SheetImport;

    /// <summary>Reads a file as what it begins like: MIDI, MusicXML, plain or compressed, or else plain-text tab.</summary>
    public static SheetImport Read(byte[] file) => (MidiReader.IsMidi(file) ? MidiReader.Read(file) : IsXml(file) ? MusicXmlReader.Read(file) : TextTabReader.Read(file)) switch
    {
        ImportResult.Made made => Write(made),
        ImportResult.Refused refused => new Refused(refused.Reason, refused.Remedy),
        _ => throw new InvalidOperationException(),
    };

    // XML begins with a pointed bracket, in whatever encoding; a compressed score is a zip archive.
    private static bool IsXml(byte[] file)
    {
        var start = file.AsSpan(0, Math.Min(file.Length, 512));
        if (start is [(byte)'P', (byte)'K', ..]) return true;
        foreach (var b in start)
        {
            if (b == '<') return true;
            if (b is not (0 or 0xEF or 0xBB or 0xBF or 0xFE or 0xFF) && b > ' ') return false;
        }
        return file.Length == 0;
    }

    private static SheetImport Write(ImportResult.Made made)
    {
        var sheet = SheetWriter.Write(made.Song);
        var bound = SongWorkspace.Open(new SourceText(sheet.Text, ""));
        // What no rule of the readers has foreseen: better no sheet than one with errors in it.
        if (bound.Findings.FirstOrDefault(f => f.Severity == Severity.Error) is { } error)
            return new Refused($"Its music makes a sheet that has an error: {error.Message}", "Mend that place in the program the file comes from, and export it again.");
        return new Made(sheet.Text, made.Song.Bars.Count, made.Song.Parts.Count, [.. made.Remarks, .. sheet.Remarks])
        {
            InFile = [.. made.Findings.Select(TextTabDiagnostics.Of)],
        };
    }
}
