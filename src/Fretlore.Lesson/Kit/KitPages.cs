using Fretlore.Hands.Picking;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Lesson.Kit;

/// <summary>Engraves the pages of a kit: the whole song, each part alone, and the riffs on a sheet.</summary>
internal sealed class KitPages(KitSource source)
{
    // Riffs are set smaller, down to the last of these, to come out on one page.
    private static readonly double[] RiffSizes = [1, 0.88, 0.78, 0.7];

    private readonly PageEngraver engraver = new(source.Fonts.Music, source.Fonts.Texts);
    private readonly Song song = source.Options.Hands.PlansStrokes ? PickingPlanner.Plan(source.Song).WrittenInto(source.Song) : source.Song;
    private readonly SongReading reading = source.Reading;
    private readonly KitOptions options = source.Options;

    /// <summary>How the whole song was asked for.</summary>
    public PageOptions Whole { get; } = PageOptions.On(source.Options.Paper, source.Song, source.Options.Show, source.Options.Parts) with
    {
        SymbolStyle = source.Options.SymbolStyle,
        Degrees = source.Options.Degrees,
        Hands = source.Options.Hands,
    };

    /// <summary>The whole song; systems that have not changed since the last kit are taken from there.</summary>
    public EngravingResult EngraveWhole()
    {
        var engraved = engraver.Engrave(song, reading, Whole, source.Hands, source.Cache?.Layout);
        if (source.Cache is { } cache && engraved is EngravingResult.Pages { Layout: { } layout }) cache.Layout = layout;
        return engraved;
    }

    /// <summary>Each shown part on pages of its own, when there are several.</summary>
    public IEnumerable<(Part Part, Document Pages)> EngraveParts()
    {
        var shown = options.Parts.Count > 0 ? options.Parts : Enumerable.Range(0, song.Parts.Count).ToValueList();
        if (shown.Count < 2) yield break;
        foreach (var index in shown)
        {
            var asked = Whole with { Parts = [index], Subject = song.Parts[index].Title };
            if (engraver.Engrave(song, reading, asked, source.Hands) is EngravingResult.Pages pages) yield return (song.Parts[index], pages.Document);
        }
    }

    /// <summary>The riffs, on one page where they can still be read there; null when the song has none.</summary>
    public Document? EngraveRiffs()
    {
        if (RiffSheet.Of(song, reading) is not var (sheet, own)) return null;
        Document? largest = null;
        foreach (var size in RiffSizes)
        {
            var asked = new PageOptions
            {
                Paper = options.Paper.Paper,
                StaffSpace = options.Paper.StaffSpace * size,
                Show = options.Show,
                Subject = "Riffs",
                Hands = options.Hands,
                SectionsStartSystems = true,
                SymbolStyle = options.SymbolStyle,
                Degrees = options.Degrees,
            };
            if (engraver.Engrave(sheet, own, asked, source.Hands) is not EngravingResult.Pages { Document: var pages }) break;
            if (pages.Pages.Count == 1) return pages;
            largest ??= pages;
            // A long list comes on several pages however small it is set.
            if (pages.Pages.Count > 3) break;
        }
        return largest;
    }
}
