using System.Globalization;

namespace Fretlore.Syntax;

/// <content>The file as a whole: FL1001 to FL1009.</content>
internal static partial class SyntaxDiagnostics
{
    public static Diagnostic EmptySheet() => Error("FL1001", default,
        "The sheet is empty.",
        "Begin with a `title` line, a `tuning` line and a `riff`; `fretlore new` writes a first sheet to start from.");

    /// <param name="span">The replacement character that stands for the bytes.</param>
    /// <param name="value">The first byte that is wrong.</param>
    /// <param name="line">From 1.</param>
    /// <param name="byteColumn">The byte's place in its line, from 1.</param>
    /// <param name="more">How many more places are wrong.</param>
    public static Diagnostic NotUtf8(TextSpan span, byte value, int line, int byteColumn, int more) => Error("FL1002", span,
        string.Create(CultureInfo.InvariantCulture, $"The byte {value:X2} (hexadecimal) in line {line}, byte {byteColumn}, is not UTF-8")
        + (more == 0 ? "." : string.Create(CultureInfo.InvariantCulture, $", and {more} more places are not either.")),
        "Save the sheet as UTF-8 text; if it is no text at all, name the right file.");

    public static Diagnostic Utf16Text() => Error("FL1003", default,
        "The sheet is saved as UTF-16 text.",
        "Save it again as UTF-8: in an editor's save dialog choose the encoding UTF-8.");

    public static Diagnostic NulCharacter(TextSpan span) => Error("FL1004", span,
        "The sheet contains a NUL character, so it is probably no text file.",
        "Name the sheet itself (NAME.lore), or take the character out.");

    public static Diagnostic TooManyFindings(TextSpan span, int shown) => Error("FL1005", span,
        string.Create(CultureInfo.InvariantCulture, $"There is more to mend from here on; the first {shown} findings are shown."),
        "Mend those first, beginning at the top: one slip often causes several findings.");

    /// <param name="span">The character.</param>
    /// <param name="found">The character that was written.</param>
    /// <param name="meant">The plain sign it looks like.</param>
    public static Diagnostic LookAlike(TextSpan span, char found, string meant) => Error("FL1006", span,
        string.Create(CultureInfo.InvariantCulture, $"The character {found} (U+{(int)found:X4}) looks like {meant} but is another one."),
        $"Write the plain sign {meant}; word processors put others in its place.");
}
