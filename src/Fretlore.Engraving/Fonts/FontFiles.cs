using Fretlore.Engraving.Drawing;

namespace Fretlore.Engraving.Fonts;

/// <summary>The font files that travel inside this assembly.</summary>
internal static class FontFiles
{
    public const string Music = "Bravura.otf";
    public const string MusicMetadata = "Bravura.metadata.json";

    public static string Of(Face face) => face switch
    {
        Face.Serif => "SourceSerif4-Regular.ttf",
        Face.SerifItalic => "SourceSerif4-Italic.ttf",
        Face.SerifBold => "SourceSerif4-Bold.ttf",
        Face.Sans => "SourceSans3-Regular.ttf",
        Face.SansBold => "SourceSans3-SemiBold.ttf",
        _ => throw new ArgumentOutOfRangeException(nameof(face), face, "No such face."),
    };

    public static byte[] Read(string name)
    {
        using var stream = typeof(FontFiles).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The font file {name} is not in this assembly.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
