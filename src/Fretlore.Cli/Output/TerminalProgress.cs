using Fretlore.Lesson.Kit;
using Spectre.Console;

namespace Fretlore.Cli.Output;

/// <summary>The making of a kit as a progress bar, gone when it is done.</summary>
internal static class TerminalProgress
{
    public static T Show<T>(TextWriter error, Func<Action<KitMoment>, T> make)
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(error) });
        return console.Progress()
            .AutoClear(true)
            .Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn(), new RemainingTimeColumn())
            .Start(context =>
            {
                var bar = context.AddTask("Reading the music", maxValue: 1);
                var result = make(moment =>
                {
                    bar.Description = Markup.Escape(moment.Doing);
                    bar.Value = moment.Share;
                });
                bar.Value = 1;
                return result;
            });
    }
}
