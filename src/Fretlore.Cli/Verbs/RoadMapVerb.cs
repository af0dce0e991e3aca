using System.CommandLine;
using Fretlore.Cli.Files;
using Fretlore.Cli.Output;
using Fretlore.RoadMaps.Model;
using Fretlore.Workspace;
using Fretlore.Workspace.RoadMaps;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore roadmap</c>: solos by rules.</summary>
internal static class RoadMapVerb
{
    private const string Undone = "No road map was read";

    public static Verb Make(Surroundings surroundings)
    {
        var sheet = new Argument<string?>("SHEET") { Description = "The sheet, NAME.lore; - reads it from the standard input.", Arity = ArgumentArity.ZeroOrOne };
        var name = new Argument<string?>("NAME") { Description = "The road map.", Arity = ArgumentArity.ZeroOrOne };
        var section = new Option<string?>("--section") { Description = "The section it is played in; the first when not given.", HelpName = "NAME" };
        var takes = new Option<int?>("--takes") { Description = "Write so many whole solos, each as a sheet with the solo in the road map's place.", HelpName = "NUMBER" };
        var seed = new Option<int>("--seed") { Description = "Which solos: the same number gives the same ones.", HelpName = "NUMBER", DefaultValueFactory = _ => 1 };
        var level = new Option<string?>("--level") { Description = "easy, medium or full; from easy to full when not given.", HelpName = "LEVEL" };
        var check = new Option<string?>("--check") { Description = "Say which rules this solo keeps and breaks: a sheet of the same song, or of the solo alone.", HelpName = "SOLO.lore" };
        var part = new Option<string?>("--part") { Description = "The part of the solo's sheet that plays it.", HelpName = "NAME" };
        var from = new Option<int?>("--from") { Description = "The number of the solo's first bar in its sheet.", HelpName = "BAR" };
        var propose = new Option<string[]>("--propose") { Description = "Find the road map of three takes or more, sheets of the same song with the solo written out.", HelpName = "TAKE.lore ...", AllowMultipleArgumentsPerToken = true };
        var called = new Option<string>("--name") { Description = "What the proposed road map is called.", HelpName = "NAME", DefaultValueFactory = _ => "solo-map" };
        var phrases = new Option<string?>("--phrases") { Description = "A file with weights of the phrase model in place of the usual ones.", HelpName = "FILE.json" };
        var print = new Option<bool>("--print-phrases") { Description = "Print the phrase model: all weights as they usually are." };
        var output = new Option<string?>("--output", "-o") { Description = "The folder for the takes, NAME-takes when not given; with --propose the sheet to make.", HelpName = "FOLDER" };
        var replace = new Option<bool>("--replace") { Description = "Replace what is there already." };
        var json = new Option<bool>("--json") { Description = "Print the answer as JSON." };
        var verb = new Verb(
            "roadmap", "Play a road map out into whole solos, hold a solo against its rules, or find one in several takes.",
            "fretlore roadmap my-song.lore descent --takes 5 --seed 7", "fretlore roadmap my-song.lore descent --check my-solo.lore", "fretlore roadmap --propose take-1.lore take-2.lore take-3.lore --name descent", "fretlore roadmap --print-phrases > phrases.json")
        {
            sheet, name, section, takes, seed, level, check, part, from, propose, called, phrases, print, output, replace, json,
        };
        verb.SetAction(parsed =>
        {
            if (parsed.GetValue(print))
            {
                surroundings.Out.Write(PhraseModelText.Write(new PhraseModel()));
                return ExitCode.Fine;
            }
            if (parsed.GetValue(propose) is { Length: > 0 } takePaths)
            {
                var read = new List<SongWorkspace>();
                foreach (var takePath in takePaths)
                {
                    if (OpenedSheet.Open(surroundings, takePath, Undone, out var takeCode) is not { Workspace: var take }) return takeCode;
                    read.Add(take);
                }
                var proposal = new ProposalQuestion(parsed.GetRequiredValue(called), parsed.GetValue(part), parsed.GetValue(section));
                return ProposalWriter.Run(surroundings, read, proposal, parsed.GetValue(output), parsed.GetValue(replace), parsed.GetValue(json));
            }
            if (parsed.GetValue(sheet) is not { } path || parsed.GetValue(name) is not { } map)
            {
                return WrongUse.Write(surroundings.Error, "A sheet and the name of its road map are needed.", "For example: fretlore roadmap my-song.lore descent --takes 5");
            }
            var wanted = LevelText.Read(parsed.GetValue(level));
            if (wanted.Misread is { } noLevel) return WrongUse.Write(surroundings.Error, noLevel);
            if (!TryReadModel(surroundings, parsed.GetValue(phrases), out var model)) return ExitCode.WrongUse;
            if (OpenedSheet.Open(surroundings, path, Undone, out var code) is not { Workspace: var workspace }) return code;
            if (parsed.GetValue(check) is { } solo)
            {
                if (OpenedSheet.Open(surroundings, solo, Undone, out var soloCode) is not { Workspace: var soloSheet }) return soloCode;
                return SoloAnswerWriter.Run(
                    surroundings, workspace, soloSheet, solo, new SoloQuestion(map, parsed.GetValue(section), parsed.GetValue(part), parsed.GetValue(from)), parsed.GetValue(json));
            }
            var question = new TakesQuestion(map, parsed.GetValue(takes) ?? 1, parsed.GetValue(seed), wanted.Value.Share, parsed.GetValue(section), model);
            var wish = new TakesWish(path, question, parsed.GetValue(takes) is null, parsed.GetValue(output) ?? $"{map}-takes", parsed.GetValue(replace), parsed.GetValue(json));
            return TakesAnswerWriter.Run(surroundings, workspace, wish);
        });
        return verb;
    }

    private static bool TryReadModel(Surroundings surroundings, string? path, out PhraseModel? model)
    {
        model = null;
        if (path is null) return true;
        try
        {
            (model, var wrong, var remedy) = PhraseModelText.Read(System.Text.Encoding.UTF8.GetString(AnyFile.Read(surroundings.PathOf(path))));
            if (model is not null) return true;
            WrongUse.Write(surroundings.Error, $"{path} is no phrase model. {wrong}", remedy);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            WrongUse.Write(surroundings.Error, $"{path} can't be read: {Reason.Of(e)}", "Check the name and who may read it.");
        }
        return false;
    }
}
