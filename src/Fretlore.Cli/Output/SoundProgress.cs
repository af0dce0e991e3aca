using Spectre.Console;

namespace Fretlore.Cli.Output;

/// <summary>Shows how far the rendering of sound is: a bar with the time left on a terminal, one line elsewhere.</summary>
internal static class SoundProgress
{
    public static T Show<T>(Surroundings surroundings, Func<Action<double>, T> make)
    {
        if (!surroundings.ErrorIsTerminal)
        {
            surroundings.Error.WriteLine("Rendering sound ...");
            return make(_ => { });
        }
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(surroundings.Error) });
        return console.Progress()
            .AutoClear(true)
            .Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn(), new RemainingTimeColumn())
            .Start(context =>
            {
                var bar = context.AddTask("Rendering sound", maxValue: 1);
                return make(share => bar.Value = share);
            });
    }
}
