using System.Text;

namespace Fretlore.Practice.Template;

/// <summary>The practice page without a song: one HTML file with its own code, style and sound worklet inside.</summary>
/// <remarks>It is built from <c>web/</c> with npm. A build made without npm has none.</remarks>
internal static class PageTemplate
{
    private const string Resource = "practice.html";

    /// <summary>Where the song's title stands, and where its data do.</summary>
    public const string TitleMark = "<!--TITLE-->", SongMark = "<!--SONG-->";

    /// <summary>The template; null when this build was made without it.</summary>
    public static string? Read()
    {
        using var stream = typeof(PageTemplate).Assembly.GetManifestResourceStream(Resource);
        if (stream is null) return null;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
