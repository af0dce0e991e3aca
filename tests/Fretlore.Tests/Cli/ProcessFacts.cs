using System.Diagnostics;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Cli;

/// <summary>The command as people start it: a process of its own, through the script at the checkout's root.</summary>
public sealed class ProcessFacts : IDisposable
{
    private readonly Desktop desktop = new();

    [Fact]
    public void Name_AsAProcess_PrintsJsonAndAnswers0()
    {
        var (code, output, error) = Start("name", "x 3 2 0 1 0", "--tuning", "E2 A2 D3 G3 B3 E4", "--json");
        Assert.Equal((0, ""), (code, error));
        Assert.StartsWith("{\"candidates\":[{\"symbol\":\"C\",", output, StringComparison.Ordinal);
    }

    [Fact]
    public void WrongUse_AsAProcess_Answers2() => Assert.Equal(2, Start("frobnicate").Code);

    [Fact]
    public void ASheetWithErrors_AsAProcess_Answers1_WithoutColoursInAPipe()
    {
        desktop.Write("ash.lore", "rif main\n");
        var (code, output, _) = Start("check", "ash.lore");
        Assert.Equal(1, code);
        Assert.StartsWith("ash.lore:1:1 error FL", output, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', output);
    }

    [Theory]
    [InlineData("-INT")]
    [InlineData("-TERM")]
    public void SoundThatIsStoppedOnTheWay_AsAProcess_Answers130_AndLeavesTheOldFile(string signal)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() || OperatingSystem.IsMacOS(), "Signals are a matter of Unix.");
        desktop.Write("long.lore", "title Long\ntuning E2 A2 D3 G3 B3 E4\ntempo Q = 60\npart low \"Low\" sound driven\nsection A\n  low times 900{ @6 E 0 0 3 0 5 0 3 0 | }\n");
        desktop.Write("long.wav", "an old file");
        var program = Path.Combine(AppContext.BaseDirectory, "fretlore.dll");
        using var process = Process.Start(new ProcessStartInfo("dotnet", [program, "sound", "long.lore", "-o", "long.wav"])
        {
            WorkingDirectory = desktop.Folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        Assert.Equal("Rendering sound ...", process.StandardError.ReadLine());
        while (Directory.GetFiles(desktop.Folder).Length < 4) Thread.Sleep(20); // Until there are its own two files.
        OutsideProgram.Run("kill", signal, process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture));
        var said = process.StandardError.ReadToEnd();
        process.WaitForExit();
        Assert.Equal((130, "Stopped: nothing was written.\n"), (process.ExitCode, said));
        Assert.Equal(["long.lore", "long.wav"], desktop.Everything().Keys.Order());
        Assert.Equal("an old file", desktop.Read("long.wav"));
    }

    private (int Code, string Out, string Error) Start(params string[] arguments)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The script is for Unix shells; on Windows the command runs through dotnet.");
        // The first call builds; what it says about that is no part of the test.
        foreach (var first in (bool[])[true, false])
        {
            using var process = Process.Start(new ProcessStartInfo(Path.Combine(Repository.Root, "fretlore"), first ? ["--version"] : arguments)
            {
                WorkingDirectory = desktop.Folder,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            })!;
            var error = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            if (!first) return (process.ExitCode, output, error.Result);
            Assert.True(process.ExitCode == 0, error.Result);
        }
        throw new UnreachableException();
    }

    public void Dispose() => desktop.Dispose();
}
