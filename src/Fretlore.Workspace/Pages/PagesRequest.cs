using Fretlore.Engraving.Layout.Fretting;
using Fretlore.Engraving.Layout;
using Fretlore.Engraving.Output;
using Fretlore.Music;
using Fretlore.Music.Chords;

namespace Fretlore.Workspace.Pages;

/// <summary>What pages are written as.</summary>
public enum PageForm
{
    /// <summary>One file of all pages, to print.</summary>
    Pdf,

    /// <summary>A file for each page, for the web.</summary>
    Svg,

    /// <summary>A picture of each page, for film.</summary>
    Png,
}

/// <summary>Pages asked for.</summary>
public sealed record PagesRequest
{
    public PaperPreset Paper { get; init; } = PaperPreset.A4;

    /// <summary>Staff with tablature, or one of them.</summary>
    public Notation Show { get; init; }

    /// <summary>Indexes into the song's parts; empty for all.</summary>
    public ValueList<int> Parts { get; init; }

    /// <summary>How chord symbols are written.</summary>
    public ChordStyle SymbolStyle { get; init; }

    /// <summary>Whether each note's degree stands below it.</summary>
    public bool Degrees { get; init; }

    /// <summary>What of the hands stands on the pages.</summary>
    public HandSignOptions Hands { get; init; } = HandSignOptions.Printed;

    public PageForm Form { get; init; }

    /// <summary>The one page wanted, from 1; null for all.</summary>
    public int? Page { get; init; }

    /// <summary>Pixels across a picture; null to go by <see cref="DotsPerInch"/>.</summary>
    public int? PixelsAcross { get; init; }

    /// <summary>Pixels of a picture for each inch of paper.</summary>
    public double DotsPerInch { get; init; } = 150;

    /// <summary>What is behind the ink of a picture.</summary>
    public PictureGround Ground { get; init; }
}

/// <summary>Pages as files, or why there are none.</summary>
public abstract record PagesResult
{
    private PagesResult()
    {
    }

    /// <summary>The pages.</summary>
    /// <param name="Files">Each with its page's number; 0 for a file of all of them.</param>
    /// <param name="PageCount">How many pages the song has.</param>
    /// <param name="Cautions">What to know before handing them out, whole sentences.</param>
    public sealed record Made(ValueList<(int Page, byte[] Bytes)> Files, int PageCount, ValueList<string> Cautions) : PagesResult;

    /// <summary>No pages can be made as asked.</summary>
    /// <param name="Reason">What is wrong, a whole sentence.</param>
    /// <param name="Remedy">What to do about it, a whole sentence.</param>
    public sealed record Refused(string Reason, string Remedy) : PagesResult;
}
