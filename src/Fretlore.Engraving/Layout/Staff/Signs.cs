using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>The shapes of note heads, accidentals, rests and flags: one table each.</summary>
internal static class Signs
{
    public static HeadShape HeadOf(Note note, ValueBase value)
    {
        if (note.IsDead) return HeadShape.Cross;
        if (note.Harmonic is not null) return value >= ValueBase.Quarter ? HeadShape.BlackDiamond : HeadShape.OpenDiamond;
        return value switch
        {
            ValueBase.Whole => HeadShape.Whole,
            ValueBase.Half => HeadShape.Half,
            _ => HeadShape.Black,
        };
    }

    public static int GlyphOf(HeadShape shape) => shape switch
    {
        HeadShape.Whole => Smufl.NoteheadWhole,
        HeadShape.Half => Smufl.NoteheadHalf,
        HeadShape.Cross => Smufl.NoteheadXBlack,
        HeadShape.OpenDiamond => Smufl.NoteheadDiamondWhiteWide,
        HeadShape.BlackDiamond => Smufl.NoteheadDiamondBlackWide,
        _ => Smufl.NoteheadBlack,
    };

    public static int AccidentalOf(int alteration) => alteration switch
    {
        -2 => Smufl.AccidentalDoubleFlat,
        -1 => Smufl.AccidentalFlat,
        0 => Smufl.AccidentalNatural,
        1 => Smufl.AccidentalSharp,
        2 => Smufl.AccidentalDoubleSharp,
        < -2 => Smufl.AccidentalTripleFlat,
        _ => Smufl.AccidentalTripleSharp,
    };

    public static int FlagOf(int flags, bool up) => (flags, up) switch
    {
        (1, true) => Smufl.Flag8thUp,
        (1, false) => Smufl.Flag8thDown,
        (2, true) => Smufl.Flag16thUp,
        (2, false) => Smufl.Flag16thDown,
        (3, true) => Smufl.Flag32ndUp,
        (3, false) => Smufl.Flag32ndDown,
        (_, true) => Smufl.Flag64thUp,
        _ => Smufl.Flag64thDown,
    };

    /// <summary>A rest's glyph and how far below the top line its origin stands.</summary>
    public static (int Glyph, double Y) RestOf(ValueBase value) => value switch
    {
        ValueBase.Whole => (Smufl.RestWhole, 1),
        ValueBase.Half => (Smufl.RestHalf, 2),
        ValueBase.Quarter => (Smufl.RestQuarter, 2),
        ValueBase.Eighth => (Smufl.Rest8th, 2),
        ValueBase.Sixteenth => (Smufl.Rest16th, 2),
        ValueBase.ThirtySecond => (Smufl.Rest32nd, 2),
        _ => (Smufl.Rest64th, 2),
    };

    /// <summary>A note value as it is shown in a tempo mark.</summary>
    public static int TempoNoteOf(ValueBase value) => value switch
    {
        ValueBase.Whole => Smufl.MetNoteWhole,
        ValueBase.Half => Smufl.MetNoteHalfUp,
        ValueBase.Quarter => Smufl.MetNoteQuarterUp,
        ValueBase.Eighth => Smufl.MetNote8thUp,
        ValueBase.Sixteenth => Smufl.MetNote16thUp,
        _ => Smufl.MetNote32ndUp,
    };

    public static int DynamicOf(Dynamic dynamic) => dynamic switch
    {
        Dynamic.Pianissimo => Smufl.DynamicPP,
        Dynamic.Piano => Smufl.DynamicPiano,
        Dynamic.MezzoPiano => Smufl.DynamicMP,
        Dynamic.MezzoForte => Smufl.DynamicMF,
        Dynamic.Forte => Smufl.DynamicForte,
        _ => Smufl.DynamicFF,
    };
}
