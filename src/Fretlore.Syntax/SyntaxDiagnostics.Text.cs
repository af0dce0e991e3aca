using System.Globalization;

namespace Fretlore.Syntax;

/// <content>The file as a whole: FL1001 to FL1009.</content>
internal static partial class SyntaxDiagnostics
{
    public static Diagnostic EmptySheet() => Error("FL1001", default,
        "The sheet is empty.",
        "Begin with a `title` line, a `tuning` line and a `riff`; `fretlore new` writes a first sheet to start from.");

    public static Diagnostic TooManyFindings(TextSpan span, int shown) => Error("FL1002", span,
        string.Create(CultureInfo.InvariantCulture, $"There is more to mend from here on; the first {shown} findings are shown."),
        "Mend those first, beginning at the top: one slip often causes several findings.");

    /// <param name="span">The character.</param>
    /// <param name="found">The character that was written.</param>
    /// <param name="meant">The plain sign it looks like.</param>
    public static Diagnostic LookAlike(TextSpan span, char found, string meant) => Error("FL1003", span,
        string.Create(CultureInfo.InvariantCulture, $"The character {found} (U+{(int)found:X4}) looks like {meant} but is another one."),
        $"Write the plain sign {meant}; word processors put others in its place.");
}
