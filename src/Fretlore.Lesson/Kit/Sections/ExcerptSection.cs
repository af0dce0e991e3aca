using System.Collections.Immutable;
using Fretlore.Engraving.Layout;
using Fretlore.Engraving.Output;
using Fretlore.Exchange.Midi;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.Excerpts;
using Fretlore.Performance;
using Fretlore.Reading;

namespace Fretlore.Lesson.Kit.Sections;

/// <summary>What may be given away: the bars the sheet chooses as pages, sound, MIDI and practice page, and nothing of the others.</summary>
internal sealed class ExcerptSection : IKitSection
{
    public string Doing => "Cutting the free excerpt";

    public double Weight => 0.5;

    // Nothing but its own bars: however the rest of the song changes, what was given away stays as it is.
    public object InputOf(KitSource source) => (Excerpt.Of(source.Song, source.Reading) ?? (object)"none", source.Song.Lesson?.Excerpt ?? (object)"none", source.Options);

    public SectionResult Make(KitSource source, Action<double> progress)
    {
        if (source.Song.Lesson?.Excerpt is not { } asked) return new SectionResult.Made([]);
        if (Excerpt.Of(source.Song, source.Reading) is not { } excerpt)
        {
            return new SectionResult.Made([], $"There is no free excerpt: {asked} is no stretch of the song. Name a section, or bars of the song.");
        }
        var files = ImmutableArray.CreateBuilder<KitFile>();
        var asPages = PageOptions.On(source.Options.Paper, excerpt, source.Options.Show, []) with { Subject = "Free excerpt" };
        var engraved = new PageEngraver(source.Fonts.Music, source.Fonts.Texts).Engrave(excerpt, SongReader.Read(excerpt), asPages);
        if (engraved is EngravingResult.Pages { Document: var pages })
        {
            files.Add(KitFile.Written("excerpt/pages.pdf", "The free excerpt to print: the chosen bars and nothing else", stream => PdfWriter.Write(pages, source.Fonts, stream)) with { Audience = Audience.Everyone });
        }
        progress(0.4);
        files.Add(KitFile.Written("excerpt/excerpt.mid", "The free excerpt as it sounds", stream => MidiWriter.Write(stream, Performer.Play(excerpt))) with { Audience = Audience.Everyone });
        // A source of its own, so that sound and page can't know more than the excerpt.
        var cut = new KitSource(excerpt, () => SongReader.Read(excerpt), () => HandPlanner.Plan(excerpt), source.Options, source.Stop);
        if (cut.Sound() is { } sound) files.Add(new KitFile("excerpt/sound.opus", sound.Full, "The free excerpt to listen to") { Audience = Audience.Everyone });
        progress(0.8);
        if (new PracticeSection().Make(cut, _ => { }) is SectionResult.Made { Files: [var page] })
        {
            files.Add(page with { Path = "excerpt/practice.html", Purpose = "The free excerpt to practise with: open it in a browser, no network needed", Audience = Audience.Everyone });
        }
        return new SectionResult.Made(files.DrainToImmutable());
    }
}
