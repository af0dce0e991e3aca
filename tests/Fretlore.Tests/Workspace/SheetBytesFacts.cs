using System.Text;
using CsCheck;
using Fretlore.Workspace;
using Fretlore.Workspace.Sheets;

namespace Fretlore.Tests.Workspace;

/// <summary>The bytes of a sheet's file.</summary>
public sealed class SheetBytesFacts
{
    [Fact]
    public void Utf8_IsReadAsItIs() => Gen.String.Where(s => !s.Contains('\0') && IsWhole(s)).Sample(text =>
    {
        var (read, wrong) = SheetBytes.Read(Encoding.UTF8.GetBytes(text), "song.lore");
        Assert.Null(wrong);
        Assert.Equal(text.TrimStart('\uFEFF'), read.Text.TrimStart('\uFEFF'));
    });

    [Fact]
    public void ByteOrderMark_IsNoPartOfTheText() =>
        Assert.Equal("title Ash", SheetBytes.Read([0xEF, 0xBB, 0xBF, .. "title Ash"u8], "").Text.Text);

    [Fact]
    public void AWrongByte_IsFoundByLineAndColumn()
    {
        // "ü" as the single byte FC of ISO 8859-1.
        var (text, wrong) = SheetBytes.Read([.. "title  Br"u8, 0xFC, .. "cke\n"u8], "");
        var finding = Finding.Of(wrong!, text);
        Assert.Equal(("FL0005", 1, 10, 1), (finding.Code, finding.Line, finding.Column, finding.Length));
        Assert.Contains("FC", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AWrongByte_AfterSeveralLines_IsFoundInItsLine()
    {
        var (text, wrong) = SheetBytes.Read([.. "title Ü\r\n-- né\r\nke"u8, 0xC3], "");
        var finding = Finding.Of(wrong!, text);
        Assert.Equal((3, 3), (finding.Line, finding.Column));
    }

    [Fact]
    public void AZeroByte_IsNoText()
    {
        var (text, wrong) = SheetBytes.Read("title\nab\0c"u8, "");
        var finding = Finding.Of(wrong!, text);
        Assert.Equal(("FL0007", 2, 3), (finding.Code, finding.Line, finding.Column));
    }

    [Theory]
    [InlineData(new byte[] { 0xFF, 0xFE, 0x74, 0x00 })]
    [InlineData(new byte[] { 0xFE, 0xFF, 0x00, 0x74 })]
    public void Utf16_IsNamed(byte[] bytes) => Assert.Equal("FL0006", SheetBytes.Read(bytes, "").Wrong!.Code);

    [Fact]
    public void AnyBytes_GiveATextOrAFinding() => Gen.Byte.Array.Sample(bytes =>
    {
        var (text, wrong) = SheetBytes.Read(bytes, "");
        if (wrong is not null) Assert.True(Finding.Of(wrong, text) is { Line: >= 1, Column: >= 1 });
    });

    [Theory]
    [InlineData("salt-furnace", "Salt Furnace")]
    [InlineData("02 ash_and  iron", "02 Ash And Iron")]
    [InlineData("\"--\"", "Untitled")]
    [InlineData("écluse", "Écluse")]
    public void AFilesName_BecomesATitle(string name, string title) => Assert.Equal(title, StarterSheet.TitleOf(name));

    private static bool IsWhole(string text) => Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(text)) == text;
}
