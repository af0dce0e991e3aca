using Fretlore.Engraving.Drawing;

namespace Fretlore.Engraving.Output;

/// <summary>Shades of grey as screens and printers count them.</summary>
internal static class Shade
{
    /// <summary>0 for black to 255 for white.</summary>
    public static byte Level(this Fill fill) => (byte)Math.Round(Math.Clamp(fill.Shade, 0, 1) * 255);
}
