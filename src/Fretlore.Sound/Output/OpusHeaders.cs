using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using Fretlore.Sound.Mixing;

namespace Fretlore.Sound.Output;

/// <summary>The two packets that an Opus stream begins with (RFC 7845, section 5).</summary>
internal static class OpusHeaders
{
    private const int LongestText = 2000; // Enough for a line.
    private const int LongestName = 100;
    private const int MostChapters = 200; // With their names they fit a page.

    /// <param name="skip">Samples that a decoder throws away before the first that counts.</param>
    /// <param name="channels">1 or 2.</param>
    public static byte[] Head(int skip, int channels)
    {
        var head = new byte[19];
        "OpusHead"u8.CopyTo(head);
        head[8] = 1;
        head[9] = (byte)channels;
        BinaryPrimitives.WriteUInt16LittleEndian(head.AsSpan(10), (ushort)skip);
        BinaryPrimitives.WriteUInt32LittleEndian(head.AsSpan(12), SampleRate.Hertz);
        return head;
    }

    /// <summary>Nothing but who wrote it.</summary>
    public static byte[] NoTags => [.. "OpusTags"u8, 8, 0, 0, 0, .. "Fretlore"u8, 0, 0, 0, 0];

    /// <summary>Title, artist, rights, and the sections as chapters: two comments each, a time and a name, as players expect them.</summary>
    public static byte[] Tags(SongMix mix)
    {
        using var tags = new MemoryStream();
        tags.Write("OpusTags"u8);
        Put("Fretlore");
        var comments = new List<string> { "TITLE=" + mix.Info.Title };
        if (mix.Info.Artist is { } artist) comments.Add("ARTIST=" + artist);
        if (mix.Info.Rights is { } rights) comments.Add("COPYRIGHT=" + rights);
        for (var i = 0; i < Math.Min(mix.Marks.Length, MostChapters); i++)
        {
            var time = TimeSpan.FromMilliseconds(Math.Round(1000.0 * mix.Marks[i].Sample / SampleRate.Hertz));
            comments.Add(string.Create(CultureInfo.InvariantCulture, $"CHAPTER{i + 1:000}={time:hh\\:mm\\:ss\\.fff}"));
            comments.Add(string.Create(CultureInfo.InvariantCulture, $"CHAPTER{i + 1:000}NAME={Cut(mix.Marks[i].Name, LongestName)}"));
        }
        WriteLength(comments.Count);
        comments.ForEach(Put);
        return tags.ToArray();

        void Put(string text)
        {
            var bytes = Encoding.UTF8.GetBytes(Cut(text, LongestText));
            WriteLength(bytes.Length);
            tags.Write(bytes);
        }

        static string Cut(string text, int most) => text.Length > most ? text[..most] : text;

        void WriteLength(int length)
        {
            Span<byte> bytes = stackalloc byte[4];
            BinaryPrimitives.WriteInt32LittleEndian(bytes, length);
            tags.Write(bytes);
        }
    }
}
