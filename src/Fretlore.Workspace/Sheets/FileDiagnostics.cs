using System.Globalization;
using Fretlore.Syntax;

namespace Fretlore.Workspace.Sheets;

/// <summary>What can be wrong with the file a sheet is in, before its text is looked at: codes FL0001 to FL0099.</summary>
public static class FileDiagnostics
{
    public static Diagnostic NotFound(string path) => Error(
        "FL0001", default, $"There is no file {path}.", "Check the name and the folder, or make a new sheet with: fretlore new NAME.lore");

    public static Diagnostic IsFolder(string path) => Error(
        "FL0002", default, $"{path} is a folder, not a sheet.", "Give the sheet in it, such as NAME.lore.");

    public static Diagnostic NotReadable(string path, string why) => Error(
        "FL0003", default, $"{path} can't be read: {why}", "Check who may read it and that no other program keeps it to itself.");

    public static Diagnostic TooLarge(string path) => Error(
        "FL0004", default, string.Create(CultureInfo.InvariantCulture, $"{path} has more than {SheetBytes.Most:N0} bytes, far more than any song needs."),
        string.Create(CultureInfo.InvariantCulture, $"Give a sheet: a text file of at most {SheetBytes.Most:N0} bytes."));

    public static Diagnostic NotUtf8(TextSpan span, byte bad) => Error(
        "FL0005", span, string.Create(CultureInfo.InvariantCulture, $"This is not UTF-8 text: the byte {bad:X2} can't stand here."),
        "Save the sheet as UTF-8 (a choice in the editor's Save As). If it never was text, it is the wrong file.");

    public static Diagnostic IsUtf16() => Error(
        "FL0006", default, "This text is saved as UTF-16.", "Save it as UTF-8 (a choice in the editor's Save As).");

    public static Diagnostic NotText(TextSpan span) => Error(
        "FL0007", span, "There is a zero byte here, which no text has.", "Give a sheet, a plain text file; this looks like another kind of file.");

    private static Diagnostic Error(string code, TextSpan span, string message, string remedy) =>
        new(code, Severity.Error, span, message, remedy);
}
