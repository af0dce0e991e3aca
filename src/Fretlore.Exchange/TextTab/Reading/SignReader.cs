using System.Globalization;
using Fretlore.Exchange.Reports;
using Fretlore.Guitar;
using Fretlore.Score;

namespace Fretlore.Exchange.TextTab.Reading;

/// <summary>Reads the signs of one string in one bar.</summary>
/// <param name="findings">Where guesses and unknown signs are said.</param>
/// <param name="isOwn">True in a tab that Fretlore wrote, where two waves are a wide vibrato.</param>
internal sealed class SignReader(TextFindings findings, bool isOwn)
{
    // Beyond the frets of nearly all necks two frets typed together are likelier than one.
    private const int HighestUsualFret = 29;
    private const int HighestFret = 36;
    private const int WholeStep = 200;
    private const int WidestBend = 700;

    private TabLine line = null!;
    private string text = "";
    private int at;
    private int end;
    private char filler;
    private int number;
    private StringState state = null!;
    private Func<int, int> columnOf = null!;
    private List<ReadNote> notes = [];

    // Signs that stand before a fret.
    private (Attack Attack, GlideIn GlideIn, int Since) before;
    private List<ReadNote> graces = [];
    private bool isGhost;

    /// <summary>The notes of a string between two places of its line.</summary>
    public List<ReadNote> Read(StringLine source, int from, int to, int stringNumber, StringState known, Func<int, int> columns)
    {
        (line, text, at, end, filler, number, state, columnOf) = (source.Line, source.Line.Text, from, to, source.Filler, stringNumber, known, columns);
        (notes, before, graces, isGhost) = ([], default, [], false);
        while (at < end) ReadSign();
        return notes;
    }

    private void ReadSign()
    {
        var sign = text[at];
        if (sign == filler || sign is ' ' or '-' or '|' or ':' or '.' or '·' or '_' or ',')
        {
            at++;
            // What no note follows at once belongs to the note before: a glide off.
            if (before.GlideIn != GlideIn.None && at - before.Since > 1) DropBefore();
            return;
        }
        if (char.IsAsciiDigit(sign)) ReadFret();
        else if (sign is '(' or '<' or '[' or '{') ReadBracket();
        else if (sign is 'x' or 'X') ReadDead();
        else if (sign == '=') ReadHeld();
        else if (Skips("P.M.") || Skips("PM") || Skips("let ring") || Skips("N.H.") || Skips("NH") || Skips("TP")) return;
        else ReadLetter(char.ToLowerInvariant(sign));
    }

    private bool Skips(string word)
    {
        if (at + word.Length > end || string.CompareOrdinal(text, at, word, 0, word.Length) != 0) return false;
        at += word.Length;
        return true;
    }

    private void ReadLetter(char sign)
    {
        var start = at++;
        switch (sign)
        {
            case 'h':
                Joint(Attack.HammerOn, start);
                break;
            case 'p' when Peek() is 'b' or 'B':
                at++;
                PreBend();
                break;
            case 'p':
                Joint(Attack.PullOff, start);
                break;
            case '/' or '\\':
                Glide(sign == '/', start);
                break;
            case 's':
                Joint(text[start] == 'S' ? Attack.PickedGlide : Attack.Glide, start);
                break;
            case 'b' or '^':
                Bend(start);
                break;
            case 'r':
                Release();
                break;
            case 't' when Peek() is 'r':
                at++;
                Unknown(start, "tr");
                break;
            case 't':
                Tap(start);
                break;
            case 'g':
                Grace(start);
                break;
            case '~' or 'v' or 'w':
                Vibrato(sign, start);
                break;
            case '*':
                if (notes.Count > 0 && Touches(start)) MakeHarmonic(notes[^1]);
                break;
            case 'o' when notes.Count == 0 || !Touches(start):
                findings.Add(TextFindingKind.LetterTakenForZero, line, start, 1);
                Add(start, 0);
                break;
            case '+' or '\'' or '"' or '>' or ')' or ']' or '}':
                break;
            default:
                while (at < end && char.IsLetter(text[at]) && "hpbrstvxgHPBRSTVX/\\".IndexOf(text[at], StringComparison.Ordinal) < 0) at++;
                Unknown(start, text[start..at]);
                break;
        }
    }

    private char Peek() => at < end ? text[at] : '\0';

    // True when the last note's signs end right before a place.
    private bool Touches(int place) => place > 0 && notes.Count > 0 && text[place - 1] != filler && text[place - 1] is not (' ' or '-' or '|');

    private void Unknown(int start, string sign) => findings.Add(TextFindingKind.UnknownSign, line, start, at - start, sign);

    private void ReadFret()
    {
        var start = at;
        while (at < end && char.IsAsciiDigit(text[at])) at++;
        var digits = text.AsSpan(start, at - start);
        if (digits.Length <= 2 && int.Parse(digits, CultureInfo.InvariantCulture) is var fret && fret <= (isOwn ? HighestFret : HighestUsualFret))
        {
            Add(start, fret);
            return;
        }
        // "1012" is 10 and 12, "333" three times 3.
        findings.Add(TextFindingKind.DigitsParted, line, start, at - start, digits.ToString());
        var pairs = digits.Length % 2 == 0;
        for (var i = 0; i < digits.Length && pairs; i += 2) pairs = digits[i] is '1' or '2';
        var size = pairs ? 2 : 1;
        for (var i = 0; i < digits.Length; i += size) Add(start + i, int.Parse(digits.Slice(i, size), CultureInfo.InvariantCulture));
    }

    private ReadNote Add(int index, int fret)
    {
        var note = new ReadNote { Column = columnOf(index), Line = line, Index = index, String = number, Fret = fret, IsGhost = isGhost };
        note.Graces.AddRange(graces);
        var attack = before.Attack;
        if (graces.Count > 0 && attack is Attack.HammerOn or Attack.PullOff or Attack.Glide or Attack.PickedGlide) note.Attack = attack;
        else if (attack == Attack.Tap) note.Attack = attack;
        else if (state.Joint != Attack.Picked && state.Last is { } last && Leads(last, fret)) note.Attack = Directed(state.Joint, last, fret);
        else if (attack is Attack.HammerOn or Attack.PullOff) note.Attack = state.Last is { } from && from.Fret != fret ? Directed(attack, from, fret) : Attack.HammerFromNowhere;
        else if (attack is Attack.Glide or Attack.PickedGlide && state.Last is { } origin && origin.Fret != fret) note.Attack = attack;
        if (note.Attack is Attack.Picked or Attack.Tap) note.GlideIn = before.GlideIn;
        else if (note.Attack is Attack.Glide or Attack.PickedGlide && state.Last is { } off) off.GlideOut = GlideOut.None;
        (before, graces) = (default, []);
        (state.Last, state.Joint) = (note, Attack.Picked);
        notes.Add(note);
        return note;
    }

    // A glide leads to another fret, in the direction of its sign.
    private bool Leads(ReadNote from, int fret) => state.Joint is not (Attack.Glide or Attack.PickedGlide)
        || (fret != from.Fret && (state.GlidesUp is not { } up || fret > from.Fret == up));

    // A hammer-on goes up and a pull-off down, whichever letter stands there.
    private static Attack Directed(Attack joint, ReadNote from, int fret) => joint switch
    {
        Attack.HammerOn or Attack.PullOff when fret == from.Fret => Attack.Picked,
        Attack.HammerOn or Attack.PullOff => fret > from.Fret ? Attack.HammerOn : Attack.PullOff,
        _ => joint,
    };

    private void Joint(Attack attack, int start)
    {
        if (Touches(start)) (state.Joint, state.GlidesUp) = (attack, null);
        else before = (attack, before.GlideIn, start);
    }

    private void Glide(bool up, int start)
    {
        var isDouble = Peek() == text[start];
        if (isDouble) at++;
        if (!Touches(start))
        {
            before = (before.Attack, up ? GlideIn.FromBelow : GlideIn.FromAbove, at - 1);
            return;
        }
        // It leads to the next note on the string when that is where it points; until then it is a glide off.
        notes[^1].GlideOut = up ? GlideOut.Upwards : GlideOut.Downwards;
        if (isDouble) return;
        var next = NextFret(at);
        if (next is null || (up ? next > notes[^1].Fret : next < notes[^1].Fret)) (state.Joint, state.GlidesUp) = (Attack.Glide, up);
    }

    // A glide that nothing follows at once comes from the note before it, if there is one on the string.
    private void DropBefore()
    {
        if (state.Last is { } last && notes.Contains(last))
        {
            last.GlideOut = before.GlideIn == GlideIn.FromBelow ? GlideOut.Upwards : GlideOut.Downwards;
            var next = NextFret(at);
            if (next is not null && (before.GlideIn == GlideIn.FromBelow ? next > last.Fret : next < last.Fret)) (state.Joint, state.GlidesUp) = (Attack.Glide, before.GlideIn == GlideIn.FromBelow);
        }
        before = default;
    }

    private int? NextFret(int from)
    {
        var i = from;
        while (i < end && !char.IsAsciiDigit(text[i]))
        {
            if (text[i] is 'x' or 'X') return null;
            i++;
        }
        var start = i;
        while (i < end && i - start < 2 && char.IsAsciiDigit(text[i])) i++;
        return i > start ? int.Parse(text.AsSpan(start, i - start), CultureInfo.InvariantCulture) : null;
    }

    private void Tap(int start)
    {
        if (char.IsAsciiDigit(Peek()) || Peek() is '(' or '<') before = (Attack.Tap, before.GlideIn, start);
        else if (Touches(start)) notes[^1].Attack = Attack.Tap;
        else before = (Attack.Tap, before.GlideIn, start);
    }

    private void Grace(int start)
    {
        if (Number() is not { } fret)
        {
            Unknown(start, "g");
            return;
        }
        var (attack, glide) = (before.Attack, before.GlideIn);
        var grace = new ReadNote { Column = columnOf(start), Line = line, Index = start, String = number, Fret = fret, GlideIn = glide };
        if (graces.Count > 0 && attack != Attack.Picked) grace.Attack = Directed(attack, graces[^1], fret);
        else if (state.Joint != Attack.Picked && state.Last is { } last && Leads(last, fret)) grace.Attack = Directed(state.Joint, last, fret);
        graces.Add(grace);
        before = default;
        (state.Last, state.Joint) = (grace, Attack.Picked);
        // What joins it to its note stands right after it.
        if (Peek() is 'h' or 'p') (before, at) = ((Peek() == 'h' ? Attack.HammerOn : Attack.PullOff, GlideIn.None, at), at + 1);
        else if (Peek() is '/' or '\\' or 's' or 'S') (before, at) = ((Peek() == 'S' ? Attack.PickedGlide : Attack.Glide, GlideIn.None, at), at + 1);
    }

    private int? Number(int most = 2)
    {
        var start = at;
        while (at < end && at - start < most && char.IsAsciiDigit(text[at])) at++;
        return at > start ? int.Parse(text.AsSpan(start, at - start), CultureInfo.InvariantCulture) : null;
    }

    private void ReadDead()
    {
        var start = at++;
        var note = Add(start, 0);
        (note.IsDead, note.Attack, note.GlideIn) = (true, Attack.Picked, GlideIn.None);
        if (Peek() == '(' && text.IndexOf(')', at) is var close && close > at && close < end && int.TryParse(text.AsSpan(at + 1, close - at - 1), NumberStyles.None, CultureInfo.InvariantCulture, out var fret))
            (note.Fret, at) = (fret, close + 1);
    }

    private void ReadHeld()
    {
        var start = at++;
        if (state.Last is not { } last) return;
        var note = new ReadNote { Column = columnOf(start), Line = line, Index = start, String = number, Fret = last.Fret, Attack = Attack.Held, Harmonic = last.Harmonic, IsDead = last.IsDead };
        note.BentBefore = last.BentTo;
        (state.Last, state.Joint) = (note, Attack.Picked);
        notes.Add(note);
    }

    private void ReadBracket()
    {
        var open = text[at];
        var close = open switch { '(' => ')', '<' => '>', '[' => ']', _ => '}' };
        var start = at++;
        var stop = text.IndexOf(close, at);
        if (stop < 0 || stop >= end) return;
        // "3<15>": stopped at 3, touched at 15.
        if (open == '<' && notes.Count > 0 && char.IsAsciiDigit(text[start - 1]) && Number() is { } touched && at == stop)
        {
            notes[^1].Harmonic = new Harmonic(HarmonicKind.Touched, new Fret(touched));
            at = stop + 1;
            return;
        }
        var (count, ghost) = (notes.Count, isGhost);
        if (open == '(') isGhost = true;
        var outer = end;
        end = stop;
        while (at < end) ReadSign();
        (end, isGhost) = (outer, ghost);
        at = Math.Max(at, stop + 1);
        foreach (var note in notes.Skip(count))
        {
            note.HasBracket = true;
            if (open == '<' && isOwn) note.Harmonic = new Harmonic(HarmonicKind.Natural, new Fret(note.Fret));
            else if (open == '<') MakeHarmonic(note);
            if (open == '[') note.Harmonic = new Harmonic(HarmonicKind.Pinch, new Fret(note.Fret));
        }
    }

    // Over a fret with a node it is a natural harmonic, elsewhere one that is pinched.
    private static void MakeHarmonic(ReadNote note) =>
        note.Harmonic = new Harmonic(HarmonicSeries.SemitonesAbove(note.Fret) is not null ? HarmonicKind.Natural : HarmonicKind.Pinch, new Fret(note.Fret));

    private void Vibrato(char sign, int start)
    {
        while (at < end && char.ToLowerInvariant(text[at]) == sign) at++;
        if (state.Last is not { } note) return;
        note.Vibrato = isOwn && at - start == 2 ? VibratoWidth.Wide : VibratoWidth.Normal;
        note.VibratoAfter = note.Bends.Count;
    }

    private void Bend(int start)
    {
        if (state.Last is not { } note) return;
        if (Target(note) is { } cents) note.Bends.Add(cents);
        else
        {
            findings.Add(TextFindingKind.BendTaken, line, start, 1);
            note.Bends.Add(note.BentTo + WholeStep);
        }
    }

    private void PreBend()
    {
        if (notes.Count > 0 && Touches(at - 2))
        {
            notes[^1].BentBefore = Target(notes[^1]) ?? WholeStep;
            return;
        }
        // "pb7" stands before its fret and does not say how far.
        if (Number() is not { } fret) return;
        findings.Add(TextFindingKind.BendTaken, line, at - 1, 1);
        Add(at - 1, fret).BentBefore = WholeStep;
    }

    private void Release()
    {
        if (state.Last is not { } note) return;
        var target = Number();
        var to = target is { } fret ? Math.Max(0, (fret - note.Fret) * 100) : Peek() == '(' ? Target(note) ?? 0 : 0;
        if (note.BentTo > 0 || note.Attack == Attack.Held) note.Bends.Add(Math.Min(to, WidestBend));
        else if (target is { } low && low < note.Fret && note.Fret - low <= 5)
        {
            // "9r7": bent to the pitch of 9 before it is picked, and let down to 7.
            (note.BentBefore, note.Fret) = ((note.Fret - low) * 100, low);
            note.Bends.Add(0);
        }
    }

    // How far a bend goes, in cents above the fret: the fret whose pitch it reaches, or parts of a whole step in brackets.
    private int? Target(ReadNote note)
    {
        var start = at;
        var isBracketed = Peek() is '(' or '[';
        if (isBracketed) at++;
        int? cents = null;
        if (Skips("full") || Skips("Full")) cents = WholeStep;
        else if (Skips("½")) cents = WholeStep / 2;
        else if (Skips("¼")) cents = WholeStep / 4;
        else if (Number(isBracketed ? 4 : 2) is { } first)
        {
            // Without brackets only 1/2, 1/4, 3/4 and 3/2 are parts of a step; "7b8/9" is a glide.
            if (Peek() == '/' && at + 1 < end && (isBracketed ? char.IsAsciiDigit(text[at + 1]) : first is 1 or 3 && first <= note.Fret && text[at + 1] is '2' or '4'))
            {
                at++;
                var second = Number(4) ?? 1;
                cents = second == 0 ? null : first * WholeStep / second;
            }
            else if (Skips("½")) cents = first * WholeStep + WholeStep / 2;
            else if (first > note.Fret && first - note.Fret <= WidestBend / 100) cents = (first - note.Fret) * 100;
            else if (first is 1 or 2) cents = first * WholeStep;
        }
        if (isBracketed && cents is not null && Peek() is ')' or ']') at++;
        else if (isBracketed || cents is null) at = cents is null ? start : at;
        return cents is > 0 and <= WidestBend * 2 ? cents : null;
    }
}
