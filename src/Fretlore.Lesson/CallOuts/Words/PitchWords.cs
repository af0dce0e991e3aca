using Fretlore.Music;

namespace Fretlore.Lesson.CallOuts.Words;

/// <summary>Note names as spoken: "F sharp", "B flat".</summary>
internal static class PitchWords
{
    public static string Of(NoteName name) => name.Step + name.Alteration switch
    {
        0 => "",
        1 => " sharp",
        -1 => " flat",
        2 => " double sharp",
        -2 => " double flat",
        _ => " altered",
    };
}
