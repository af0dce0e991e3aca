using System.CommandLine;
using Fretlore.Cli.Files;
using Fretlore.Engraving.Layout;
using Fretlore.Lesson.Kit;

namespace Fretlore.Cli.Verbs;

/// <summary>The options that say how a kit is made, whether once or at each save.</summary>
internal sealed class KitFlags
{
    private readonly Option<string> output = new("--output", "-o")
    {
        Description = "The folder to make: new, empty or an earlier kit. Files in it that are not the kit's stay as they are.",
        HelpName = "FOLDER",
        Required = true,
    };

    private readonly Option<string> paper = new("--paper") { Description = "The pages' paper, or a phone's or film's frame.", DefaultValueFactory = _ => "a4" };
    private readonly Option<string> show = new("--show") { Description = "Staff with tablature, or one of them.", DefaultValueFactory = _ => "both" };

    private readonly Option<string?> parts = new("--parts")
    {
        Description = "Parts on the pages, by their short names with commas between; all when not given. The other files have all parts.",
        HelpName = "NAMES",
    };

    private readonly Option<string> symbols = PagesVerb.SymbolsOption();
    private readonly Option<bool> degrees = PagesVerb.DegreesOption();
    private readonly Option<bool> noSound = new("--no-sound") { Description = "Leave the sound out: it takes longest." };
    private readonly HandSignFlags hands = new();

    public KitFlags()
    {
        paper.AcceptOnlyFromAmong([.. PaperPreset.All.Select(p => p.Name)]);
        show.AcceptOnlyFromAmong("both", "tab", "staff");
    }

    /// <summary>Puts them on a verb.</summary>
    public void AddTo(Command verb)
    {
        foreach (var option in (Option[])[output, paper, show, parts, symbols, degrees, noSound]) verb.Add(option);
        hands.AddTo(verb);
    }

    /// <summary>The kit's folder, as typed.</summary>
    public string FolderOf(ParseResult parsed) => parsed.GetRequiredValue(output);

    public KitWish Read(ParseResult parsed) => new(
        new KitOptions
        {
            Paper = PaperPreset.Find(parsed.GetRequiredValue(paper)) ?? PaperPreset.A4,
            Show = PagesVerb.NotationOf(parsed.GetRequiredValue(show)),
            SymbolStyle = PagesVerb.StyleOf(parsed.GetRequiredValue(symbols)),
            Degrees = parsed.GetValue(degrees),
            Hands = hands.Read(parsed),
            SoundRoom = parsed.GetValue(noSound) ? null : ScratchFile.Open,
        },
        parsed.GetValue(parts));
}
