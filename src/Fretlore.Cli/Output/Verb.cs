using System.CommandLine;

namespace Fretlore.Cli.Output;

/// <summary>A verb of the command with examples for its help.</summary>
internal sealed class Verb(string name, string description, params string[] examples) : Command(name, description)
{
    public string[] Examples { get; } = examples;
}
