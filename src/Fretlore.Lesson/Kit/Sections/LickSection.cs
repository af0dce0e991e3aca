using System.Collections.Immutable;
using Fretlore.Engraving.Layout;
using Fretlore.Engraving.Output;
using Fretlore.Exchange.Midi;
using Fretlore.Performance;
using Fretlore.Reading;

namespace Fretlore.Lesson.Kit.Sections;

/// <summary>
/// A card for each lick of the lesson: staff and tablature, why it matters, and the same lick in other positions and keys, each with fingers and how hard it is;
/// MIDI beside it. Its sound is made with the other sound.
/// </summary>
internal sealed class LickSection : IKitSection
{
    public string Doing => "Engraving lick cards";

    public double Weight => 0.6;

    public SectionResult Make(KitSource source, Action<double> progress)
    {
        var files = ImmutableArray.CreateBuilder<KitFile>();
        var engraver = new PageEngraver(source.Fonts.Music, source.Fonts.Texts);
        var licks = source.Licks;
        for (var i = 0; i < licks.Length; i++)
        {
            source.Stop.ThrowIfCancellationRequested();
            var lick = licks[i];
            files.AddRange(source.Once($"card {lick.Path}", (lick, source.Options), () => Card(lick, source, engraver)));
            progress((i + 1.0) / licks.Length);
        }
        return new SectionResult.Made(files.DrainToImmutable());
    }

    private static ImmutableArray<KitFile> Card(KitLick lick, KitSource source, PageEngraver engraver)
    {
        var (path, title, card) = (lick.Path, lick.Title, lick.Card);
        var options = source.Options;
        var asPages = new PageOptions
        {
            Paper = options.Paper.Paper, StaffSpace = options.Paper.StaffSpace, Show = options.Show, Subject = "Lick card", SectionsStartSystems = true, LeastShare = options.Paper.LeastShare,
        };
        var midi = KitFile.Written($"{path}.mid", $"{title} as on its card, all positions and keys one after another", stream => MidiWriter.Write(stream, Performer.Play(card)));
        if (engraver.Engrave(card, SongReader.Read(card), asPages) is not EngravingResult.Pages { Document: var pages }) return [midi];
        return [KitFile.Written($"{path}.pdf", $"{title} on a card: why it matters, and the same in other positions and keys, with fingers", stream => PdfWriter.Write(pages, source.Fonts, stream)), midi];
    }
}
