using Fretlore.Music;

namespace Fretlore.Engraving.Drawing;

/// <summary>One page of marks. Every writer (SVG, PDF, PNG) and the collision checker only read this.</summary>
/// <param name="Width">In staff spaces.</param>
/// <param name="Height">In staff spaces.</param>
/// <param name="StaffSpace">Millimetres one staff space takes in print.</param>
/// <param name="Marks">From back to front.</param>
public sealed record DrawnPage(double Width, double Height, double StaffSpace, ValueList<Mark> Marks);

/// <summary>All pages of one engraved thing, with what is said about it in file metadata.</summary>
/// <param name="Title">The song's title.</param>
/// <param name="Author">The artist, or null.</param>
/// <param name="Subject">What it is, such as "Full transcription".</param>
/// <param name="Pages">In order; at least one.</param>
/// <param name="Bookmarks">Section names with the page they start on (from 0).</param>
public sealed record Document(string Title, string? Author, string Subject, ValueList<DrawnPage> Pages, ValueList<Bookmark> Bookmarks)
{
    /// <summary>The language of the title and the sections' names, as a language tag; null when it was not said. Our own words are English.</summary>
    public string? Language { get; init; }

    /// <summary>One page as a document of its own, with its bookmarks.</summary>
    /// <param name="page">Its index.</param>
    public Document OnlyPage(int page) => this with
    {
        Pages = [Pages[page]],
        Bookmarks = [.. Bookmarks.Where(b => b.Page == page).Select(b => b with { Page = 0 })],
    };
}

/// <summary>An entry of a document's outline.</summary>
/// <param name="Title">As shown.</param>
/// <param name="Page">Page index from 0.</param>
/// <param name="At">The place on that page, in staff spaces.</param>
public sealed record Bookmark(string Title, int Page, Point At);
