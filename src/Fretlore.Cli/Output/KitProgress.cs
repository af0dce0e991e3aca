using Fretlore.Lesson.Kit;

namespace Fretlore.Cli.Output;

/// <summary>Shows how far the making of a kit is: a bar with the time left on a terminal, a line a step elsewhere.</summary>
internal static class KitProgress
{
    public static T Show<T>(Surroundings surroundings, Func<Action<KitMoment>, T> make)
    {
        if (surroundings.ErrorIsTerminal) return TerminalProgress.Show(surroundings.Error, make);
        string? said = null;
        return make(moment =>
        {
            if (moment.Doing != said) surroundings.Error.WriteLine($"{said = moment.Doing} ...");
        });
    }
}
