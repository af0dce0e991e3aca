using Fretlore.Engraving.Layout.Fretting;
using Fretlore.Music;
using Fretlore.Music.Chords;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout;

/// <summary>A sheet of paper with the margins that stay blank, in millimetres.</summary>
public sealed record Paper(double Width, double Height, double SideMargin = 14, double TopMargin = 13, double BottomMargin = 13)
{
    /// <summary>Whether each page is looked at by itself, as on a screen: what it holds stands in the middle of its height.</summary>
    public bool IsFrame { get; init; }

    public static Paper A4 => new(210, 297);

    /// <summary>US Letter, 8.5 by 11 inches.</summary>
    public static Paper Letter => new(215.9, 279.4);

    /// <summary>A phone held upright, about 9:19, at the size music is read from it.</summary>
    public static Paper Phone => new(100, 205, 4, 5, 5);

    /// <summary>A film frame, 16:9, with a margin that players' controls may cover.</summary>
    public static Paper Slide => new(240, 135, 10, 8, 8) { IsFrame = true };
}

/// <summary>How a song is put on pages.</summary>
public sealed record PageOptions
{
    public Paper Paper { get; init; } = Paper.A4;

    /// <summary>Millimetres between two staff lines; 1.6 gives the 6.4 mm staff of printed folios.</summary>
    public double StaffSpace { get; init; } = 1.6;

    /// <summary>Indexes into the song's parts, in the order shown; empty for all.</summary>
    public ValueList<int> Parts { get; init; }

    /// <summary>What the pages are, for file metadata and under the title when parts are left out.</summary>
    public string Subject { get; init; } = "Full transcription";

    public Notation Show { get; init; }

    /// <summary>Whether every section begins a system with its metre, and the one before ends where it ends, as on a sheet of riffs.</summary>
    public bool SectionsStartSystems { get; init; }

    /// <summary>The share of the staff space that pages may be set at where that saves one or fills them clearly better: 0.9 for a tenth smaller, 1 for never.</summary>
    public double LeastShare { get; init; } = 1;

    /// <summary>Whether named shapes stand as chord frames under the title, or after the music where there are more than two rows of them.</summary>
    public bool ChordFrames { get; init; }

    /// <summary>Whether the signs the pages use are explained after the last bar.</summary>
    public bool Legend { get; init; }

    /// <summary>What of the hands stands on the pages.</summary>
    public HandSignOptions Hands { get; init; } = new();

    /// <summary>Whether chord symbols from the reading stand above the staff.</summary>
    public bool ChordSymbols { get; init; } = true;

    /// <summary>How chord symbols are written.</summary>
    public ChordStyle SymbolStyle { get; init; }

    /// <summary>Whether each note's degree stands below the tablature: above the chord's root, or above the key's tonic where no chord sounds.</summary>
    public bool Degrees { get; init; }

    /// <summary>How we print a song on a paper or show it on a screen.</summary>
    /// <param name="preset">The paper.</param>
    /// <param name="song">The song.</param>
    /// <param name="show">Staff, tablature or both.</param>
    /// <param name="parts">Indexes into the song's parts; empty for all.</param>
    public static PageOptions On(PaperPreset preset, Song song, Notation show, ValueList<int> parts) => new()
    {
        Paper = preset.Paper,
        StaffSpace = preset.StaffSpace,
        Show = show,
        ChordFrames = preset.Name != "slide",
        LeastShare = preset.LeastShare,
        Hands = HandSignOptions.Printed,
        Legend = preset.Name != "slide",
        Parts = parts,
        Subject = parts.Count == 0 || parts.Count == song.Parts.Count ? "Full transcription" : string.Join(", ", parts.Select(part => song.Parts[part].Title)),
    };
}
