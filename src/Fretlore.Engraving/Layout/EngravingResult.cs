using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Reuse;

namespace Fretlore.Engraving.Layout;

/// <summary>What engraving a song gives: pages, or the reason why there are none.</summary>
public abstract record EngravingResult
{
    private EngravingResult()
    {
    }

    /// <summary>The song on pages.</summary>
    /// <param name="Document">All pages.</param>
    /// <param name="StaffSpace">Millimetres a staff space takes: as asked, or less where a bar or system would not fit otherwise.</param>
    public sealed record Pages(Document Document, double StaffSpace) : EngravingResult
    {
        /// <summary>What this layout leaves for the next one of the song; null where none was expected.</summary>
        public EarlierLayout? Layout { get; init; }
    }

    /// <summary>The song cannot be put on this paper.</summary>
    /// <param name="Reason">What is wrong.</param>
    /// <param name="Remedy">What to do about it.</param>
    public sealed record Refused(string Reason, string Remedy) : EngravingResult;
}
