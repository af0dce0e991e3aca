using System.Collections.Immutable;
using Fretlore.Binding;
using Fretlore.Reading;
using Fretlore.Syntax;

namespace Fretlore.Workspace.Sheets;

/// <summary>Where the sheet and the reading of its music disagree: FL3001 to FL3099.</summary>
internal static class ReadingDiagnostics
{
    /// <summary>A tone the symbol needs sounds nowhere.</summary>
    public static Diagnostic SymbolLacksNotes(TextSpan span, string symbol, string missing, string heard) => new(
        "FL3001", Severity.Warning, span, $"The sheet says {symbol} here, but no {missing} sounds; the notes make {heard}.",
        $"Write `(chord {heard})`, or nothing to have it computed, or check the frets.");

    /// <summary>Most of what sounds is not in the symbol.</summary>
    public static Diagnostic SymbolIsOtherChord(TextSpan span, string symbol, string heard) => new(
        "FL3002", Severity.Warning, span, $"The sheet says {symbol} here, but most of what sounds is not in it; the notes make {heard}.",
        $"Write `(chord {heard})`, or nothing to have it computed, or check the frets.");

    /// <summary>The symbol can't be read, so it is printed unchecked.</summary>
    public static Diagnostic SymbolNotRead(TextSpan span, string symbol) => new(
        "FL3003", Severity.Hint, span, $"{symbol} is no chord symbol that can be compared with the notes; it is printed as it stands.",
        "Write a root and what is on it, such as `F#m7` or `D/F#`, if a chord is meant.");

    /// <summary>What the stated symbols of a song disagree with. A riff that is played often is told of once.</summary>
    internal static ImmutableArray<Diagnostic> Of(SongReading reading, BoundSong song) =>
    [
        .. reading.Parts.SelectMany(p => p.Conflicts).Select(c => Of(c, song.Symbols.TryGetValue(c.At, out var stated) ? stated : song.SpanOf(c.At)))
            .DistinctBy(d => (d.Span.Start, d.Code)),
    ];

    private static Diagnostic Of(SymbolConflict conflict, TextSpan span) => conflict switch
    {
        { Heard: null } => SymbolNotRead(span, conflict.Symbol),
        { Missing: [] } => SymbolIsOtherChord(span, conflict.Symbol, conflict.Heard),
        _ => SymbolLacksNotes(span, conflict.Symbol, string.Join(" and no ", conflict.Missing), conflict.Heard),
    };
}
