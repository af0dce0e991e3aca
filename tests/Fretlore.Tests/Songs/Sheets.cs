using Fretlore.Binding;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Tests.Songs;

/// <summary>Songs from real sheets.</summary>
public static class Sheets
{
    /// <summary>The top of a sheet for a six-string guitar in the usual tuning, with one part called <c>guitar</c>.</summary>
    public const string Top = """
        title  Test Piece
        tuning E2 A2 D3 G3 B3 E4
        tempo  Q = 120

        part guitar "Guitar"

        """;

    /// <summary>Parses and binds a sheet that must be free of errors.</summary>
    public static BoundSong Bind(string text)
    {
        var bound = Read(text);
        Assert.True(!bound.HasErrors && bound.Song is not null, "The sheet has errors:\n" + Describe(bound, text));
        return bound;
    }

    /// <summary>Parses and binds any sheet.</summary>
    public static BoundSong Read(string text) => SongBinder.Bind(Sheet.Parse(text));

    /// <summary>The song of a sheet that must be free of errors.</summary>
    public static Song Song(string text) => Bind(text).Song!;

    /// <summary>A song of one guitar that plays <paramref name="music"/> in one section; <see cref="Top"/> stands before it.</summary>
    public static Song Line(string music) => Song(WithLine(music));

    /// <summary>The sheet of <see cref="Line"/>.</summary>
    public static string WithLine(string music) => Top + $"section All\n  guitar {music}\n";

    /// <summary>The findings, one a line, with what they point at.</summary>
    public static string Describe(BoundSong bound, string text)
    {
        var source = new SourceText(text);
        return string.Join('\n', bound.Diagnostics.Select(d => Describe(d, source)));
    }

    private static string Describe(Diagnostic found, SourceText source)
    {
        var (line, column) = source.PositionOf(found.Span.Start);
        var at = source.Text.Substring(found.Span.Start, found.Span.Length);
        return $"{line}:{column} {found.Severity} {found.Code} «{at}» {found.Message} {found.Remedy}";
    }
}
