using Fretlore.Binding;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout;
using Fretlore.Lesson.Kit;
using Fretlore.Music.Chords;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Syntax;
using Fretlore.Tests.Engraving.Layout;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Engraving.Golden;

/// <summary>The pages that were looked at and kept as pictures. Spelled by key and without a reading's chord names, so that only engraving changes them; pages with degrees are read.</summary>
internal static class GoldenPages
{
    private static readonly FontLibrary Fonts = new();

    private static readonly PageOptions Printed = new() { ChordFrames = true, Legend = true };

    public static IReadOnlyDictionary<string, Func<DrawnPage>> All { get; } = new Dictionary<string, Func<DrawnPage>>
    {
        ["every-sign-1"] = () => Page(StudySongs.EverySign(), Printed, 0),
        ["every-sign-tab"] = () => Page(StudySongs.EverySign(), Printed with { Show = Notation.Tab }, 0),
        ["every-sign-staff"] = () => Page(StudySongs.EverySign(), Printed with { Show = Notation.Staff }, 0),
        ["every-sign-slide"] = () => Page(StudySongs.EverySign(), On("slide"), 1),
        ["two-guitars-1"] = () => Page(StudySongs.TwoGuitars(12), Printed, 0),
        ["two-voices"] = () => Page(StudySongs.TwoVoices(), Printed, 0),
        ["two-voices-tab"] = () => Page(StudySongs.TwoVoices(), Printed with { Show = Notation.Tab }, 0),
        ["two-voices-phone"] = () => Page(StudySongs.TwoVoices(), On("phone"), 0),
        ["bar-signs-1"] = () => Page(StudySongs.BarSigns(), Printed, 0),
        ["ornaments"] = () => Page(StudySongs.JumpsAndOrnaments(), Printed, 0),
        ["ornaments-staff"] = () => Page(StudySongs.JumpsAndOrnaments(), Printed with { Show = Notation.Staff }, 0),
        ["kestrel-1"] = () => Page(Demo("kestrel-over-slate"), Printed, 0),
        ["kestrel-2"] = () => Page(Demo("kestrel-over-slate"), Printed, 1),
        ["kestrel-lead-tab"] = () => Page(Demo("kestrel-over-slate"), Printed with { Show = Notation.Tab, Parts = [0] }, 0),
        ["lanterns-2"] = () => Page(Demo("lanterns-on-the-weir"), Printed, 1),
        ["salt-furnace-5"] = () => Page(Demo("salt-furnace"), Printed, 4),
        ["salt-furnace-riffs"] = Riffs,
        ["kestrel-degrees-1"] = () => ReadPage("kestrel-over-slate", Printed with { Degrees = true, SymbolStyle = ChordStyle.Signs }, 0),
        ["lanterns-degrees-tab"] = () => ReadPage("lanterns-on-the-weir", Printed with { Degrees = true, Show = Notation.Tab }, 0),
        ["qualities-signs"] = () => ReadPage(StudySongs.Qualities(), Printed with { SymbolStyle = ChordStyle.Signs }, 0),
    };

    private static PageOptions On(string paper) => Printed with { Paper = PaperPreset.Find(paper)!.Paper, StaffSpace = PaperPreset.Find(paper)!.StaffSpace };

    private static DrawnPage Page(Song song, PageOptions options, int page) => PageFacts.Engrave(song, options).Pages[page];

    private static DrawnPage ReadPage(string demo, PageOptions options, int page) => ReadPage(Demo(demo), options, page);

    private static DrawnPage ReadPage(Song song, PageOptions options, int page) => Assert.IsType<EngravingResult.Pages>(
        new PageEngraver(Fonts.Music, Fonts.Texts).Engrave(song, SongReader.Read(song), options)).Document.Pages[page];

    private static DrawnPage Riffs()
    {
        var song = Demo("salt-furnace");
        var (sheet, _) = RiffSheet.Of(song, Studies.SpelledByKey(song))!.Value;
        return PageFacts.Engrave(sheet with { NoteCount = song.NoteCount }, Printed with { SectionsStartSystems = true, Legend = false }).Pages[0];
    }

    private static Song Demo(string name) => SongBinder.Bind(Sheet.Parse(File.ReadAllText(Path.Combine(Repository.Root, "demo", name + ".lore")))).Song!;
}
