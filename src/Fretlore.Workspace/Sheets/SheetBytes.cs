using System.Buffers;
using System.Text;
using System.Text.Unicode;
using Fretlore.Syntax;

namespace Fretlore.Workspace.Sheets;

/// <summary>A sheet as the bytes of its file: UTF-8, with or without a byte order mark.</summary>
public static class SheetBytes
{
    /// <summary>More bytes than this are not read. A song of a thousand bars takes about a tenth of a megabyte.</summary>
    public const int Most = 16 * 1024 * 1024;

    /// <summary>Reads the text.</summary>
    /// <returns>
    /// The text and no diagnostic; or, when the bytes are not a text, what can be read before the first wrong byte and what is wrong with that byte.
    /// </returns>
    public static (SourceText Text, Diagnostic? Wrong) Read(ReadOnlySpan<byte> bytes, string name)
    {
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]) || bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]))
        {
            return (new SourceText("", name), FileDiagnostics.IsUtf16());
        }
        if (bytes.StartsWith(Encoding.UTF8.Preamble)) bytes = bytes[Encoding.UTF8.Preamble.Length..];

        var text = new char[bytes.Length];
        var status = Utf8.ToUtf16(bytes, text, out var read, out var written, replaceInvalidSequences: false);
        var readable = text.AsSpan(0, written);
        var zero = readable.IndexOf('\0');
        if (zero >= 0)
        {
            return (Before(readable, zero, name), FileDiagnostics.NotText(new TextSpan(zero, 1)));
        }
        if (status != OperationStatus.Done)
        {
            return (Before(readable, written, name), FileDiagnostics.NotUtf8(new TextSpan(written, 1), bytes[read]));
        }
        return (new SourceText(readable.ToString(), name), null);
    }

    // The wrong byte is shown as the sign Unicode has for it, so that a marker has something to stand under.
    private static SourceText Before(ReadOnlySpan<char> text, int end, string name) => new(text[..end].ToString() + '\uFFFD', name);
}
