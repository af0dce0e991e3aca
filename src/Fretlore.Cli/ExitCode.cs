namespace Fretlore.Cli;

/// <summary>What the process answers with.</summary>
internal static class ExitCode
{
    public const int Fine = 0;

    /// <summary>The sheet has errors (or, for <c>format --check</c>, is not formatted).</summary>
    public const int SheetHasErrors = 1;

    /// <summary>The command was asked for something it can't do: wrong options, a missing file, a folder that can't be written.</summary>
    public const int WrongUse = 2;

    /// <summary>Stopped by the user; 130 is what shells say after an interrupt (128 and the signal's number).</summary>
    public const int Stopped = 130;

    /// <summary>A bug of ours; 70 is EX_SOFTWARE of BSD's sysexits.</summary>
    public const int Bug = 70;
}
