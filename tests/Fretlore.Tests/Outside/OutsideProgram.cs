using System.Diagnostics;

namespace Fretlore.Tests.Outside;

/// <summary>Runs programs that are not ours, to compare with what they say.</summary>
internal static class OutsideProgram
{
    /// <summary>Runs a script of tests/node and returns what it prints; its packages are installed by the test command.</summary>
    public static string Node(string script, params string[] arguments)
    {
        var folder = Path.Combine(Repository.Root, "tests", "node");
        Assert.SkipUnless(Directory.Exists(Path.Combine(folder, "node_modules")), "The npm packages of tests/node are not installed: run ./test.");
        return Run("node", [Path.Combine(folder, script), .. arguments]);
    }

    /// <summary>Runs a program and returns its standard output; skips the test with a plain word when it is not installed.</summary>
    public static string Run(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        using var process = Start(start);
        Assert.SkipWhen(process is null, $"{program} is not installed: run ./test.");
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{program} ended with {process.ExitCode}: {errors.Result}");
        return output;
    }

    private static Process? Start(ProcessStartInfo start)
    {
        try
        {
            return Process.Start(start);
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }
}
