using System.Buffers.Binary;

namespace Fretlore.Engraving.Fonts.Subset;

/// <summary>The cmap table of a font we hand out.</summary>
/// <remarks>Source: OpenType 1.9, "cmap — Character To Glyph Index Mapping Table", format 12, one group for each run of neighbours.</remarks>
internal static class CharacterMap
{
    public static byte[] Table(SortedDictionary<int, ushort> glyphs)
    {
        var groups = new List<(int First, int Last, ushort Glyph)>();
        foreach (var (character, glyph) in glyphs)
        {
            if (groups is [.., var (first, last, start)] && character == last + 1 && glyph == start + (character - first))
                groups[^1] = (first, character, start);
            else
                groups.Add((character, character, glyph));
        }

        const int header = 12;
        var table = new byte[header + 16 + 12 * groups.Count];
        var span = table.AsSpan();
        BinaryPrimitives.WriteUInt16BigEndian(span[2..], 1);
        BinaryPrimitives.WriteUInt16BigEndian(span[4..], 3);
        BinaryPrimitives.WriteUInt16BigEndian(span[6..], 10);
        BinaryPrimitives.WriteUInt32BigEndian(span[8..], header);
        BinaryPrimitives.WriteUInt16BigEndian(span[header..], 12);
        BinaryPrimitives.WriteUInt32BigEndian(span[(header + 4)..], (uint)(table.Length - header));
        BinaryPrimitives.WriteUInt32BigEndian(span[(header + 12)..], (uint)groups.Count);
        for (var i = 0; i < groups.Count; i++)
        {
            var group = span[(header + 16 + 12 * i)..];
            BinaryPrimitives.WriteUInt32BigEndian(group, (uint)groups[i].First);
            BinaryPrimitives.WriteUInt32BigEndian(group[4..], (uint)groups[i].Last);
            BinaryPrimitives.WriteUInt32BigEndian(group[8..], groups[i].Glyph);
        }

        return table;
    }
}
