using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Engraving.Layout;
using Fretlore.Engraving.Output;
using Fretlore.Exchange.Midi;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Lesson.Licks;
using Fretlore.Lesson.Plans;
using Fretlore.Lesson.Script;
using Fretlore.Lesson.Subjects;
using Fretlore.Performance;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Output;

namespace Fretlore.Lesson.Kit.Sections;

/// <summary>A card for each lick of the lesson: staff and tablature, why it matters, and the same lick in other positions and keys, each with fingers and how hard it is; its sound and MIDI beside it.</summary>
internal sealed class LickSection : IKitSection
{
    /// <summary>A line longer than this is no lick.</summary>
    private const int MostBars = 8;

    public string Doing => "Engraving lick cards";

    public double Weight => 0.6;

    public SectionResult Make(KitSource source, Action<double> progress)
    {
        var licks = Licks(source).ToArray();
        var files = ImmutableArray.CreateBuilder<KitFile>();
        var engraver = new PageEngraver(source.Fonts.Music, source.Fonts.Texts);
        var cards = new LickCard(source.Song, source.Reading.Home);
        for (var i = 0; i < licks.Length; i++)
        {
            source.Stop.ThrowIfCancellationRequested();
            var (subject, riff) = licks[i];
            var tempo = subject.Places.Count > 0 ? TempoText.At(source.Song, subject.Places[0].FirstBar) : TempoText.At(source.Song, 0);
            var title = ScriptWriter.Capital(SpokenName.Of(subject.What.ToString()));
            var card = LickCardSong.Of(source.Song, title, subject.Why.ToString(), tempo, cards.Of(riff, tempo));
            var asPages = new PageOptions
            {
                Paper = source.Options.Paper.Paper, StaffSpace = source.Options.Paper.StaffSpace, Show = source.Options.Show, Subject = "Lick card",
                SectionsStartSystems = true, LeastShare = source.Options.Paper.LeastShare,
            };
            var path = string.Create(CultureInfo.InvariantCulture, $"licks/{i + 1:00}-{KitFile.NameOf(subject.What.ToString())}");
            if (engraver.Engrave(card, SongReader.Read(card), asPages) is EngravingResult.Pages { Document: var pages })
            {
                files.Add(KitFile.Written($"{path}.pdf", $"{title} on a card: why it matters, and the same in other positions and keys, with fingers", stream => PdfWriter.Write(pages, source.Fonts, stream)));
            }
            files.Add(KitFile.Written($"{path}.mid", $"{title} as on its card, all positions and keys one after another", stream => MidiWriter.Write(stream, Performer.Play(card))));
            if (Sound(source, card, riff.Bars.Count) is { } mix) files.Add(KitFile.Written($"{path}.opus", $"{title} to listen to, as in the song, alone", stream => Write(source, mix, stream)));
            progress((i + 1.0) / licks.Length);
        }
        return new SectionResult.Made(files.DrainToImmutable());
    }

    // Of the card's song only the lick as it is played: the others are in the MIDI file.
    private static SongMix? Sound(KitSource source, Song card, int bars) =>
        source.Options.SoundRoom is not null && SongMixer.Prepare(card, new SoundRequest { FromBar = 1, ToBar = bars }) is SoundResult.Ready { Mix: var mix } ? mix : null;

    private static void Write(KitSource source, SongMix mix, Stream stream)
    {
        using var scratch = source.Options.SoundRoom!();
        SoundFile.Write(mix, scratch, stream, SoundFormat.Opus, StemFiles.StemBitsASecond, cancel: source.Stop);
    }

    // What the lesson's steps teach, whether there is time for it on film or not.
    private static IEnumerable<(Subject Subject, Riff Riff)> Licks(KitSource source)
    {
        if (source.Film is not FilmPlanResult.Made { Plan: var plan }) return [];
        return plan.Steps.Select(s => s.Step).Concat(plan.LeftOut.Select(l => l.Step)).SelectMany(step => step.Subjects)
            .Where(s => s.Kind is SubjectKind.Riff or SubjectKind.Passage && s.Lines is [{ Riff.Bars.Count: <= MostBars }])
            .Where(s => s.Lines[0].Riff.Content.Any(bar => bar.Notes.Any()))
            .DistinctBy(s => s.What).Select(s => (s, s.Lines[0].Riff));
    }
}
