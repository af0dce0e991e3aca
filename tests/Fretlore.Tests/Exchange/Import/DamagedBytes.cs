namespace Fretlore.Tests.Exchange.Import;

/// <summary>Files with bytes changed, put in, left out, doubled or cut off: the same for the same number.</summary>
internal static class DamagedBytes
{
    private static readonly byte[][] Pieces =
    [
        [0xFF], [0x00], [0x80], [0xFF, 0xFF, 0xFF, 0xFF], [0x7F, 0xFF, 0xFF, 0xFF], [0xFF, 0x51, 0x03, 0, 0, 0], [0xFF, 0x58, 0x04, 0xFF, 0xFF, 0, 0], [0xFF, 0x2F, 0x00],
        [0xF0, 0xFF, 0xFF, 0xFF, 0x7F], [0xFF, 0x03, 0xFF, 0xFF, 0xFF, 0x7F], [0xB0, 101, 0, 100, 0, 6, 127], [0xE0, 0x7F, 0x7F], [0x90, 60, 100], "MTrk"u8.ToArray(), "MThd"u8.ToArray(),
    ];

    /// <summary>A file as it might arrive: one to six things are wrong with it.</summary>
    public static byte[] Of(byte[] file, Random random)
    {
        var bytes = file.ToList();
        for (var n = random.Next(1, 7); n > 0 && bytes.Count > 0; n--)
        {
            var at = random.Next(bytes.Count);
            switch (random.Next(8))
            {
                case 0 or 1:
                    bytes[at] = (byte)random.Next(256);
                    break;
                case 2:
                    bytes[at] ^= (byte)(1 << random.Next(8));
                    break;
                case 3:
                    bytes.InsertRange(at, Pieces[random.Next(Pieces.Length)]);
                    break;
                case 4:
                    bytes.RemoveRange(at, Math.Min(random.Next(1, 30), bytes.Count - at));
                    break;
                case 5:
                    bytes.InsertRange(at, bytes.GetRange(at, Math.Min(random.Next(1, 200), bytes.Count - at)));
                    break;
                case 6: // Near the start, where the lengths are.
                    bytes[random.Next(Math.Min(40, bytes.Count))] = (byte)random.Next(256);
                    break;
                default:
                    if (random.Next(4) == 0) bytes.RemoveRange(at, bytes.Count - at);
                    break;
            }
        }
        return [.. bytes];
    }
}
