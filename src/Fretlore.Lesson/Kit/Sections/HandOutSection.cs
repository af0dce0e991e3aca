using System.Collections.Immutable;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Output;
using Fretlore.Lesson.HandOuts;

namespace Fretlore.Lesson.Kit.Sections;

/// <summary>Sheets beside the music: how to tune, the scales and the shapes, in the song's tuning.</summary>
internal sealed class HandOutSection : IKitSection
{
    public string Doing => "Drawing scales and shapes";

    public double Weight => 0.2;

    public object InputOf(KitSource source) => (source.SongAlone, source.Options);

    public SectionResult Make(KitSource source, Action<double> progress)
    {
        var (song, paper, texts) = (source.Song, source.Options.Paper.Paper, source.Fonts.Texts);
        var files = ImmutableArray.CreateBuilder<KitFile>();
        Add("sheets/tuning.pdf", "How to tune for the song, and strings for that tuning", TuningHandOut.Of(song, paper, texts), Audience.Everyone);
        Add("sheets/scales.pdf", "The scales of the song on the whole neck, in its tuning", ScaleHandOut.Of(song, source.Reading, paper, texts), Audience.Supporters);
        Add("sheets/shapes.pdf", "The shapes of the song, with what chords they are and why", ShapeHandOut.Of(song, source.Reading, paper, texts), Audience.Supporters);
        return new SectionResult.Made(files.DrainToImmutable());

        void Add(string path, string purpose, Document? document, Audience audience)
        {
            if (document is not null) files.Add(KitFile.Written(path, purpose, stream => PdfWriter.Write(document, source.Fonts, stream)) with { Audience = audience });
        }
    }
}
