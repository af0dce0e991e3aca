using System.CommandLine;
using System.Globalization;
using Fretlore.Cli.Files;
using Fretlore.Cli.Output;
using Fretlore.Engraving.Layout.Fretting;
using Fretlore.Engraving.Layout;
using Fretlore.Engraving.Output;
using Fretlore.Music.Chords;
using Fretlore.Score;
using Fretlore.Workspace.Pages;
using Fretlore.Workspace.Questions;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore pages</c>: engraves a song into a PDF, or into SVG or PNG pictures of any size.</summary>
internal static class PagesVerb
{
    private sealed record Asked(
        string Sheet, string Output, string Paper, string Show, string? Parts, int? Page, double Dpi, int? Width, string Ground, string Symbols, bool Degrees,
        HandSignOptions Hands);

    public static Verb Make(Surroundings surroundings)
    {
        var sheet = new Argument<string>("SHEET") { Description = "The sheet, NAME.lore; - reads it from the standard input." };
        var output = new Option<string>("--output", "-o")
        {
            Description = "The file to write: NAME.pdf, or NAME.svg or NAME.png for pictures; with several pages these become NAME-1.png, NAME-2.png and so on.",
            HelpName = "FILE",
            Required = true,
        };
        var paper = new Option<string>("--paper") { Description = "The paper, or a phone's or film's frame.", DefaultValueFactory = _ => "a4" };
        paper.AcceptOnlyFromAmong([.. PaperPreset.All.Select(p => p.Name)]);
        var show = new Option<string>("--show") { Description = "Staff with tablature, or one of them.", DefaultValueFactory = _ => "both" };
        show.AcceptOnlyFromAmong("both", "tab", "staff");
        var parts = new Option<string?>("--parts") { Description = "Only these parts, by their short names with commas between.", HelpName = "NAMES" };
        var page = new Option<int?>("--page") { Description = "Only this page.", HelpName = "NUMBER" };
        var dpi = new Option<double>("--dpi") { Description = "Pixels of a PNG for each inch of paper.", HelpName = "NUMBER", DefaultValueFactory = _ => 150 };
        var width = new Option<int?>("--width") { Description = "Pixels across a PNG, instead of --dpi: 1920 for a film frame.", HelpName = "PIXELS" };
        var ground = new Option<string>("--ground")
        {
            Description = "What is behind a PNG's ink: white paper, clear to lay it over a bright film, or dark: clear, with white ink for a dark film.",
            DefaultValueFactory = _ => "white",
        };
        ground.AcceptOnlyFromAmong("white", "clear", "dark");
        var symbols = SymbolsOption();
        var degrees = DegreesOption();
        var verb = new Verb(
            "pages", "Engrave a song: a PDF to print, or SVG or PNG pictures of any size.",
            "fretlore pages my-song.lore -o my-song.pdf", "fretlore pages my-song.lore --paper slide --width 1920 --ground clear -o frames.png")
        {
            sheet, output, paper, show, parts, page, dpi, width, ground, symbols, degrees,
        };
        var hands = new HandSignFlags();
        hands.AddTo(verb);
        verb.SetAction(parsed => Run(surroundings, new Asked(
            parsed.GetRequiredValue(sheet), parsed.GetRequiredValue(output), parsed.GetRequiredValue(paper), parsed.GetRequiredValue(show),
            parsed.GetValue(parts), parsed.GetValue(page), parsed.GetValue(dpi), parsed.GetValue(width), parsed.GetRequiredValue(ground),
            parsed.GetRequiredValue(symbols), parsed.GetValue(degrees), hands.Read(parsed))));
        return verb;
    }

    /// <summary>How chord symbols are written.</summary>
    public static Option<string> SymbolsOption()
    {
        var symbols = new Option<string>("--symbols") { Description = "Chord symbols in letters (maj7, m7b5, dim) or with signs (triangle, circles, dash).", DefaultValueFactory = _ => "letters" };
        symbols.AcceptOnlyFromAmong("letters", "signs");
        return symbols;
    }

    /// <summary>Whether degrees stand below the notes.</summary>
    public static Option<bool> DegreesOption() => new("--degrees") { Description = "Say below each note which degree it is, above its chord's root or else above the key's tonic." };

    /// <summary>What <c>--show</c> asks for.</summary>
    public static Notation NotationOf(string word) => word switch
    {
        "tab" => Notation.Tab,
        "staff" => Notation.Staff,
        _ => Notation.StaffAndTab,
    };

    /// <summary>What <c>--symbols</c> asks for.</summary>
    public static ChordStyle StyleOf(string word) => word == "signs" ? ChordStyle.Signs : ChordStyle.Letters;

    private static int Run(Surroundings surroundings, Asked asked)
    {
        if (OpenedSheet.Open(surroundings, asked.Sheet, "No pages were made", out var code) is not var (workspace, song)) return code;
        if (FormOf(asked.Output) is not { } form) return WrongUse.Write(surroundings.Error, $"{asked.Output} is no name for pages.", "End it in .pdf, .svg or .png.");
        var request = RequestOf(asked, form, song);
        if (request.Misread is { } misread) return WrongUse.Write(surroundings.Error, misread);
        if (OutputPlace.RefuseFile(surroundings, asked.Output) is { } unfit) return unfit;
        return SongPages.Write(workspace, request.Value) switch
        {
            PagesResult.Refused refused => WrongUse.Write(surroundings.Error, refused.Reason, refused.Remedy),
            PagesResult.Made made => Write(surroundings, asked, made),
            _ => throw new InvalidOperationException("Pages are made or refused."),
        };
    }

    private static Answer<PagesRequest> RequestOf(Asked asked, PageForm form, Song song)
    {
        var parts = PartChoice.Read(asked.Parts, song);
        if (parts.Misread is { } misread) return misread;
        return new PagesRequest
        {
            Paper = PaperPreset.Find(asked.Paper) ?? PaperPreset.A4,
            Show = NotationOf(asked.Show),
            Parts = parts.Value,
            Hands = asked.Hands,
            Form = form,
            SymbolStyle = StyleOf(asked.Symbols),
            Degrees = asked.Degrees,
            Page = asked.Page,
            DotsPerInch = asked.Dpi,
            PixelsAcross = asked.Width,
            Ground = asked.Ground switch
            {
                "clear" => PictureGround.Clear,
                "dark" => PictureGround.ClearUnderWhiteInk,
                _ => PictureGround.White,
            },
        };
    }

    private static PageForm? FormOf(string output) => Path.GetExtension(output).ToLowerInvariant() switch
    {
        _ when output.Contains('\0') => null,
        ".pdf" => PageForm.Pdf,
        ".svg" => PageForm.Svg,
        ".png" => PageForm.Png,
        _ => null,
    };

    private static int Write(Surroundings surroundings, Asked asked, PagesResult.Made made)
    {
        foreach (var (page, bytes) in made.Files)
        {
            var path = made.Files.Count == 1 ? asked.Output : Numbered(asked.Output, page, made.PageCount);
            try
            {
                SafeFile.Write(surroundings.PathOf(path), (stream, _) => stream.Write(bytes));
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                return WrongUse.Write(surroundings.Error, $"{path} can't be written: {Reason.Of(e)}", "Choose another file with -o.");
            }
            surroundings.Out.WriteLine(page > 0
                ? $"{path}: page {page} of {made.PageCount}."
                : $"{path}: {(asked.Page is { } one ? $"page {one} of {made.PageCount}" : made.PageCount == 1 ? "1 page" : $"{made.PageCount} pages")}.");
        }
        foreach (var caution in made.Cautions) surroundings.Out.WriteLine(caution);
        surroundings.Out.WriteLine("If the song is someone else's, get a licence from its publisher before you publish its pages.");
        return ExitCode.Fine;
    }

    // As many digits as the last page has, so that files sort in order.
    private static string Numbered(string output, int page, int pages)
    {
        var digits = pages.ToString(CultureInfo.InvariantCulture).Length;
        var number = page.ToString(CultureInfo.InvariantCulture).PadLeft(digits, '0');
        return output[..^Path.GetExtension(output).Length] + "-" + number + Path.GetExtension(output);
    }
}
