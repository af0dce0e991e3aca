using Fretlore.Music;

namespace Fretlore.Exchange.MusicXml.Reading;

/// <summary>Tremolo strokes while the note's own value is not known yet.</summary>
internal static class Tremolos
{
    // One stroke on a note without flags is eighths; the beams or flags of the note count too and are added later.
    public static ValueBase Of(int strokes) => (ValueBase)(4 << Math.Clamp(strokes, 1, 4));

    /// <summary>The value of each stroke when the note has flags of its own.</summary>
    public static ValueBase On(NoteValue value, ValueBase strokes) =>
        (ValueBase)Math.Min((int)ValueBase.SixtyFourth, (int)strokes << Beaming.CountOf(value.Base));
}
