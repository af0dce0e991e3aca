using Fretlore.Engraving.Fonts;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Model;

/// <summary>The clefs guitar and bass are written in, both sounding an octave lower than they look.</summary>
/// <param name="CodePoint">The clef's glyph.</param>
/// <param name="Line">The staff line it sits on, in spaces below the top line.</param>
/// <param name="BottomLine">The letter and octave that sounds on the bottom line.</param>
/// <param name="SignatureShift">Staff positions its key signature is lower than in the treble clef.</param>
internal sealed record Clef(int CodePoint, double Line, Pitch BottomLine, int SignatureShift)
{
    public static Clef Treble8vb { get; } = new(Smufl.GClef8vb, 3, new Pitch(new NoteName(Step.E), 3), 0);

    public static Clef Bass8vb { get; } = new(Smufl.FClef8vb, 1, new Pitch(new NoteName(Step.G), 1), 2);

    /// <summary>The bass clef for necks whose highest string is below a guitar's fourth (common practice for basses of 4 to 6 strings).</summary>
    public static Clef For(Tuning tuning) => tuning[new StringNumber(1)].Midi <= 50 ? Bass8vb : Treble8vb;

    /// <summary>Staff position of a sounding pitch: 0 on the bottom line, 1 in the space above it, 8 on the top line.</summary>
    public int PositionOf(Pitch sounding) => sounding.DiatonicNumber - BottomLine.DiatonicNumber;
}

/// <summary>A part that is shown: a staff with its tablature below.</summary>
/// <param name="Index">Place among the shown parts.</param>
/// <param name="Part">The part.</param>
/// <param name="PartIndex">Index into the song's parts.</param>
/// <param name="Clef">The staff's clef.</param>
internal sealed record StaffPlan(int Index, Part Part, int PartIndex, Clef Clef)
{
    public int StringCount => Part.Neck.StringCount;

    public double TabHeight => (StringCount - 1) * HouseStyle.TabLineDistance;
}
