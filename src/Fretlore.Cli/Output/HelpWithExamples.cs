using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace Fretlore.Cli.Output;

/// <summary>A command's help, ended by command lines that can be typed as they stand.</summary>
internal sealed class HelpWithExamples(HelpAction help, IReadOnlyDictionary<Command, string[]> examples) : SynchronousCommandLineAction
{
    public override bool ClearsParseErrors => true;

    /// <summary>Puts this help on a root command and its verbs.</summary>
    public static void On(RootCommand root, params string[] rootExamples)
    {
        var examples = new Dictionary<Command, string[]> { [root] = rootExamples };
        foreach (var verb in root.Subcommands.OfType<Verb>()) examples[verb] = verb.Examples;
        foreach (var option in root.Options.OfType<HelpOption>())
        {
            if (option.Action is HelpAction help) option.Action = new HelpWithExamples(help, examples);
        }
    }

    public override int Invoke(ParseResult parseResult)
    {
        help.Invoke(parseResult);
        if (!examples.TryGetValue(parseResult.CommandResult.Command, out var lines)) return ExitCode.Fine;
        var output = parseResult.InvocationConfiguration.Output;
        output.WriteLine(lines.Length == 1 ? "Example:" : "Examples:");
        foreach (var line in lines) output.WriteLine("  " + line);
        return ExitCode.Fine;
    }
}
