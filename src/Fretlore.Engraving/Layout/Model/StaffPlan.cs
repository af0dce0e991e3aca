using Fretlore.Engraving.Fonts;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Model;

/// <summary>The clefs guitar and bass are written in: they sound an octave or two lower than they look.</summary>
/// <param name="CodePoint">The clef's glyph.</param>
/// <param name="Line">The staff line it sits on, in spaces below the top line.</param>
/// <param name="BottomLine">The letter and octave that sounds on the bottom line.</param>
/// <param name="SignatureShift">Staff positions its key signature is lower than in the treble clef.</param>
internal sealed record Clef(int CodePoint, double Line, Pitch BottomLine, int SignatureShift)
{
    public static Clef Treble8vb { get; } = new(Smufl.GClef8vb, 3, new Pitch(new NoteName(Step.E), 3), 0);

    /// <summary>For necks tuned far below a guitar, where an octave would leave most notes on ledger lines.</summary>
    public static Clef Treble15mb { get; } = new(Smufl.GClef15mb, 3, new Pitch(new NoteName(Step.E), 2), 0);

    public static Clef Bass8vb { get; } = new(Smufl.FClef8vb, 1, new Pitch(new NoteName(Step.G), 1), 2);

    /// <summary>The bass clef for necks whose highest string is below a guitar's fourth (common practice for basses of 4 to 6 strings).</summary>
    /// <remarks>
    /// A part that has more than a fifth of its notes beyond four ledger lines below is written two octaves up: note names stay where guitarists
    /// read them, which a bass clef would change.
    /// </remarks>
    public static Clef For(Part part, SongReading reading)
    {
        if (part.Neck.Tuning[new StringNumber(1)].Midi <= 50) return Bass8vb;
        int notes = 0, deep = 0, ledgers = 0, ledgersLower = 0;
        foreach (var item in part.Bars.SelectMany(bar => bar.Strands).SelectMany(strand => strand.Events))
        {
            foreach (var note in item.Graces) Count(note);
            foreach (var note in item.Notes) Count(note);
        }
        return deep * 5 > notes && ledgersLower < ledgers ? Treble15mb : Treble8vb;

        void Count(Note note)
        {
            var position = Treble8vb.PositionOf(reading.SpellingOf(note.Id));
            notes++;
            if (position <= -10) deep++;
            ledgers += LedgersOf(position);
            ledgersLower += LedgersOf(position + 7);
        }
    }

    private static int LedgersOf(int position) => position < 0 ? -position / 2 : Math.Max(0, (position - 8) / 2);

    /// <summary>Staff position of a sounding pitch: 0 on the bottom line, 1 in the space above it, 8 on the top line.</summary>
    public int PositionOf(Pitch sounding) => sounding.DiatonicNumber - BottomLine.DiatonicNumber;
}

/// <summary>A part that is shown: a staff with its tablature below.</summary>
/// <param name="Index">Place among the shown parts.</param>
/// <param name="Part">The part.</param>
/// <param name="PartIndex">Index into the song's parts.</param>
/// <param name="Clef">The staff's clef.</param>
/// <param name="Shown">Staff, tablature or both.</param>
internal sealed record StaffPlan(int Index, Part Part, int PartIndex, Clef Clef, Notation Shown)
{
    public bool ShowsStaff => Shown != Notation.Tab;

    public bool ShowsTab => Shown != Notation.Staff;

    /// <summary>From the upper row's top line to its bottom line.</summary>
    public double TopHeight => ShowsStaff ? HouseStyle.StaffHeight : TabHeight;

    public int StringCount => Part.Neck.StringCount;

    public double TabHeight => (StringCount - 1) * HouseStyle.TabLineDistance;
}
