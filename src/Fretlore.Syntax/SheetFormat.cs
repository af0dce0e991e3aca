using Fretlore.Syntax.Formatting;

namespace Fretlore.Syntax;

/// <summary>A sheet written anew in the usual form.</summary>
/// <param name="Text">The new text; the old one when it was refused.</param>
/// <param name="IsRefused">True when the sheet has syntax errors, so that its text was left as it is.</param>
public sealed record FormattedSheet(string Text, bool IsRefused);

/// <summary>Writes sheets in the usual form: one blank between items, columns aligned, time and place said again in each bar.</summary>
/// <remarks>The music stays the same, comments stay, and a sheet in the usual form comes out as it is.</remarks>
public static class SheetFormat
{
    public static FormattedSheet Format(ParsedSheet sheet)
    {
        // What the parser could not read is not moved: nothing may be lost.
        if (sheet.Diagnostics.Any(d => d.Severity == Severity.Error)) return new FormattedSheet(sheet.Text.Text, IsRefused: true);
        var firstEnd = sheet.Text.Text.AsSpan().IndexOfAny('\r', '\n');
        var isDos = firstEnd >= 0 && sheet.Text.Text.AsSpan(firstEnd).StartsWith("\r\n");
        return new FormattedSheet(new SheetLayout(sheet, isDos ? "\r\n" : "\n").Write(), IsRefused: false);
    }
}
