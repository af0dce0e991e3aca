using Fretlore.Lesson.Kit;
using Spectre.Console;

namespace Fretlore.Cli.Output;

/// <summary>The making of a kit as a progress bar, gone when it is done.</summary>
internal static class TerminalProgress
{
    private static readonly int Steps = Enum.GetValues<KitStep>().Length;

    public static KitResult Show(TextWriter error, Func<Action<KitStep>, KitResult> make)
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(error) });
        return console.Progress()
            .AutoClear(true)
            .Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn())
            .Start(context =>
            {
                var bar = context.AddTask(KitProgress.Words(default), maxValue: Steps);
                var result = make(step =>
                {
                    bar.Description = Markup.Escape(KitProgress.Words(step));
                    bar.Value = (int)step;
                });
                bar.Value = Steps;
                return result;
            });
    }
}
