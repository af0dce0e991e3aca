using Fretlore.Lesson.Kit;

namespace Fretlore.Cli.Output;

/// <summary>Shows how far the making of a kit is: a bar on a terminal, a line a step elsewhere.</summary>
internal static class KitProgress
{
    public static KitResult Show(Surroundings surroundings, Func<Action<KitStep>, KitResult> make) =>
        surroundings.ErrorIsTerminal
            ? TerminalProgress.Show(surroundings.Error, make)
            : make(step => surroundings.Error.WriteLine($"{Words(step)} ..."));

    public static string Words(KitStep step) => step switch
    {
        KitStep.Reading => "Reading the music",
        KitStep.Engraving => "Engraving pages",
        KitStep.Pictures => "Writing pictures",
        KitStep.Print => "Writing the PDF",
        KitStep.MusicXml => "Writing MusicXML",
        KitStep.Midi => "Writing MIDI",
        _ => "Writing the script",
    };
}
