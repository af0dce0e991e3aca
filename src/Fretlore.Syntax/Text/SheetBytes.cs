using System.Buffers;
using System.Collections.Immutable;
using System.Text;
using System.Text.Unicode;

namespace Fretlore.Syntax;

/// <summary>Makes text of a file's bytes: UTF-8, with or without a byte order mark.</summary>
public static class SheetBytes
{
    private static readonly byte[] Utf8Mark = [0xEF, 0xBB, 0xBF];

    /// <summary>
    /// Decodes a sheet. What is no UTF-8 becomes U+FFFD and is reported with the line and byte column of the first such place;
    /// UTF-16 is recognised by its mark or its NULs, decoded, and reported too.
    /// </summary>
    public static (SourceText Text, ImmutableArray<Diagnostic> Diagnostics) Decode(ReadOnlySpan<byte> bytes, string name = "")
    {
        if (Utf16(bytes) is { } utf16)
        {
            return (new SourceText(utf16.GetString(bytes).TrimStart('\uFEFF'), name), [SyntaxDiagnostics.Utf16Text()]);
        }
        if (bytes.StartsWith(Utf8Mark)) bytes = bytes[Utf8Mark.Length..];
        if (!Utf8.IsValid(bytes)) return Mended(bytes, name);
        var text = Encoding.UTF8.GetString(bytes);
        var nul = text.IndexOf('\0');
        return (new SourceText(text, name), nul < 0 ? [] : [SyntaxDiagnostics.NulCharacter(new TextSpan(nul, 1))]);
    }

    private static (SourceText Text, ImmutableArray<Diagnostic> Diagnostics) Mended(ReadOnlySpan<byte> bytes, string name)
    {
        var text = new StringBuilder(bytes.Length);
        var (line, lineStart, wrong) = (1, 0, 0);
        int firstAt = 0, firstIndex = 0, firstLine = 0, firstColumn = 0;
        for (var at = 0; at < bytes.Length;)
        {
            if (Rune.DecodeFromUtf8(bytes[at..], out var rune, out var length) != OperationStatus.Done)
            {
                if (wrong++ == 0) (firstAt, firstIndex, firstLine, firstColumn) = (at, text.Length, line, at - lineStart + 1);
            }
            text.Append(rune.ToString());
            at += length;
            if (rune.Value == '\n') (line, lineStart) = (line + 1, at);
        }
        return (
            new SourceText(text.ToString(), name),
            [SyntaxDiagnostics.NotUtf8(new TextSpan(firstIndex, 1), bytes[firstAt], firstLine, firstColumn, wrong - 1)]);
    }

    /// <summary>UTF-16 by its mark; or, without one, by NULs in nearly every second byte of the beginning.</summary>
    private static UnicodeEncoding? Utf16(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith<byte>([0xFF, 0xFE])) return new UnicodeEncoding(bigEndian: false, byteOrderMark: true);
        if (bytes.StartsWith<byte>([0xFE, 0xFF])) return new UnicodeEncoding(bigEndian: true, byteOrderMark: true);
        var pairs = Math.Min(bytes.Length, 512) / 2;
        if (pairs < 4) return null;
        var (even, odd) = (0, 0);
        for (var i = 0; i < pairs; i++)
        {
            if (bytes[2 * i] == 0) even++;
            if (bytes[(2 * i) + 1] == 0) odd++;
        }
        if (odd > pairs * 3 / 4 && even == 0) return new UnicodeEncoding(bigEndian: false, byteOrderMark: false);
        if (even > pairs * 3 / 4 && odd == 0) return new UnicodeEncoding(bigEndian: true, byteOrderMark: false);
        return null;
    }
}
