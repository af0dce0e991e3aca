using System.Text.RegularExpressions;
using Fretlore.Music;

namespace Fretlore.Lesson.CallOuts.Words;

/// <summary>Note names as spoken: "F sharp", "B flat".</summary>
internal static partial class PitchWords
{
    /// <summary>A text in which note names with signs are written out: "F# is outside" is "F sharp is outside".</summary>
    public static string InText(string text) =>
        SignedName().Replace(text, match => NoteName.TryParse(match.Value, out var name) ? Of(name) : match.Value);

    [GeneratedRegex("(?<![A-Za-z])[A-G](#{1,2}|b{1,2})(?![A-Za-z#])")]
    private static partial Regex SignedName();

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
