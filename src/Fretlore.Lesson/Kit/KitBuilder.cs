using System.Collections.Immutable;
using Fretlore.Lesson.Kit.Sections;
using Fretlore.Music;

namespace Fretlore.Lesson.Kit;

/// <summary>Makes a song's kit in memory, section by section, and the list of them all.</summary>
/// <remarks>The same song and options give the same bytes.</remarks>
public static class KitBuilder
{
    private const double ReadingWeight = 0.1;

    /// <summary>What a kit is made of, in the order its files are listed.</summary>
    private static ImmutableArray<IKitSection> SectionsOf(KitOptions options) =>
    [
        new PagesSection(),
        new MusicXmlSection(),
        new MidiSection(),
        new TextTabSection(),
        new ScriptSection(),
        new FilmSection(),
        new HandsSection(),
        new LickSection(),
        new HandOutSection(),
        .. options.SoundRoom is null ? (ImmutableArray<IKitSection>)[] : [new SoundSection()],
        new PracticeSection(),
        new ExcerptSection(),
    ];

    /// <param name="given">The song and how its kit was asked for.</param>
    /// <param name="progress">Told as each piece of work begins, and while it goes on; one call at a time, from several threads.</param>
    /// <exception cref="OperationCanceledException">The source was told to stop.</exception>
    /// <exception cref="IOException">There is no room to work the sound out in.</exception>
    public static KitResult Build(KitSource given, Action<KitMoment>? progress = null)
    {
        using var ending = CancellationTokenSource.CreateLinkedTokenSource(given.Stop);
        var source = given.StoppedBy(ending.Token);
        var sections = SectionsOf(source.Options);
        var shares = new KitShares(progress, ReadingWeight + sections.Sum(section => section.Weight));
        shares.Begin("Reading the music");
        _ = source.Reading;
        shares.Piece(ReadingWeight)(1);
        source.Cache?.Begin(earlier => KitSound.IsQuick(source, earlier));

        var files = ImmutableArray.CreateBuilder<KitFile>();
        var cautions = new List<string>();
        foreach (var made in new SectionsAtOnce(source, sections, shares, ending).Make())
        {
            if (made is SectionResult.Refused refused) return new KitResult.Refused(refused.Reason, refused.Remedy);
            var (itsFiles, itsCautions) = (SectionResult.Made)made;
            files.AddRange(itsFiles);
            cautions.AddRange(itsCautions);
        }
        files.AddRange(KitArchives.Of(KitFile.NameOfTitle(source.Song.Info.Title), files.ToImmutable()));
        files.Add(List(source, files).ToFile());
        return new KitResult.Made(new LessonKit(new ValueList<KitFile>(files.DrainToImmutable())), [.. cautions]);
    }

    private static KitList List(KitSource source, IEnumerable<KitFile> files)
    {
        var (song, options) = (source.Song, source.Options);
        var parts = song.Parts.Items.Where((_, index) => options.Parts.Count == 0 || options.Parts.Contains(index)).Select(part => part.Name);
        var entries = files.Select(file => new KitListEntry(file.Path, file.Purpose, file.Bytes.Length, file.Sha256)
        {
            Audience = file.Audience.ToString().ToLowerInvariant(),
        });
        var version = typeof(KitList).Assembly.GetName().Version!.ToString(3);
        return new KitList(version, song.Info.Title, song.Info.Artist, options.Paper.Name, [.. parts], [.. entries])
        {
            Credits = song.Info.Credits,
            Rights = song.Info.Rights,
            Permission = song.Info.Permission,
            Reminder = KitList.LicenceReminder,
            Music = [.. song.Parts.Select(part => new KitPart(part.Name, part.Title, [.. song.Bars.Select(bar => bar.Number)], [.. BarPrint.Of(song, part)]))],
            Sections = [.. song.Sections.Select(section => new KitStretch(section.Name, section.FirstBar, section.BarCount))],
        };
    }
}
