using System.Globalization;

namespace Fretlore.Music.Chords;

/// <summary>Reads what stands after the root of a chord symbol.</summary>
/// <remarks>
/// The words of the symbol set its third, fifth, sixth and seventh and add tensions; the family with just that frame in <see cref="ChordFamilies"/> is
/// the chord's. What no family has can't be read.
/// </remarks>
internal sealed class ChordKindReader
{
    private const int NoTone = -1;

    private readonly string text;
    private readonly int start;
    private readonly int end;

    private int third = 4;
    private int fifth = 7;
    private int seventh = NoTone;
    private bool hasSixth;
    private bool majorSeventh;
    private bool diminished;
    private bool isPower;
    private bool isSuspended;
    private bool saysSecond;
    private bool isAdding;
    private PitchClassSet tensions;
    private PitchClassSet optional;
    private PitchClassSet omitted;

    public ChordKindReader(string text, int start, int end)
    {
        (this.text, this.start, this.end) = (text, start, end);
        At = start;
    }

    /// <summary>Where the reader is; after a failure, what it could not read.</summary>
    public int At { get; private set; }

    public bool Read(out ChordKind kind, out PitchClassSet needed)
    {
        kind = default;
        needed = default;
        ReadQuality();
        while (At < end)
        {
            if (text[At] is ' ' or ',' or '(' or ')')
            {
                // In "(add9,11)" the word counts for all that follows it.
                if (text[At] is '(' or ')') isAdding = false;
                At++;
            }
            else if (!ReadWord()) return false;
        }
        return Make(out kind, out needed);
    }

    private void ReadQuality()
    {
        if (Take("maj") || Take("Maj") || Take("M") || Take("△") || Take("Δ"))
        {
            majorSeventh = true;
            // "Cmaj" alone is the triad; a triangle alone is its seventh chord (common practice).
            if (text[At - 1] is '△' or 'Δ' && !(At < end && char.IsAsciiDigit(text[At]))) seventh = 11;
        }
        else if (Take("min") || Take("mi") || At < end && !Ahead("maj") && Take("m") || Take("-") || Take("–")) third = 3;
        else if (Take("dim") || Take("°") || Take("o")) (third, fifth, diminished) = (3, 6, true);
        else if (Take("ø")) (third, fifth, seventh) = (3, 6, 10);
        else if (Take("aug") || Take("+")) fifth = 8;
    }

    private bool ReadWord()
    {
        if (isAdding && Take("maj7"))
        {
            tensions = tensions.With(11);
            return true;
        }
        if (Take("maj7") || Take("Maj7") || Take("M7") || Take("△7") || Take("Δ7")) return Stack(7, major: true);
        if (Take("maj9") || Take("M9") || Take("△9")) return Stack(9, major: true);
        if (Take("maj11") || Take("△11")) return Stack(11, major: true);
        if (Take("maj13") || Take("△13")) return Stack(13, major: true);
        if (Take("△") || Take("Δ")) return Stack(7, major: true);
        if (Take("sus2")) return Suspend(2);
        if (Take("sus4") || Take("sus")) return Suspend(5);
        if (Take("addmaj7"))
        {
            tensions = tensions.With(11);
            return true;
        }
        if (Take("add"))
        {
            isAdding = true;
            return ReadDegree(isAdded: true);
        }
        if (Take("omit") || Take("no")) return Omit();
        if (Take("6/9") || Take("69"))
        {
            hasSixth = true;
            tensions = tensions.With(2);
            return true;
        }
        if (Take("+5")) return Alter(4, 8);
        if (Take("-5")) return Alter(4, 6);
        return ReadDegree(isAdding);
    }

    // 7, 9, 11 and 13 stack up from the seventh; a bare 5 is a power chord, 6 a sixth; with a sign, a tone is altered or added.
    private bool ReadDegree(bool isAdded)
    {
        var from = At;
        var signs = 0;
        for (; At < end && text[At] is 'b' or '#' or '♭' or '♯'; At++) signs += text[At] is '#' or '♯' ? 1 : -1;
        var digits = At;
        while (At < end && char.IsAsciiDigit(text[At]) && At - digits < 2) At++;
        if (!int.TryParse(text.AsSpan(digits, At - digits), NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number is < 2 or > 13 || Math.Abs(signs) > 1)
        {
            At = from;
            return false;
        }
        if (isAdded || signs != 0 && number != 5) return Add(number, signs);
        if (signs != 0) return Alter(4, 7 + signs);
        switch (number)
        {
            case 5:
                isPower = true;
                return true;
            case 6:
                hasSixth = true;
                return true;
            case 2:
            case 4:
                return Suspend(number == 2 ? 2 : 5);
            case 7 or 9 or 11 or 13:
                return Stack(number, majorSeventh);
            default:
                At = from;
                return false;
        }
    }

    private bool Stack(int number, bool major)
    {
        seventh = major ? 11 : diminished && number == 7 ? 9 : seventh == 11 ? 11 : 10;
        if (number >= 9) tensions = tensions.With(2);
        if (number >= 11) optional = optional.With(2);
        if (number == 11 || number == 13 && third == 3) tensions = tensions.With(5);
        if (number == 13)
        {
            tensions = tensions.With(9);
            if (third == 3) optional = optional.With(5);
        }
        return true;
    }

    private bool Suspend(int tone)
    {
        third = tone;
        isSuspended = true;
        saysSecond = tone == 2;
        return true;
    }

    private bool Alter(int steps, int tone)
    {
        if (steps == 4) fifth = tone;
        return true;
    }

    private bool Add(int number, int signs)
    {
        var semitones = NoteName.Wrap(NoteName.Semitones((Step)((number - 1) % 7)) + signs, 12);
        tensions = tensions.With(semitones);
        // An altered ninth stands in the place of the one an 11 or 13 implies.
        if (number == 9 && signs != 0 && optional.Contains(2)) tensions = tensions.Without(2);
        optional = optional.Without(semitones);
        return true;
    }

    private bool Omit()
    {
        if (Take("3") || Take("3rd")) omitted = omitted.With(4).With(3);
        else if (Take("5") || Take("5th")) omitted = omitted.With(7);
        else return false;
        return true;
    }

    private bool Make(out ChordKind kind, out PitchClassSet needed)
    {
        (kind, needed) = (default, default);
        if (hasSixth && seventh != NoTone)
        {
            hasSixth = false;
            tensions = tensions.With(9);
        }
        var tones = PitchClassSet.Of(0);
        if (!isPower) tones = tones.With(third);
        tones = tones.With(fifth);
        if (hasSixth) tones = tones.With(9);
        if (seventh != NoTone) tones = tones.With(seventh);
        var family = ChordFamilies.All.FirstOrDefault(family => family.Tones == tones && Fits(family));
        if (family is null)
        {
            At = start;
            return false;
        }
        tensions = tensions.Except(family.Tones);
        omitted &= family.Tones;
        kind = new ChordKind(family, tensions, omitted);
        needed = (family.Core | tensions).Except(omitted).Except(optional.Except(family.Core)).With(0);
        if (family.Third > 0 && !isSuspended) needed = needed.With(family.Third).Except(omitted);
        return true;
    }

    // The same semitones can be two families: a suspended second is no tension, a diminished seventh is no sixth.
    private bool Fits(ChordFamily family) => family.HasSixth == hasSixth && (!isSuspended || family.Degrees.Items.Any(d => d.Steps == (saysSecond ? 1 : 3)));

    private bool Ahead(string word) => At + word.Length <= end && text.AsSpan(At).StartsWith(word, StringComparison.Ordinal);

    private bool Take(string word)
    {
        if (!Ahead(word)) return false;
        At += word.Length;
        return true;
    }
}
