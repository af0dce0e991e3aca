using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout;
using Fretlore.Engraving.Output;
using Fretlore.Hands.Grips;
using Fretlore.Lesson.Kit;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Syntax;
using Fretlore.Workspace;

namespace Fretlore.Bench;

/// <summary>The ways through the house that are measured, each from the text on.</summary>
internal static class Stages
{
    public static object TextToTree(string sheet) => Sheet.Parse(sheet);

    public static object TextToSong(string sheet) => Open(sheet).Song!;

    public static object TextToReading(string sheet) => Open(sheet).Reading;

    public static object TextToHands(string sheet) => Open(sheet).PlanHands(new PlayingHand(HandSize.Average));

    /// <summary>The reading alone, of a song that is bound already.</summary>
    public static object SongToReading(Song song) => SongReader.Read(song);

    public static Song Song(string sheet) => Open(sheet).Song!;

    /// <summary>Pages laid out but not written: what is over the reading's time is layout.</summary>
    public static object TextToPages(string sheet, FontLibrary fonts)
    {
        var open = Open(sheet);
        return new PageEngraver(fonts.Music, fonts.Texts).Engrave(open.Song!, open.Reading, new PageOptions());
    }

    /// <summary>Fonts are loaded once, as where pages are drawn anew at each change of the text.</summary>
    public static object TextToPictures(string sheet, FontLibrary fonts)
    {
        var open = Open(sheet);
        var pages = new PageEngraver(fonts.Music, fonts.Texts).Engrave(open.Song!, open.Reading, new PageOptions());
        return SvgWriter.Write(((EngravingResult.Pages)pages).Document, fonts);
    }

    /// <summary>Everything but writing to disk; fonts are loaded anew.</summary>
    public static object TextToKit(string sheet) => (KitResult.Made)Open(sheet).MakeKit(new KitOptions());

    private static SongWorkspace Open(string sheet) => SongWorkspace.Open(new SourceText(sheet, "bench.lore"));
}
