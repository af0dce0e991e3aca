using System.Buffers.Binary;
using System.Text;

namespace Fretlore.Engraving.Fonts.Subset;

/// <summary>The name table of a font we hand out: our own family name, so that no reserved name is borne by a modified font.</summary>
/// <remarks>Source: OpenType 1.9, "name — Naming Table", format 0, Windows platform, Unicode BMP encoding, US English.</remarks>
internal static class SubsetNames
{
    private const string License = "This Font Software is licensed under the SIL Open Font License, Version 1.1. https://openfontlicense.org";

    /// <param name="family">Such as "Fretlore Serif".</param>
    /// <param name="style">Such as "Bold".</param>
    /// <param name="postScript">The PostScript name, in PDF with its subset tag.</param>
    /// <param name="copyright">The original's copyright line.</param>
    public static byte[] Table(string family, string style, string postScript, string copyright)
    {
        (ushort Id, string Value)[] records =
        [
            (0, copyright), (1, family), (2, style), (3, postScript), (4, $"{family} {style}"), (5, "Version 1.0"), (6, postScript), (13, License),
        ];
        var strings = new MemoryStream();
        var head = new byte[6 + 12 * records.Length];
        var span = head.AsSpan();
        BinaryPrimitives.WriteUInt16BigEndian(span[2..], (ushort)records.Length);
        BinaryPrimitives.WriteUInt16BigEndian(span[4..], (ushort)head.Length);
        for (var i = 0; i < records.Length; i++)
        {
            var value = Encoding.BigEndianUnicode.GetBytes(records[i].Value);
            ReadOnlySpan<ushort> record = [3, 1, 0x409, records[i].Id, (ushort)value.Length, (ushort)strings.Length];
            for (var field = 0; field < record.Length; field++)
                BinaryPrimitives.WriteUInt16BigEndian(span[(6 + 12 * i + 2 * field)..], record[field]);
            strings.Write(value);
        }

        return [.. head, .. strings.ToArray()];
    }
}
